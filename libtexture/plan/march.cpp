#include "libtexture/plan/march.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/tool/dose.hpp"

namespace libtexture {

namespace {

constexpr int halvings = 20;    // of a step's removal, for the moment at which a rule was met
constexpr int path_points = 8;  // of a step, closest where texture falls fastest; smooth to the eye

bool has_texture_rule(const Stop& stop) {
  return stop.touched_share || stop.rms_um || stop.rms_share;
}

bool has_rule(const Stop& stop) {
  return has_texture_rule(stop) || stop.removed_um || stop.clear_owed_um || stop.defect_um;
}

// The quantile of a share, between those at (l + 1/2)/levels; beyond them as at the last.
double quantile_at(const Eigen::ArrayXd& quantiles, double share) {
  const double levels = static_cast<double>(quantiles.size());
  const double place = std::clamp(share * levels - 0.5, 0.0, levels - 1);
  const auto below = static_cast<Eigen::Index>(place);
  const Eigen::Index above = std::min(below + 1, quantiles.size() - 1);
  return std::lerp(quantiles[below], quantiles[above], place - static_cast<double>(below));
}

// One step of one world, as its looks see it.
class Working {
 public:
  Working(const March& march, std::size_t world, const WorldStep& step, int place, const StepCurves& curves,
          const WorldState& state)
      : march_(march),
        world_(world),
        scale_(march.worlds.texture_scale[world]),
        step_(step),
        place_(place),
        curves_(curves),
        state_(state) {}

  StepPoint at(double removed_um) const {
    return curves_.at(state_.band_um[0], step_.stiffness_factor, removed_um / scale_);
  }

  // Clear removed beside the defect, by so many passes [um]; about one above the paint the texture is left
  // out.
  double beside_defect_um(const StepPoint& point, double removed_um, int made) const {
    const double cv = made > 0 ? dose_cv(step_.step.motion, step_.pass_cv, made) : 0;
    const double even_um = march_.bump
                               ? removed_um
                               : scale_ * quantile_at(point.removal_quantile_um, march_.defect_rank(world_));
    return dwell_at(step_.defect_dwell, cv) * even_um;
  }

  double defect_left_um(const StepPoint& point, double removed_um, int made) const {
    const double beside_um = beside_defect_um(point, removed_um, made);
    if (!march_.bump) return state_.defect_left_um - beside_um;
    if (place_ > 0) return state_.defect_left_um;
    return march_.bump->left_um(march_.worlds.defect_um[world_], step_.stiffness_factor / scale_, beside_um);
  }

  bool is_rule_met(const StepPoint& point, double removed_um, int made) const {
    const Stop& stop = step_.step.stop;
    const bool asks_all = stop.when == StopWhen::all;
    bool is_met = asks_all && has_rule(stop);
    const auto count = [&](bool is_one_met) {
      is_met = asks_all ? is_met && is_one_met : is_met || is_one_met;
    };
    const auto rms_um = [&](Eigen::Index band) { return state_.band_um[band] * point.band_ratio[band]; };
    if (stop.touched_share) count(point.touched_share >= *stop.touched_share);
    if (stop.removed_um) count(removed_um >= *stop.removed_um);
    if (stop.defect_um) count(defect_left_um(point, removed_um, made) <= march_.may_stay_um);
    if (stop.rms_um) count(scale_ * rms_um(march_.band_of(stop.band_mm)) <= *stop.rms_um);
    if (stop.rms_share) count(rms_um(0) <= *stop.rms_share * march_.start_rms_um);
    // What scratches owe is dear to find out: only where it decides.
    if (stop.clear_owed_um && is_met == asks_all) count(is_owed_met(point, *stop.clear_owed_um));
    return is_met;
  }

  // The texture, for the split of clear: a step without a rule levels until the target is met.
  bool is_level(double removed_um, int made) const {
    const StepPoint point = at(removed_um);
    if (has_rule(step_.step.stop)) return is_rule_met(point, removed_um, made);
    WorldState there = state_;
    there.band_um *= point.band_ratio;
    there.touched_share = point.touched_share;
    if (march_.job.target.defect) there.defect_left_um = defect_left_um(point, removed_um, made);
    return march_.target_margin(there, world_) >= 0;
  }

  Scratches scratched(const StepPoint& point) const {
    const Step& step = step_.step;
    const double depth_um =
        groove_depth_um(step, step_.pressure_kpa, point.contact_share, march_.hardness_mpa(world_));
    Scratches scratches = state_.scratches;
    const Array2d removed = scale_ * point.removal_quantile_um.transpose();
    scratch(scratches, groove_figures(place_, step.abrasive, step.motion, depth_um), removed);
    return scratches;
  }

 private:
  bool is_owed_met(const StepPoint& point, double owed_um) const {
    const ScratchLimits& limits = march_.job.scratch_limits;
    return grooves_per_cm2(scratched(point), owed_um + limits.visible_depth_um, Marks::earlier) <=
           limits.marks_per_cm2;
  }

  const March& march_;
  const std::size_t world_;
  const double scale_;
  const WorldStep& step_;
  const int place_;
  const StepCurves& curves_;
  const WorldState& state_;
};

// Removal [um] at which the texture was met, which it is after so much by so many passes.
double levelled_at(const Working& working, double removed_um, int made) {
  double low = 0, high = removed_um;
  for (int halving = 0; halving < halvings; ++halving) {
    const double middle = (low + high) / 2;
    (working.is_level(middle, made) ? high : low) = middle;
  }
  return high;
}

}  // namespace

double March::hardness_mpa(std::size_t world) const {
  return job.coating.hardness_mpa * worlds.hardness_factor[world];
}

Eigen::Index March::band_of(const std::optional<std::array<double, 2>>& band_mm) const {
  if (!band_mm) return 0;
  const auto found = std::find(bands_mm.begin(), bands_mm.end(), *band_mm);
  return found == bands_mm.end() ? 0 : static_cast<Eigen::Index>(found - bands_mm.begin());
}

double March::target_margin(const WorldState& state, std::size_t world) const {
  const double scale = worlds.texture_scale[world];
  const double heights =
      height_margin(job.target, {.start_rms_um = scale * start_rms_um,
                                 .rms_um = scale * state.band_um[0],
                                 .band_rms_um = scale * state.band_um[band_of(job.target.band_mm)],
                                 .touched_share = state.touched_share});
  if (!job.target.defect) return heights;
  const double defect = may_stay_um - state.defect_left_um;
  return asks_height(job.target) ? std::min(heights, defect) : defect;
}

double March::defect_rank(std::size_t world) const {
  return 1 - std::pow(1 - worlds.defect_rank[world], 1 / defect_waves);
}

void March::step(std::size_t world, const Panel& panel, const WorldStep& in_world, const StepCurves& curves,
                 const StartSurfaces& starts, int place, WorldState& state) const {
  const Step& step = in_world.step;
  const double scale = worlds.texture_scale[world];
  const bool is_first = place == 0;
  const Working working(*this, world, in_world, place, curves, state);
  DiscUse use;
  double removed = 0;
  int made = 0;
  StepPoint point = working.at(0);
  bool is_met = working.is_rule_met(point, 0, 0);
  while (made < step.passes && !is_met) {
    for (int k = 0; k < step.look_every_passes && made < step.passes; ++k, ++made)
      removed += removal_of_pass_um(step, panel.area_m2, hardness_mpa(world), use);
    point = working.at(removed);
    is_met = working.is_rule_met(point, removed, made);
  }

  if (made == 0) {
    state.efficiency.push_back(0);
    return;
  }

  for (int k = 1; k <= path_points; ++k) {
    const double at_um = removed * k * k / (path_points * path_points);
    state.path.removed_um.push_back(state.removed_um + at_um);
    state.path.rms_um.push_back(scale * state.band_um[0] * working.at(at_um).band_ratio[0]);
  }

  const bool is_levelling = is_first || has_texture_rule(step.stop) || step.stop.defect_um;
  const double levelling =
      is_levelling && working.is_level(removed, made) ? levelled_at(working, removed, made) : removed;
  (is_levelling ? state.levelling_um : state.debt_um) += levelling;
  state.overshoot_um += removed - levelling;

  const double ideal_um = scale * starts.ideal_removal_um(state.band_um[0], point.band_ratio[0]);
  state.efficiency.push_back(removed > 0 ? std::min(1.0, ideal_um / removed) : 0);
  state.scratches = working.scratched(point);
  if (job.target.defect) {
    const double beside_um = working.beside_defect_um(point, removed, made);
    state.defect_left_um = working.defect_left_um(point, removed, made);
    state.defect_removed_um += beside_um;
  }
  if (is_first) state.touched_share = point.touched_share;
  state.band_um *= point.band_ratio;
  state.valley_um *= point.valley_ratio;
  state.removed_um += removed;
  state.removed_sd_um =
      std::hypot(state.removed_sd_um, dose_cv(step.motion, in_world.pass_cv, made) * removed);
  state.minutes += made * pass_minutes(step.motion, panel.area_m2);
  state.discs += step.abrasive.carrier == Carrier::compound ? 0 : use.discs;
}

}  // namespace libtexture
