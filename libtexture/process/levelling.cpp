#include "libtexture/process/levelling.hpp"

#include <cmath>
#include <unordered_map>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/erosion.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {
namespace {

constexpr double rounding = 1e-6;  // of a difference of removals

Array2d on_grid(const AlignedVector<double>& values, const Grid& grid) {
  return Eigen::Map<const Array2d>(values.data(), grid.rows, grid.cols);
}

Erosion wear(const HeightField& field, const Backing& backing, double pressure_kpa,
             const LevelOptions& options, const std::vector<double>& at, const Progress& progress) {
  const Array2d& h = field.height_um();
  const AlignedVector<double> height(h.data(), h.data() + h.size());
  if (backing.support == Support::rigid) return truncate(height, at);
  const auto stiffness = relative_stiffness_per_um(field.grid(), backing, pressure_kpa,
                                                   options.disc_diameter_mm, options.grain_um);
  return erode(field.grid(), height, stiffness, at, {.amplitude_tolerance = options.amplitude_tolerance_um},
               progress);
}

void add_report(Levelled& levelled, const HeightField& before, const ErosionState& state,
                double touched_beyond_um) {
  const HeightField& surface =
      levelled.surfaces.emplace_back(on_grid(state.height, before.grid()), before.pixel_mm());
  levelled.removed_um.push_back(state.removal);
  levelled.rms_um.push_back(surface.rms_um());
  levelled.peak_to_valley_um.push_back(surface.peak_to_valley_um());
  levelled.valley_depth_um.push_back(surface.valley_depth_um());
  levelled.contact_share.push_back(state.contact_share);
  levelled.touched_share.push_back(
      (before.height_um() - surface.height_um() > touched_beyond_um).cast<double>().mean());
}

}  // namespace

void LevelOptions::validate() const {
  require(std::isfinite(removal_um) && removal_um >= least_removal_um, "LevelOptions", "removal_um",
          "must be at least .001, a nanometre", removal_um);
  require_positive(amplitude_tolerance_um, "LevelOptions", "amplitude_tolerance_um");
  require_not_negative(touched_beyond_um, "LevelOptions", "touched_beyond_um");
  if (disc_diameter_mm) require_positive(*disc_diameter_mm, "LevelOptions", "disc_diameter_mm");
  require_not_negative(grain_um, "LevelOptions", "grain_um");
  const double rise = (1 - rounding) * least_removal_um;
  double last = 0;
  for (const double removal : report_at_um) {
    require(removal - last >= rise && removal <= removal_um, "LevelOptions", "report_at_um",
            "must rise from 0 to removal_um by .001 or more each", removal);
    last = removal;
  }
  require(last == removal_um || removal_um - last >= rise, "LevelOptions", "removal_um",
          "must be the last of report_at_um or .001 above it", removal_um);
}

AlignedVector<double> relative_stiffness_per_um(const Grid& grid, const Backing& backing, double pressure_kpa,
                                                std::optional<double> disc_diameter_mm, double grain_um) {
  grid.validate();
  backing.validate();
  require_positive(pressure_kpa, "level", "pressure_kpa");
  const double per_um = metre_per_um / (pressure_kpa * pascal_per_kpa);
  std::unordered_map<double, double> known;  // waves of one length differ in direction only
  AlignedVector<double> stiffness;
  for (const double q : wave_numbers_per_m(grid)) {
    const auto [entry, is_new] = known.try_emplace(q, 0);
    if (is_new && q > 0) {
      entry->second = stiffness_pa_per_m(backing, q) * per_um;
      if (disc_diameter_mm) entry->second *= footprint_factor(q, *disc_diameter_mm);
    }
    stiffness.push_back(entry->second);
  }
  return with_grains(std::move(stiffness), grain_um);
}

AlignedVector<double> with_grains(AlignedVector<double> stiffness_per_um, double grain_um) {
  for (double& stiffness : stiffness_per_um) stiffness /= 1 + grain_um * stiffness;
  return stiffness_per_um;
}

Levelled level(const HeightField& field, const Backing& backing, double pressure_kpa,
               const LevelOptions& options, const Progress& progress) {
  backing.validate();
  require_positive(pressure_kpa, "level", "pressure_kpa");
  options.validate();
  std::vector<double> at = options.report_at_um;
  const bool ends_with_report = at.empty() || at.back() == options.removal_um;
  if (at.empty() || !ends_with_report) at.push_back(options.removal_um);

  const Erosion erosion = wear(field, backing, pressure_kpa, options, at, progress);
  const HeightField end(on_grid(erosion.states.back().height, field.grid()), field.pixel_mm());
  Levelled levelled{.surface = end,
                    .removal_map_um = field.height_um() - end.height_um(),
                    .increments = erosion.increments,
                    .transform_pairs = erosion.transform_pairs,
                    .residual = erosion.residual,
                    .amplitude_error_um = erosion.amplitude_error};
  const std::size_t reports = at.size() - (ends_with_report ? 0 : 1);
  for (std::size_t k = 0; k < reports; ++k)
    add_report(levelled, field, erosion.states[k], options.touched_beyond_um);
  report(progress, 1);
  return levelled;
}

}  // namespace libtexture
