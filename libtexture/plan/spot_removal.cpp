#include "libtexture/plan/spot_removal.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/process/pace.hpp"

namespace libtexture {

namespace {

constexpr double most_shift = 7;  // no wear rate is off by more than a factor of a thousand

}  // namespace

double SpotRemoval::removed_um(int passes, double shift) const {
  Step scaled = step;
  scaled.abrasive.wear_rate_mm3_per_n_m *= std::exp(shift);
  scaled.abrasive.worn_wear_rate_mm3_per_n_m *= std::exp(shift);
  DiscUse use;
  double sum_um = 0;
  for (int pass = 0; pass < passes; ++pass) sum_um += removal_of_pass_um(scaled, area_m2, hardness_mpa, use);
  return sum_um;
}

int SpotRemoval::passes_to(double enough_um, double shift) const {
  int few = 0, many = most_spot_passes;
  while (many - few > 1) {
    const int middle = (few + many) / 2;
    (removed_um(middle, shift) < enough_um ? few : many) = middle;
  }
  return many;
}

double log_likelihood(const SpotRemoval& removal, const SpotReadings& readings, double shift) {
  const double expected_um = removal.removed_um(readings.passes, shift);
  const double sd_um =
      std::hypot(removal_uncertainty_um(readings.gauge, expected_um, readings.before, readings.after),
                 readings.spot_cv * expected_um);
  const double z = (readings.removed_um - expected_um) / sd_um;
  return -.5 * z * z - std::log(sd_um);
}

Density wear_density(const SpotRemoval& removal, const SpotReadings& readings, double prior_sd,
                     std::array<int, 3> points) {
  const auto log_density = [&](double shift) {
    return log_likelihood(removal, readings, shift) - .5 * (shift / prior_sd) * (shift / prior_sd);
  };
  const double reach = std::min(8 * prior_sd, most_shift);
  Density table = tabulate(log_density, -reach, reach, points[0]);
  for (const std::size_t i : {1, 2}) {
    const auto [least, most] = support_of(table);
    table = tabulate(log_density, least, most, points[i]);
  }
  return table;
}

}  // namespace libtexture
