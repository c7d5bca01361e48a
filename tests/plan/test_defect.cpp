#include <boost/math/distributions/normal.hpp>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/defect.hpp"

using namespace libtexture;
using Catch::Approx;
using Catch::Matchers::StartsWith;

TEST_CASE("what is drawn of a defect follows the normal distribution above 0") {
  for (const double sd_um : {0.5, 1.5, 3.0}) {
    const Defect scratch{.depth_um = 3, .sd_um = sd_um};
    const boost::math::normal normal(3, sd_um);
    const double below_0 = boost::math::cdf(normal, 0);
    for (const double share : {0.001, 0.05, 0.3, 0.5, 0.8, 0.999}) {
      const double size = size_at(scratch, share);
      CHECK(size > 0);
      CHECK((boost::math::cdf(normal, size) - below_0) / (1 - below_0) == Approx(share).epsilon(1e-9));
    }
  }
}

TEST_CASE("a defect that is known is drawn as it is, and one without a spread has a quarter of its size") {
  CHECK(size_at({.depth_um = 3, .sd_um = 0}, 0.99) == 3);
  CHECK(size_sd_um({.depth_um = 3}) == Approx(0.75));
  CHECK(size_sd_um({.height_um = 40, .width_mm = 10}) == Approx(10));
  CHECK(may_stay_um({.depth_um = 3}) == 0);
  CHECK(may_stay_um({.height_um = 40, .width_mm = 10}) == 0.5);
}

TEST_CASE("a defect says in one sentence what is wrong with it") {
  const auto refused = [](const Defect& defect, const std::string& words) {
    INFO(words);
    CHECK_THROWS_WITH(defect.validate(), StartsWith("Defect: " + words));
  };
  refused({}, "depth_um or height_um must be given, one of them and not the other (got none)");
  refused({.depth_um = 3, .height_um = 4},
          "depth_um or height_um must be given, one of them and not the other (got both)");
  refused({.depth_um = 0}, "depth_um must be > 0");
  refused({.depth_um = 3, .sd_um = -1}, "sd_um must be >= 0");
  refused({.height_um = 40}, "width_mm must be given with height_um");
  refused({.depth_um = 3, .width_mm = 2, .length_mm = 1}, "length_mm must be at least width_mm, 2 mm");
  refused({.depth_um = 3, .feather_mm = 50}, "feather_mm must come with patch_mm");
  refused({.depth_um = 3, .x_mm = 5}, "x_mm and y_mm must be given both or neither");
  refused({.height_um = 0.4, .width_mm = 1}, "level_within_um must be less than height_um, 0.4 um");
  CHECK_NOTHROW(Defect{.depth_um = 3, .sd_um = 0.5, .patch_mm = 200}.validate());
}
