#include "libtexture/plan/paint.hpp"

#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

constexpr double thickest_um = 5000;  // thicker films are not car paint: a slip of the unit

}  // namespace

void Gauge::validate() const {
  require_within(uncertainty_um, 0, thickest_um, "Gauge", "uncertainty_um");
  require_within(gain_percent, 0, 50, "Gauge", "gain_percent");
}

double removal_uncertainty_um(const Gauge& gauge, double removed_um, int before, int after) {
  gauge.validate();
  require(std::isfinite(removed_um), "Gauge", "removed_um", "must be finite", removed_um);
  require(before >= 1, "Gauge", "readings before", "must be >= 1", before);
  require(after >= 1, "Gauge", "readings after", "must be >= 1", after);
  return std::hypot(gauge.uncertainty_um * std::sqrt(1.0 / before + 1.0 / after),
                    gauge.gain_percent / 100 * removed_um);
}

void Paint::validate() const {
  if (clear_um) {
    require_positive(*clear_um, "Paint", "clear_um");
    require(*clear_um <= thickest_um, "Paint", "clear_um", "must be at most 5000", *clear_um);
  }
  if (clear_uncertainty_um) {
    require(clear_um.has_value(), "Paint", "clear_uncertainty_um", "must come with clear_um",
            *clear_uncertainty_um);
    require_positive(*clear_uncertainty_um, "Paint", "clear_uncertainty_um");
    require(*clear_uncertainty_um < *clear_um, "Paint", "clear_uncertainty_um", "must be less than clear_um",
            *clear_uncertainty_um);
  }
  gauge.validate();
  require_positive(hardness_mpa, "Paint", "hardness_mpa");
  require(hardness_mpa <= 10000, "Paint", "hardness_mpa", "must be at most 10000", hardness_mpa);
  require_within(refractive_index, 1.4, 1.7, "Paint", "refractive_index");
}

}  // namespace libtexture
