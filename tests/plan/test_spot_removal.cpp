#include <cmath>

#include "catch.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/spot_removal.hpp"
#include "libtexture/tool/motion.hpp"

using namespace libtexture;

namespace {

SpotRemoval removal_of(double loading_um) {
  Step step;
  step.abrasive = shipped_catalogue().abrasives.at("P2000 film");
  step.abrasive.loading_um = loading_um;
  step.backing = Backing::rigid();
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.passes = 4;
  return {step};
}

}  // namespace

TEST_CASE("a disc that hardly loads removes as often as its first pass, in proportion to its wear rate") {
  const SpotRemoval removal = removal_of(1e6);
  const double pass_um =
      removal_per_pass_um(removal.step.motion, removal.step.abrasive.wear_rate_mm3_per_n_m);  // (22)
  CHECK(removal.removed_um(0) == 0);
  CHECK(removal.removed_um(6) == Catch::Approx(6 * pass_um).epsilon(1e-4));
  CHECK(removal.removed_um(6, std::log(2.)) == Catch::Approx(12 * pass_um).epsilon(1e-4));
  CHECK(removal.passes_to(2.5 * pass_um) == 3);
  CHECK(removal.passes_to(1e9) == most_spot_passes);
}

TEST_CASE("fewest passes to a removal, of a disc that loads, are fewest") {
  const SpotRemoval removal = removal_of(2);
  const int passes = removal.passes_to(4);
  CHECK(removal.removed_um(passes) >= 4);
  CHECK(removal.removed_um(passes - 1) < 4);
}
