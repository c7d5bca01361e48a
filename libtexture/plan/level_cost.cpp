#include "libtexture/plan/level_cost.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/seen_target.hpp"
#include "libtexture/plan/target_stop.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/surface/metrology.hpp"

namespace libtexture {

namespace {

constexpr double per_valley = 20;  // reports to the valley depth; even until 1.5 of it,
constexpr double even_until_valleys = 1.5;
constexpr double growth = 1.15;           // then each so much further than the last
constexpr std::size_t reports_a_run = 8;  // surfaces kept at a time
constexpr double tolerance_share = 0.01;  // of the rms height, for amplitudes: below what the reports round
constexpr double least_tolerance_um = 1e-3, least_spacing_um = 1e-2;  // of a surface that is all but flat
constexpr double bands_per_octave = 3;
constexpr double followed_discs = 0.5;  // waves longer than this share of a disc are followed
constexpr double fine_share = 0.01;     // of the variance, in waves that a thinned grid would lose
constexpr int thinned_pixels_per_wave = 4;

// Third octaves from four pixels to the patch's width, within the target's band.
std::vector<double> third_octaves_mm(const HeightField& surface, const Target& target) {
  double low = thinned_pixels_per_wave * surface.pixel_mm();
  double high = std::max(surface.grid().width_mm(), surface.grid().height_mm());
  if (target.rms_um && target.band_mm) {
    low = std::max(low, (*target.band_mm)[0]);
    high = std::min(high, (*target.band_mm)[1]);
  }
  std::vector<double> edges{low};
  while (edges.back() < high || edges.size() < 2)
    edges.push_back(edges.back() * std::exp2(1 / bands_per_octave));
  return edges;
}

Obstacle obstacle_of(const HeightField& now, const Target& target, const Step& step,
                     const DiscContact& contact) {
  const std::vector<double> edges = third_octaves_mm(now, target);
  const std::vector<double> rms = band_rms_um(now, edges);
  // What a person sees in a mirror is slope; the other parts count height.
  const bool counts_slope = !target.rms_um && !target.preset;
  Obstacle worst;
  double most = -1;
  for (std::size_t i = 0; i < rms.size(); ++i) {
    const double wavelength_mm = std::sqrt(edges[i] * edges[i + 1]);
    const double weight = counts_slope ? rms[i] / wavelength_mm : rms[i];
    if (weight <= most) continue;
    most = weight;
    worst.wavelength_mm = wavelength_mm;
    worst.rms_um = rms[i];
  }
  const double q = 2 * std::numbers::pi / (worst.wavelength_mm * metre_per_mm);
  const double footprint = contact.footprint_mm ? footprint_factor(q, *contact.footprint_mm) : 1;
  worst.clear_per_e_fold_um = contact.pressure_kpa * pascal_per_kpa /
                                  (stiffness_pa_per_m(contact.backing, q) * footprint) / metre_per_um +
                              grain_height_um(step, contact.pressure_kpa);
  worst.is_followed = worst.wavelength_mm > followed_discs * step.motion.disc_diameter_mm;
  return worst;
}

// Where between two readings a target is met, as a share of the way: its last part decides, by a straight
// line.
double crossing_share(const std::vector<Reached>& before, const std::vector<Reached>& after) {
  double share = 0;
  for (std::size_t i = 0; i < before.size(); ++i)
    if (!before[i].is_met)
      share = std::max(share, (before[i].wanted - *before[i].found) / (*after[i].found - *before[i].found));
  return std::clamp(share, 0.0, 1.0);
}

}  // namespace

LevelCost level_cost(const HeightField& surface, const Target& target, const Step& step,
                     const LevelConditions& conditions, const Progress& progress) {
  target.validate();
  require_positive(conditions.most_um, "LevelConditions", "most_um");
  require_positive(conditions.hardness_mpa, "LevelConditions", "hardness_mpa");
  const double most_um = conditions.most_um;
  const DiscContact contact = disc_contact(step, surface.grid(), conditions.crown);
  LevelCost cost;
  cost.target = judge_target(target, surface, surface, 0);
  cost.rms_um = surface.rms_um();
  cost.obstacle = obstacle_of(surface, target, step, contact);
  const double valley_um = surface.valley_depth_um();
  const double tolerance_um = std::max(least_tolerance_um, tolerance_share * surface.rms_um());
  HeightField now = surface;
  double spacing = std::max(valley_um / per_valley, least_spacing_um);
  while (!is_reached(cost.target) && cost.removal_um + least_removal_um <= most_um) {
    const double before = cost.removal_um;
    std::vector<double> at;
    for (std::size_t k = 0; k < reports_a_run; ++k) {
      const double last = at.empty() ? 0 : at.back();
      const double room = most_um - cost.removal_um;
      if (last >= room) break;
      if (cost.removal_um + last > even_until_valleys * valley_um) spacing *= growth;
      // The last one takes what would be too small a rest.
      at.push_back(last + spacing + least_removal_um > room ? room : last + spacing);
    }
    const Levelled levelled = level(now, contact.backing, contact.pressure_kpa,
                                    {.removal_um = at.back(),
                                     .report_at_um = at,
                                     .amplitude_tolerance_um = tolerance_um,
                                     .disc_diameter_mm = contact.footprint_mm,
                                     .grain_um = grain_height_um(step, contact.pressure_kpa)},
                                    part_of(progress, before / most_um, (before + at.back()) / most_um));
    for (std::size_t k = 0; k < at.size() && !is_reached(cost.target); ++k) {
      now = levelled.surfaces[k];
      const double depth_um =
          groove_depth_um(step, contact.pressure_kpa, levelled.contact_share[k], conditions.hardness_mpa);
      const std::vector<Reached> target_before = cost.target;
      const double removal_before_um = cost.removal_um;
      cost.removal_um = before + at[k];
      cost.rms_um = now.rms_um();
      cost.touched_share =
          (surface.height_um() - now.height_um() > touched_in_depths * depth_um).cast<double>().mean();
      cost.target = judge_target(target, surface, now, cost.touched_share);
      if (is_reached(cost.target))
        cost.removal_um = removal_before_um +
                          crossing_share(target_before, cost.target) * (cost.removal_um - removal_before_um);
    }
  }
  cost.is_reached = is_reached(cost.target);
  cost.obstacle = obstacle_of(now, target, step, contact);
  return cost;
}

Stop stop_at(const Target& target, const LevelCost& cost) {
  return asks_sight(target) ? Stop{.rms_um = cost.rms_um} : target_stop(target);
}

HeightField thinned(const HeightField& surface, int most_pixels) {
  const Array2d& height = surface.height_um();
  if (height.size() <= most_pixels || height.rows() % 2 != 0 || height.cols() % 2 != 0) return surface;
  const double pixel_mm = 2 * surface.pixel_mm();
  const double rms = surface.rms_um();
  const double fine = band_rms_um(surface, {surface.pixel_mm(), thinned_pixels_per_wave * pixel_mm}).front();
  if (fine * fine > fine_share * rms * rms) return surface;
  Array2d fewer(height.rows() / 2, height.cols() / 2);
  for (Eigen::Index row = 0; row < fewer.rows(); ++row)
    for (Eigen::Index col = 0; col < fewer.cols(); ++col) fewer(row, col) = height(2 * row, 2 * col);
  return thinned(HeightField(std::move(fewer), pixel_mm), most_pixels);
}

}  // namespace libtexture
