#include "libtexture/plan/odd_readings.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/spread.hpp"

namespace libtexture {

namespace {

constexpr double odd_from_scatters = 3.5;    // the limit that is usual for this figure: docs/physics.md
constexpr double sd_per_deviation = 1.4826;  // of a normal distribution, over its median absolute deviation

double median_of(const std::vector<double>& values) {
  return quantile_of(values, 0.5);
}

double scatter_of(const std::vector<double>& values, double median, double gauge_um) {
  std::vector<double> deviations;
  for (const double value : values) deviations.push_back(std::abs(value - median));
  const double least = std::hypot(FilmVariation{}.sd_percent / 100 * median, gauge_um);
  return std::max(least, sd_per_deviation * median_of(deviations));
}

}  // namespace

std::vector<Statement> odd_readings(const Panel& panel, const Gauge& gauge) {
  std::vector<double> read_um;
  for (const Reading& reading : panel.readings)
    if (teaches(reading)) read_um.push_back(total_um(reading));
  std::vector<Statement> odd;
  if (read_um.size() < 3) return odd;
  for (std::size_t i = 0; i < read_um.size(); ++i) {
    std::vector<double> others = read_um;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    const double usual_um = median_of(others);
    const double limit_um = odd_from_scatters * scatter_of(others, usual_um, gauge.uncertainty_um);
    if (std::abs(read_um[i] - usual_um) > limit_um)
      odd.push_back(
          {.kind = StatementKind::odd_reading,
           .panel = panel.name,
           .figures = {{"reading_um", read_um[i]}, {"usual_um", usual_um}, {"limit_um", limit_um}}});
  }
  return odd;
}

}  // namespace libtexture
