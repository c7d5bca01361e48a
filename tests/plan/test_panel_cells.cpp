// A panel as cells, and what is worst somewhere on it.
#include <algorithm>
#include <boost/math/distributions/gamma.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

namespace {

Panel panel_of(double area_m2) {
  Panel panel;
  panel.name = "door";
  panel.area_m2 = area_m2;
  for (const double x : {0., 400., 800.})
    for (const double y : {0., 400.}) panel.readings.push_back({.x_mm = x, .y_mm = y, .total_um = 200});
  return panel;
}

// A film that is the same everywhere and known to .04 % (.03 um).
FilmMap exact_film(double clear_um) {
  FilmMap map = film_map(panel_of(.5), {.kind = PaintKind::repaint, .clear_um = 60});
  map.mean_um = 2 * clear_um;
  map.mean_sd_um = map.variation_um = map.clear_gain_sd = 0;
  map.weights.setZero();
  map.share = {.5, 2e-4};  // a narrower beta distribution takes minutes to invert
  return map;
}

PanelWork work_of(int worlds, double removed_um, double dwell_cv, double before_um, double after_um) {
  const auto all = [&](double value) { return std::vector<double>(static_cast<std::size_t>(worlds), value); };
  return {all(removed_um), all(dwell_cv), all(after_um), all(before_um)};
}

}  // namespace

TEST_CASE("cells are of a disc's footprint, and together they are the panel") {
  for (const double area_m2 : {.01, .5, 1.5, 60.}) {
    const PanelCells cells = cells_of(panel_of(area_m2));
    CHECK(cells.area_m2 * static_cast<double>(cells.places.size()) == Catch::Approx(area_m2));
  }
  const PanelCells cells = cells_of(panel_of(.5));
  CHECK(cells.area_m2 == Catch::Approx(.01767).epsilon(.1));  // closed form: pi (75 mm)^2; whole rows
  // Readings span 800 x 400 mm: so do the cells, scaled about the middle to .5 m2 = 1000 x 500 mm.
  double right = 0;
  for (const Place& place : cells.places) right = std::max(right, place.x_mm);
  CHECK(right == Catch::Approx(400 + 500 * (1 - 1 / 7.)).epsilon(.03));
}

TEST_CASE("readings without a place are cells of the panel") {
  Panel bare = panel_of(.5);
  for (Reading& reading : bare.readings) reading.x_mm = reading.y_mm = std::nullopt;
  const PanelCells cells = cells_of(bare);
  CHECK(cells.area_m2 * static_cast<double>(cells.places.size()) == Catch::Approx(.5));
  for (const Place& place : places_of(bare))
    CHECK(std::count_if(cells.places.begin(), cells.places.end(),
                        [&](const Place& cell) { return cell.x_mm == place.x_mm; }) == 1);
  bare.area_m2 = .01;  // one cell: the thinnest reading's
  bare.readings[3].total_um = 100;
  CHECK(cells_of(bare).places.size() == 1);
  CHECK(cells_of(bare).places[0].x_mm == places_of(bare)[3].x_mm);
}

TEST_CASE("the deepest valley of a 2.5 mm texture is 3.9 sigma on 51 x 51 mm and 5.35 on 1.5 m2") {
  // Expected exceedances of a Gaussian field (Adler, from memory), solved by hand to the digits given.
  CHECK(std::abs(deepest_valley_in_sd(.051 * .051, 2.5) - 3.9) < .05);
  CHECK(std::abs(deepest_valley_in_sd(1.5, 2.5) - 5.35) < .005);
  CHECK(deep_valleys(1.5, 2.5, deepest_valley_in_sd(1.5, 2.5)) == Catch::Approx(1).epsilon(1e-6));
}

TEST_CASE("synthesized textures have valleys as deep as expected exceedances say") {
  // Block maxima over 16 seeds. Mean of the deepest of many: the depth exceeded once, plus .5772/u in sigma
  // (Gumbel); its standard error is pi/sqrt(6)/u/sqrt(16) = .09.
  const Grid grid{128, 128, 0.4};
  double sum = 0, wavelength_mm = 0;
  for (std::uint64_t seed = 1; seed <= 16; ++seed) {
    const HeightField field =
        synthesize({{.wavelength_mm = 2.5, .rms_um = 1, .bandwidth_octaves = .5}}, grid, seed);
    sum += field.valley_depth_um() / field.rms_um();
    wavelength_mm += mean_wavelength_mm(field) / 16;
  }
  const double u = deepest_valley_in_sd(.0512 * .0512, wavelength_mm);
  CHECK(std::abs(sum / 16 - (u + .5772 / u)) < 3 * .09);
  CHECK(wavelength_mm == Catch::Approx(2.5).epsilon(.1));  // a band of half an octave weighs short waves more
}

TEST_CASE("the longest dwell of a panel of equal cells follows the gamma distribution") {
  const Panel panel = panel_of(.5);
  const PanelCells cells = cells_of(panel);
  const int worlds = 4000;
  int told = 0;
  const PanelExtremes extremes = extremes_of(cells, exact_film(60), work_of(worlds, 8, .2, 0, 0),
                                             cells.area_m2, .0026, 0, 5, [&](double) { ++told; });
  CHECK(told == 63);  // blocks of 64 worlds
  std::vector<double> longest;
  for (const double left : extremes.clear_left_um) longest.push_back((60 - left) / 8);
  std::sort(longest.begin(), longest.end());
  // Median of the greatest of n: P^n = 1/2 (closed form); standard error of a median of 4000, spread .09:
  // .002; Wilson and Hilferty's cube root errs by .001 here.
  const double n = static_cast<double>(cells.places.size());
  const double median =
      boost::math::quantile(boost::math::gamma_distribution<>(25, .04), std::pow(.5, 1 / n));
  CHECK(std::abs(longest[2000] - median) < .007);
}

TEST_CASE("a valley that no disc reaches keeps its depth, and one on a flat end has none") {
  const PanelCells cells = cells_of(panel_of(.01));
  REQUIRE(cells.places.size() == 1);
  // Nothing removed: the thinnest point is the clear less the valley. No waves: the patch's own valley.
  const auto untouched = extremes_of(cells, exact_film(60), work_of(1, 0, .2, 4, 4), .0177, .0026, 0, 5);
  CHECK(untouched.clear_left_least_um[0] == Catch::Approx(56).epsilon(2e-3));  // the film is known to .03 um
  const auto touched = extremes_of(cells, exact_film(60), work_of(1, 10, 0, 4, .5), .0177, .0026, 0, 5);
  CHECK(touched.clear_left_um[0] == Catch::Approx(50).epsilon(2e-3));
  CHECK(touched.clear_before_um[0] == Catch::Approx(60).epsilon(2e-3));
  CHECK(touched.clear_left_least_um[0] == Catch::Approx(49.5).epsilon(2e-3));
  const auto shallow = extremes_of(cells, exact_film(60), work_of(1, 1, 0, 4, 3), .0177, .0026, 0, 5);
  CHECK(shallow.clear_left_least_um[0] == Catch::Approx(56).epsilon(2e-3));
}

TEST_CASE("a larger panel is thinner somewhere, and more clear is never less anywhere") {
  const PanelWork work = work_of(500, 8, .2, 4, .6);
  double last = HUGE_VAL;
  for (const double area_m2 : {.05, .5, 2.}) {
    const auto extremes =
        extremes_of(cells_of(panel_of(area_m2)), exact_film(60), work, .0177, .0026, 2.5, 5);
    std::vector<double> least = extremes.clear_left_least_um;
    std::sort(least.begin(), least.end());
    CHECK(least[250] < last);
    last = least[250];
  }
  const PanelCells cells = cells_of(panel_of(.5));
  const auto thin = extremes_of(cells, exact_film(40), work, .0177, .0026, 2.5, 5),
             thick = extremes_of(cells, exact_film(60), work, .0177, .0026, 2.5, 5);
  for (std::size_t i = 0; i < 500; ++i) CHECK(thick.clear_left_least_um[i] > thin.clear_left_least_um[i]);
}

TEST_CASE("areas and wavelengths that are not positive are refused") {
  CHECK_THROWS_AS(deepest_valley_in_sd(0, 2.5), InvalidInput);
  CHECK_THROWS_AS(deepest_valley_in_sd(1, -1), InvalidInput);
  CHECK_THROWS_AS(deep_valleys(1, 2.5, .5), InvalidInput);
  CHECK(mean_wavelength_mm(HeightField(Array2d::Zero(8, 8), .1)) == 0);
}

TEST_CASE("one thin reading is the thinnest place in every world, whether its place is stated or not") {
  // Film of 40 um holds less than 40 um of clear, whatever its share (the rule; no source needed).
  Panel placed = panel_of(.5), bare = placed;
  placed.readings[2].total_um = bare.readings[2].total_um = 40;
  for (Reading& reading : bare.readings) reading.x_mm = reading.y_mm = std::nullopt;
  const Paint paint{.kind = PaintKind::repaint, .clear_um = 60};
  const PanelWork work = work_of(400, 0, 0, 0, 0);
  std::vector<double> medians;
  for (const Panel& panel : {placed, bare}) {
    std::vector<double> left =
        extremes_of(cells_of(panel), film_map(panel, paint), work, .02, .0026, 0, 1).clear_left_um;
    std::sort(left.begin(), left.end());
    CHECK(left.back() < 40);
    medians.push_back(left[left.size() / 2]);
  }
  // The cell's centre need not be the place that was read, so that stated places come out a little thicker.
  CHECK(medians[1] < 15);
  CHECK(medians[1] <= medians[0] + 1);
}
