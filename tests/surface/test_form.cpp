// The tilt and form of a measured map, and whether it repeats.
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/surface/form.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// A surface of second order, in places -1 to 1.
Array2d bowl(int rows, int cols, double tilt_x, double tilt_y, double xx, double yy, double xy) {
  Array2d map(rows, cols);
  for (int i = 0; i < rows; ++i)
    for (int j = 0; j < cols; ++j) {
      const double y = 2.0 * i / (rows - 1) - 1, x = 2.0 * j / (cols - 1) - 1;
      map(i, j) = 7 + tilt_x * x + tilt_y * y + xx * x * x + yy * y * y + xy * x * y;
    }
  return map;
}

const Grid grid{96, 128, 0.2};

HeightField texture() {
  return synthesize({{.wavelength_mm = 2.2, .rms_um = 0.7}}, grid, 4);
}

}  // namespace

TEST_CASE("a plane and a form of second order go whole, and are told in full") {
  // Closed form: spans over -1..1 are 2 (tilt_x + tilt_y), xx + yy of a bowl, and 2 xy of a saddle.
  const FormRemoved tilted = without_form({bowl(40, 60, 3, 1, 0, 0, 0), 0.1});
  CHECK(tilted.tilt_um == Approx(8).epsilon(1e-12));
  CHECK(tilted.form_um == Approx(0).margin(1e-12));
  CHECK(tilted.surface.rms_um() < 1e-12);
  CHECK(tilted.surface.mean_um() == Approx(7).epsilon(1e-12));
  const FormRemoved bent = without_form({bowl(41, 61, 0, 0, 5, 2, 0), 0.1});
  CHECK(bent.tilt_um == Approx(0).margin(1e-12));
  CHECK(bent.form_um == Approx(7).epsilon(1e-12));
  CHECK(bent.surface.rms_um() < 1e-12);
  CHECK(without_form({bowl(41, 61, 0, 0, 0, 0, 1.5), 0.1}).form_um == Approx(3).epsilon(1e-12));
}

TEST_CASE("tilt and form do not count as texture, and texture stays") {
  // 0.7 um rms on a tilt of 12 and a bow of 6 um reads as several um; six terms take up about 6 of the 600
  // waves that fit the map: 1 % of its variance.
  const HeightField flat = texture();
  const HeightField measured(flat.height_um() + bowl(96, 128, 4, 2, 3, 2, 1), grid.pixel_mm);
  REQUIRE(measured.rms_um() > 2.5);
  const FormRemoved removed = without_form(measured);
  CHECK(removed.surface.rms_um() == Approx(0.7).epsilon(0.01));
  CHECK(removed.rms_before_um == measured.rms_um());
  CHECK(removed.tilt_um == Approx(12).epsilon(0.02));
  CHECK(removed.form_um == Approx(3 + 2 + 1).epsilon(0.05));
  const std::vector<Statement> said = statements_of(removed);
  REQUIRE(said.size() == 1);
  CHECK(said[0].kind == StatementKind::form_removed);
  CHECK(said[0].figures.at("tilt_um") == removed.tilt_um);
  CHECK(said[0].figures.at("rms_um") == removed.surface.rms_um());
}

TEST_CASE("a profile has a tilt and a bow too") {
  Array2d heights(1, 200);
  for (int j = 0; j < 200; ++j) {
    const double x = 2.0 * j / 199 - 1;
    heights(0, j) = 3 * x + 2 * x * x;
  }
  const FormRemoved removed = without_form({heights, 0.1});
  CHECK(removed.tilt_um == Approx(6).epsilon(1e-12));
  CHECK(removed.surface.rms_um() < 1e-12);
}

TEST_CASE("a map that repeats is told from one that does not") {
  // A patch of a periodic texture that is cut out of it does not repeat: its edges are strangers, sqrt(2) rms
  // apart.
  const HeightField whole = texture();
  CHECK(edge_jump(whole).times() == Approx(1).epsilon(0.3));
  CHECK(statements_of(edge_jump(whole)).empty());
  const HeightField fine = synthesize({{.wavelength_mm = 4, .rms_um = 0.7}}, grid, 4);
  const HeightField cut(fine.height_um().topLeftCorner(70, 90), grid.pixel_mm);
  const EdgeJump jump = edge_jump(cut);
  CHECK(jump.edge_um == Approx(std::sqrt(2.0) * 0.7).epsilon(0.4));
  CHECK(jump.times() > unfitting_edges);
  const std::vector<Statement> said = statements_of(jump);
  REQUIRE(said.size() == 1);
  CHECK(said[0].kind == StatementKind::map_not_periodic);
  CHECK(said[0].figures.at("edge_um") == jump.edge_um);
}
