#include <cmath>

#include "catch.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/variance_shares.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// One cell, about its only reading.
Panel small_panel(double total_um) {
  Panel panel;
  panel.name = "cap";
  panel.area_m2 = 0.01;
  panel.readings = {{.x_mm = 0, .y_mm = 0, .total_um = total_um}};
  return panel;
}

double sum_of(const VarianceShares& shares) {
  return shares.clear_share + shares.map + shares.gauge + shares.removal;
}

}  // namespace

TEST_CASE("the parts at one reading are those of the closed form for a product") {
  // Clear = share x film, both independent: variance = film^2 sd_share^2 + share^2 sd_film^2 + both. The
  // prior of factory paint is 0.40 +- 0.06; a reading of 120 um is known to the gauge's 2 um and 3 % of its
  // scale, and at the reading itself nothing is left to the map. 1000 draws know a variance to 4.5 % (one
  // sd).
  const Paint paint{.kind = PaintKind::factory, .gauge = {.uncertainty_um = 2, .gain_percent = 3}};
  const FilmVariance film = film_variance(small_panel(120), paint, 5);
  const double film_sd = std::hypot(2, 0.03 * 120);
  CHECK(film.gauge_um2 == Approx(0.4 * 0.4 * film_sd * film_sd).epsilon(0.15));
  CHECK(film.map_um2 == Approx(0).margin(0.01));
  CHECK(film.clear_share_um2 == Approx((120 * 120 + film_sd * film_sd) * 0.06 * 0.06).epsilon(0.15));
  const VarianceShares shares = variance_shares(film, {1, 3});  // variance 1 um2 (closed form)
  CHECK(sum_of(shares) == Approx(1).epsilon(1e-12));
  const double all = film.clear_share_um2 + film.map_um2 + film.gauge_um2 + 1;
  CHECK(shares.removal == Approx(1 / all));
  CHECK(shares.clear_share == Approx(film.clear_share_um2 / all));
}

TEST_CASE("the share of the clear decides where it is not known, the map where readings are few") {
  Panel panel = small_panel(250);
  panel.area_m2 = 0.9;
  Paint paint{.kind = PaintKind::repaint, .clear_um = 60};
  const auto shares = [&] { return variance_shares(film_variance(panel, paint, 5), {4, 5, 6}); };
  CHECK(shares().clear_share > 0.5);
  paint.clear_uncertainty_um = 1;  // as an ultrasonic gauge may have it
  CHECK(shares().clear_share < 0.1);
  CHECK(shares().map > shares().gauge);
  // A gauge that hardly reads takes the first place.
  paint.gauge.uncertainty_um = 60;
  CHECK(shares().gauge > shares().map);
}
