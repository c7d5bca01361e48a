#include "libtexture/plan/panel_cells.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <numbers>
#include <numeric>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

namespace {

using std::numbers::pi;

constexpr double cell_m2 = pi * 0.075 * 0.075;  // footprint of the usual 150 mm disc
constexpr int most_cells = 100;                 // larger panels get larger cells
constexpr double narrowest = 0.1;  // readings in a line say nothing of the panel's other side: a square then

struct Rectangle {
  Place centre = {};
  double width_mm = 1, height_mm = 1;
};

Rectangle about_readings(const Panel& panel) {
  double left = HUGE_VAL, right = -HUGE_VAL, bottom = HUGE_VAL, top = -HUGE_VAL;
  for (const Reading& reading : panel.readings) {
    if (!reading.x_mm) continue;
    left = std::min(left, *reading.x_mm), right = std::max(right, *reading.x_mm);
    bottom = std::min(bottom, *reading.y_mm), top = std::max(top, *reading.y_mm);
  }
  if (left > right) return {};
  Rectangle all{{(left + right) / 2, (bottom + top) / 2}, right - left, top - bottom};
  const double longer = std::max(all.width_mm, all.height_mm);
  if (std::min(all.width_mm, all.height_mm) < narrowest * longer || longer == 0)
    all.width_mm = all.height_mm = 1;
  return all;
}

double number_of_waves(double area_m2, double wavelength_mm) {
  const double q = 2 * pi / (wavelength_mm * metre_per_mm);
  return area_m2 * q * q / 2 / std::pow(2 * pi, 1.5);
}

/// Readings without a place lie somewhere on the panel: each is a cell, the thinnest first where there are
/// more than cells, in place of one of an even share of the others.
void place_readings(const Panel& panel, PanelCells& cells) {
  std::vector<double> totals_um;
  for (const Reading& reading : panel.readings)
    if (!reading.x_mm) totals_um.push_back(total_um(reading));
  const std::vector<Place> places = places_of(panel);
  const std::size_t placed = places.size() - totals_um.size();
  std::vector<std::size_t> order(totals_um.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return totals_um[a] < totals_um[b]; });
  const std::size_t count = std::min(order.size(), cells.places.size());
  for (std::size_t k = 0; k < count; ++k)
    cells.places[k * cells.places.size() / count] = places[placed + order[k]];
}

}  // namespace

PanelCells cells_of(const Panel& panel) {
  panel.validate();
  Rectangle all = about_readings(panel);
  const double scale = std::sqrt(panel.area_m2 / (all.width_mm * all.height_mm)) / metre_per_mm;
  all.width_mm *= scale, all.height_mm *= scale;
  const double wanted = std::clamp(std::round(panel.area_m2 / cell_m2), 1.0, double{most_cells});
  const int cols = std::clamp(static_cast<int>(std::lround(std::sqrt(wanted * all.width_mm / all.height_mm))),
                              1, static_cast<int>(wanted));
  const int rows = std::max(1, static_cast<int>(std::lround(wanted / cols)));
  PanelCells cells;
  cells.area_m2 = panel.area_m2 / (rows * cols);
  for (int row = 0; row < rows; ++row)
    for (int col = 0; col < cols; ++col)
      cells.places.push_back({all.centre.x_mm + ((col + .5) / cols - .5) * all.width_mm,
                              all.centre.y_mm + ((row + .5) / rows - .5) * all.height_mm});
  place_readings(panel, cells);
  return cells;
}

double deep_valleys(double area_m2, double wavelength_mm, double depth_in_sd) {
  require_positive(area_m2, "PanelCells", "area_m2");
  require_positive(wavelength_mm, "PanelCells", "wavelength_mm");
  require(depth_in_sd >= 1, "PanelCells", "depth_in_sd", "must be >= 1", depth_in_sd);
  return number_of_waves(area_m2, wavelength_mm) * depth_in_sd * std::exp(-depth_in_sd * depth_in_sd / 2);
}

double deepest_valley_in_sd(double area_m2, double wavelength_mm, double expected) {
  require_positive(area_m2, "PanelCells", "area_m2");
  require_positive(wavelength_mm, "PanelCells", "wavelength_mm");
  require_positive(expected, "PanelCells", "expected");
  const double ratio = number_of_waves(area_m2, wavelength_mm) / expected;
  if (!(ratio * std::exp(-.5) > 1)) return 1;
  // u^2 = 2 ln(ratio u): contracts by 1/u^2 each time.
  double u = std::sqrt(2 * std::log(ratio) + 1), last = 0;
  for (int step = 0; step < 100 && std::abs(u - last) > 1e-9; ++step) {
    last = u;
    u = std::sqrt(std::max(1.0, 2 * std::log(ratio * u)));
  }
  return u;
}

double dwell_at(double normal, double cv) {
  const double v = cv * cv / 9;
  const double root = std::max(0.0, 1 - v + normal * std::sqrt(v));
  return root * root * root;
}

double mean_wavelength_mm(const HeightField& field) {
  const Waves waves(field);
  const double x = waves.rms_slope(Direction::rows), y = waves.rms_slope(Direction::columns);
  const double slope = std::hypot(x, y);  // (2 pi/l) rms
  return slope > 0 ? 2 * pi * field.rms_um() * metre_per_um / slope / metre_per_mm : 0;
}

PanelExtremes extremes_of(const PanelCells& cells, const FilmMap& film, const PanelWork& work,
                          double footprint_m2, double patch_m2, double wavelength_mm, std::uint64_t seed,
                          const Progress& progress) {
  const int worlds = static_cast<int>(work.removed_um.size());
  const Array2d clear_um = draw_clear_um(film, cells.places, worlds, hash_key({seed, 1}));
  const double footprints = std::max(1.0, cells.area_m2 / footprint_m2);
  const double patch_valley = wavelength_mm > 0 ? deepest_valley_in_sd(patch_m2, wavelength_mm) : 1;
  const boost::math::normal normal;
  PanelExtremes extremes;
  extremes.clear_before_um.resize(work.removed_um.size());
  extremes.clear_left_um.resize(work.removed_um.size());
  extremes.clear_left_least_um.resize(work.removed_um.size());
  const auto find_worst = [&](std::size_t world) {
    double before = HUGE_VAL, thinnest = HUGE_VAL, deepest = HUGE_VAL;
    for (std::size_t cell = 0; cell < cells.places.size(); ++cell) {
      const auto random = [&](std::uint64_t what) {
        return std::clamp(uniform_at({seed, 2 + what, world, cell}), 1e-15, 1 - 1e-15);
      };
      // The longest of m dwells lies below d with probability P(d)^m; no valley lies below u with
      // probability exp(-expected number of them).
      const double z = boost::math::quantile(normal, std::pow(random(0), 1 / footprints));
      const double removed = work.removed_um[world] * dwell_at(z, work.dwell_cv[world]);
      const double valley =
          wavelength_mm > 0
              ? deepest_valley_in_sd(cells.area_m2, wavelength_mm, -std::log(random(1))) / patch_valley
              : 1;
      const double clear = clear_um(static_cast<Eigen::Index>(world), static_cast<Eigen::Index>(cell));
      const double left = clear - removed;
      const double depth =  // a valley that is not touched stays where it is
          std::max(valley * work.valley_before_um[world] - removed, valley * work.valley_depth_um[world]);
      before = std::min(before, clear);
      thinnest = std::min(thinnest, left);
      deepest = std::min(deepest, left - depth);
    }
    extremes.clear_before_um[world] = before;
    extremes.clear_left_um[world] = thinnest;
    extremes.clear_left_least_um[world] = deepest;
  };
  parallel_for_small(work.removed_um.size(), find_worst, progress);
  return extremes;
}

}  // namespace libtexture
