#include "libtexture/plan/level_cost.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/plan/seen_target.hpp"
#include "libtexture/plan/target_stop.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/surface/metrology.hpp"

namespace libtexture {

namespace {

constexpr double per_valley = 20;  // reports to the valley depth; even until 1.5 of it,
constexpr double even_until_valleys = 1.5;
constexpr double growth = 1.15;            // then each so much further than the last
constexpr double least_spacing_um = 1e-2;  // of a surface that is all but flat
constexpr double bands_per_octave = 3;
constexpr double followed_discs = 0.5;  // waves longer than this share of a disc are followed
constexpr int pixels_per_wave = 4;      // shorter ones are not told apart

// Third octaves from four pixels to the patch's width, within the target's band.
std::vector<double> third_octaves_mm(const HeightField& surface, const Target& target) {
  double low = pixels_per_wave * surface.pixel_mm();
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

// The target's defect under a step, best estimate.
class DefectCut {
 public:
  DefectCut(const Target& target, const Step& step, const LevelConditions& conditions,
            const Progress& progress)
      : defect_(target.defect) {
    if (!defect_ || !is_followed(*defect_)) return;
    curve_.emplace(
        BumpPlan{.defect = *defect_, .step = step, .crown = conditions.crown, .most_um = conditions.most_um},
        progress);
  }

  double left_um(double removal_um) const {
    const double size = size_um(defect_.value());
    return curve_ ? curve_->left_um(size, 1, removal_um) : size - removal_um;
  }

  // Until it is gone; all there is to go where it never is.
  double removal_um(double most_um) const {
    if (!defect_) return 0;
    return curve_ ? curve_->removal_to_um(may_stay_um(*defect_)).value_or(most_um) : size_um(*defect_);
  }

 private:
  const std::optional<Defect> defect_;
  std::optional<BumpCurve> curve_;
};

// What a surface makes of a target, scratches left out; removal_um: mean clear that it has lost.
std::vector<Reached> judge_level(const Target& target, const HeightField& before, const HeightField& now,
                                 double touched_share, const DefectCut& cut, double removal_um) {
  const std::optional<Target> rest = without_defect(target);
  std::vector<Reached> parts;
  if (rest) parts = judge_target(*rest, before, now, touched_share);
  if (target.defect) parts.push_back(judge_defect(target, cut.left_um(removal_um)));
  return parts;
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
  const DefectCut cut(target, step, conditions, part_of(progress, 0, 0));
  cost.target = judge_level(target, surface, surface, 0, cut, 0);
  cost.defect_um = cut.removal_um(most_um);
  cost.rms_um = surface.rms_um();
  cost.obstacle = obstacle_of(surface, target, step, contact);
  const double valley_um = surface.valley_depth_um();
  HeightField now = surface;
  double spacing = std::max(valley_um / per_valley, least_spacing_um);
  double share_done = 0;
  LevellingCurve curve(surface, contact.backing, contact.pressure_kpa,
                       {.rms_tolerance_um = rms_tolerance_um(surface),
                        .is_touch_asked = target.preset == TargetPreset::full,
                        .disc_diameter_mm = contact.footprint_mm,
                        .grain_um = grain_height_um(step, contact.pressure_kpa)},
                       [&](double) { report(progress, share_done); });
  while (!is_reached(cost.target) && cost.removal_um + least_removal_um <= most_um) {
    const double before_um = cost.removal_um;
    if (before_um > even_until_valleys * valley_um) spacing *= growth;
    // The last one takes what would be too small a rest.
    cost.removal_um = before_um + spacing + least_removal_um > most_um ? most_um : before_um + spacing;
    CurvePoint point = curve.at(cost.removal_um);
    now = std::move(point.surface);
    const double depth_um =
        groove_depth_um(step, contact.pressure_kpa, point.contact_share, conditions.hardness_mpa);
    const std::vector<Reached> target_before = cost.target;
    cost.rms_um = now.rms_um();
    cost.touched_share =
        (surface.height_um() - now.height_um() > touched_in_depths * depth_um).cast<double>().mean();
    cost.target = judge_level(target, surface, now, cost.touched_share, cut, cost.removal_um);
    share_done = cost.removal_um / most_um;
    report(progress, share_done);
    if (is_reached(cost.target))
      cost.removal_um = std::lerp(before_um, cost.removal_um, crossing_share(target_before, cost.target));
  }
  cost.is_reached = is_reached(cost.target);
  cost.obstacle = obstacle_of(now, target, step, contact);
  return cost;
}

Stop stop_at(const Target& target, const LevelCost& cost) {
  Stop stop = asks_sight(target) ? Stop{.rms_um = cost.rms_um} : target_stop(target);
  if (!target.defect) return stop;
  stop.defect_um = cost.defect_um;
  if (without_defect(target)) stop.when = StopWhen::all;
  return stop;
}

}  // namespace libtexture
