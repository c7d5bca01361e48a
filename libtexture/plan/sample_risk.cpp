#include "libtexture/plan/sample_risk.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/plan/step_curves.hpp"
#include "libtexture/plan/worlds.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/process/scratches.hpp"
#include "libtexture/surface/ideal_cut.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/viewer.hpp"

namespace libtexture {

namespace {

constexpr std::size_t first_factors = 5, later_factors = 3;  // nodes of S/p: the first step levels most
constexpr int most_starts = 5;                               // nodes of what earlier steps leave
constexpr double start_spacing = 0.35;                       // of ln(rms) between them
constexpr double rare = 0.002;  // share of worlds at either end that take the outermost node's curve
constexpr int worlds_a_task = 64;

// The nodes are solved on every second pixel (and again) while so many are left to a wave and to a side:
// tests and docs/physics.md show what that moves.
constexpr double pixels_a_wave = 8;
constexpr int pixels_a_side = 64;

// How a world stands. Texture in units of the patch as it is given: the world's over its texture scale.
struct State {
  Eigen::ArrayXd band_um = {};
  double valley_um = 0;
  double touched_share = 0;
  Scratches scratches = {};  // maps of removal_levels pixels that stand for the patch's
  double removed_um = 0, levelling_um = 0, overshoot_um = 0, debt_um = 0;
  double removed_sd_um = 0;  // of uneven dwell
  double minutes = 0, discs = 0;
  std::vector<double> efficiency = {};  // of each step
};

// One step in one world.
struct StepWorld {
  Step step;
  double pressure_kpa = 0;
  double stiffness_factor = 1;
};

struct PanelWorlds {
  const Panel* panel;
  std::vector<State> states;
};

void in_tasks(std::size_t count, const std::function<void(std::size_t)>& work) {
  const auto tasks = static_cast<int>((count + worlds_a_task - 1) / worlds_a_task);
  parallel_for(tasks, 0, [&](int task) {
    const auto first = static_cast<std::size_t>(task) * worlds_a_task;
    for (std::size_t i = first; i < std::min(count, first + worlds_a_task); ++i) work(i);
  });
}

HeightField coarser(HeightField field) {
  const double longest_mm = mean_wavelength_mm(field) / pixels_a_wave;
  while (2 * field.pixel_mm() <= longest_mm && field.grid().rows % 2 == 0 && field.grid().cols % 2 == 0 &&
         std::min(field.grid().rows, field.grid().cols) >= 2 * pixels_a_side) {
    const auto every_second = [](int count) { return Eigen::seqN(0, count / 2, 2); };
    const Array2d kept = field.height_um()(every_second(field.grid().rows), every_second(field.grid().cols));
    field = HeightField(kept, 2 * field.pixel_mm());
  }
  return field;
}

bool has_texture_rule(const Stop& stop) {
  return stop.touched_share || stop.rms_um;
}

bool has_rule(const Stop& stop) {
  return has_texture_rule(stop) || stop.removed_um || stop.clear_owed_um;
}

// Straight lines through points of rising x; beyond them as at the last.
double between(const std::vector<double>& x, const std::vector<double>& y, double at) {
  const auto above = std::upper_bound(x.begin(), x.end(), at) - x.begin();
  if (above == 0) return y.front();
  const auto high = static_cast<std::size_t>(above);
  if (high == x.size()) return y.back();
  return y[high - 1] + (at - x[high - 1]) / (x[high] - x[high - 1]) * (y[high] - y[high - 1]);
}

class Sampler {
 public:
  Sampler(const Job& job, const HeightField& surface, const Sequence& sequence, const Progress& progress)
      : job_(job),
        surface_(coarser(surface)),
        sequence_(sequence),
        progress_(progress),
        worlds_(worlds_of(job)) {
    bands_mm_.push_back({0, HUGE_VAL});
    if (job.target.rms_um && job.target.band_mm) bands_mm_.push_back(*job.target.band_mm);
    for (const Step& step : sequence.step)
      if (step.stop.band_mm && band_of(step.stop.band_mm) == 0) bands_mm_.push_back(*step.stop.band_mm);
    set_starts({surface_});
    State start;
    start.band_um = band_rms_of(surface_, bands_mm_);
    start.valley_um = surface_.valley_depth_um();
    start_ = start;
    for (const Panel& panel : job.panel)
      panels_.push_back({&panel, std::vector<State>(worlds_.person.size(), start)});
    wavelength_mm_ = mean_wavelength_mm(surface_);
  }

  void work(std::size_t place);
  SampledRisk result(double clarity_light);

 private:
  std::size_t band_of(const std::optional<std::array<double, 2>>& band_mm) const {
    if (!band_mm) return 0;
    const auto found = std::find(bands_mm_.begin(), bands_mm_.end(), *band_mm);
    return found == bands_mm_.end() ? 0 : static_cast<std::size_t>(found - bands_mm_.begin());
  }
  double scale(std::size_t world) const { return worlds_.texture_scale[world]; }
  double hardness_mpa(std::size_t world) const {
    return job_.coating.hardness_mpa * worlds_.hardness_factor[world];
  }
  std::vector<StepWorld> step_worlds_of(const Panel& panel, const Step& step, const StepWorlds& drawn,
                                        const DiscContact& nominal) const;
  CurvePlan plan_of(const Step& step, const DiscContact& nominal,
                    const std::vector<std::vector<StepWorld>>& in_worlds, bool is_first) const;
  void march(std::size_t world, const Panel& panel, const StepWorld& in_world, const StepCurves& curves,
             bool is_first, State& state) const;
  double margin(const State& state, const Step& step, const StepPoint& point, double removed_um,
                std::size_t world) const;
  double target_margin(const State& state, const StepPoint& point, std::size_t world) const;
  Scratches scratched(const State& state, const StepWorld& in_world, const StepPoint& point,
                      std::size_t world) const;
  double efficiency(const State& before, const StepPoint& point, double removed_um, std::size_t world) const;
  std::vector<HeightField> next_starts(const CurvePlan& plan, const StepCurves& curves,
                                       const std::vector<double>& start_rms_um);
  bool is_missed(const State& state, std::size_t world) const;
  void look_at_ends(double clarity_light);
  void set_starts(std::vector<HeightField> starts);

  const Job& job_;
  const HeightField surface_;
  const Sequence& sequence_;
  const Progress& progress_;
  Worlds worlds_;
  std::vector<std::array<double, 2>> bands_mm_;
  std::vector<HeightField> starts_;
  std::vector<double> starts_rms_um_;
  std::vector<IdealCut> ideal_;
  State start_;
  std::vector<PanelWorlds> panels_;
  double wavelength_mm_ = 0;
  int solves_ = 0;
  // What a person sees of the surfaces at the end, by texture scale and surface (starts_).
  std::vector<double> clarity_scales_;
  std::vector<std::vector<double>> clarity_percent_;
  std::vector<double> wander_arcmin_;
};

std::vector<StepWorld> Sampler::step_worlds_of(const Panel& panel, const Step& step, const StepWorlds& drawn,
                                               const DiscContact& nominal) const {
  const double q_per_m = wavelength_mm_ > 0 ? 2 * std::numbers::pi / (wavelength_mm_ * metre_per_mm) : 0;
  const double at_nominal = stiffness_pa_per_m(nominal.backing, q_per_m) / nominal.pressure_kpa;
  const bool has_clock_only = q_per_m == 0 || !std::isfinite(at_nominal);
  std::vector<StepWorld> all(worlds_.person.size());
  in_tasks(all.size(), [&](std::size_t world) {
    StepWorld& one = all[world];
    one.step = in_world(step, drawn, world, panel.crown_radius_m);
    const DiscContact contact = disc_contact(one.step, surface_.grid(), panel.crown_radius_m);
    one.pressure_kpa = contact.pressure_kpa;
    if (!has_clock_only)
      one.stiffness_factor =
          scale(world) * stiffness_pa_per_m(contact.backing, q_per_m) / contact.pressure_kpa / at_nominal;
  });
  return all;
}

CurvePlan Sampler::plan_of(const Step& step, const DiscContact& nominal,
                           const std::vector<std::vector<StepWorld>>& in_worlds, bool is_first) const {
  std::vector<double> factors, removals;
  const double wetness = wetness_effect(step.abrasive, step.wetness).wear_rate;
  for (const std::vector<StepWorld>& panel : in_worlds)
    for (std::size_t world = 0; world < panel.size(); ++world) {
      const Step& one = panel[world].step;
      factors.push_back(panel[world].stiffness_factor);
      const double fresh =
          one.abrasive.wear_rate_mm3_per_n_m * wetness * hardness_wear_factor(hardness_mpa(world));
      removals.push_back(step.passes * removal_per_pass_um(one.motion, fresh) / scale(world));
    }
  const double least = quantile_of(factors, rare), most = quantile_of(factors, 1 - rare);
  CurvePlan plan;
  plan.step = step;
  plan.contact = nominal;
  plan.hardness_mpa = job_.coating.hardness_mpa;
  plan.starts = starts_;
  const std::size_t nodes = most / least > 1.001 ? (is_first ? first_factors : later_factors) : 1;
  for (std::size_t k = 0; k < nodes; ++k)
    plan.stiffness_factors.push_back(
        nodes == 1 ? least
                   : least * std::pow(most / least, static_cast<double>(k) / static_cast<double>(nodes - 1)));
  plan.most_removal_um = quantile_of(removals, 1 - rare);
  plan.bands_mm = bands_mm_;
  return plan;
}

// Margin by which a look meets the step's rule: >= 0 = met.
double Sampler::margin(const State& state, const Step& step, const StepPoint& point, double removed_um,
                       std::size_t world) const {
  const Stop& stop = step.stop;
  double best = -HUGE_VAL;
  if (stop.touched_share) best = std::max(best, point.touched_share - *stop.touched_share);
  if (stop.removed_um) best = std::max(best, removed_um - *stop.removed_um);
  if (stop.rms_um) {
    const auto band = static_cast<Eigen::Index>(band_of(stop.band_mm));
    best = std::max(best, *stop.rms_um - scale(world) * state.band_um[band] * point.band_ratio[band]);
  }
  return best;
}

double Sampler::target_margin(const State& state, const StepPoint& point, std::size_t world) const {
  const Target& target = job_.target;
  double least = HUGE_VAL;
  if (target.rms_um) {
    const auto band = static_cast<Eigen::Index>(band_of(target.band_mm));
    least = std::min(least, *target.rms_um - scale(world) * state.band_um[band] * point.band_ratio[band]);
  }
  if (target.preset == TargetPreset::full) least = std::min(least, point.touched_share - full_touched_share);
  if (target.preset == TargetPreset::partial)
    least = std::min(least, partial_rms_share * start_.band_um[0] - state.band_um[0] * point.band_ratio[0]);
  return std::isinf(least) ? -HUGE_VAL : least;
}

Scratches Sampler::scratched(const State& state, const StepWorld& in_world, const StepPoint& point,
                             std::size_t world) const {
  const double depth_um =
      groove_depth_um(in_world.step, in_world.pressure_kpa, point.contact_share, hardness_mpa(world));
  Scratches scratches = state.scratches;
  const Array2d removed = scale(world) * point.removal_quantile_um.transpose();
  scratch(scratches,
          groove_figures(title_of(in_world.step), in_world.step.abrasive, in_world.step.motion, depth_um),
          removed);
  return scratches;
}

double Sampler::efficiency(const State& before, const StepPoint& point, double removed_um,
                           std::size_t world) const {
  if (!(removed_um > 0)) return 0;
  // Between the start surfaces, in shares of their rms heights.
  std::vector<double> shares;
  for (std::size_t i = 0; i < starts_.size(); ++i) {
    const double height = starts_rms_um_[i];
    const double left = height * std::min(1.0, point.band_ratio[0]);
    shares.push_back(height > 0 ? ideal_[i].removal_um(left) / height : 0);
  }
  const double rms = before.band_um[0];
  return std::min(1.0, scale(world) * rms * between(starts_rms_um_, shares, rms) / removed_um);
}

void Sampler::march(std::size_t world, const Panel& panel, const StepWorld& in_world,
                    const StepCurves& curves, bool is_first, State& state) const {
  const Step& step = in_world.step;
  const double rms = state.band_um[0], s = scale(world);
  const auto point_at = [&](double removed_um) {
    return curves.at(rms, in_world.stiffness_factor, removed_um / s);
  };
  const auto is_owed_met = [&](const StepPoint& point) {
    if (!step.stop.clear_owed_um) return false;
    const ScratchLimits& limits = job_.scratch_limits;
    return grooves_per_cm2(scratched(state, in_world, point, world),
                           *step.stop.clear_owed_um + limits.visible_depth_um,
                           Marks::earlier) <= limits.marks_per_cm2;
  };
  DiscUse use;
  double removed = 0;
  int made = 0;
  bool is_met = false;
  StepPoint point;
  while (made < step.passes && !is_met) {
    for (int k = 0; k < step.look_every_passes && made < step.passes; ++k, ++made)
      removed += removal_of_pass_um(step, panel.area_m2, hardness_mpa(world), use);
    point = point_at(removed);
    is_met = margin(state, step, point, removed, world) >= 0 || is_owed_met(point);
  }

  // The moment at which the texture was met: by the step's rule, or the job's target where it has none.
  const bool is_levelling = is_first || has_texture_rule(step.stop);
  const auto is_level = [&](double at_um) {
    const StepPoint there = point_at(at_um);
    if (!has_rule(step.stop)) return target_margin(state, there, world) >= 0;
    return margin(state, step, there, at_um, world) >= 0 || is_owed_met(there);
  };
  if (!is_levelling) {
    state.debt_um += removed;
  } else if (!is_level(removed)) {
    state.levelling_um += removed;
  } else {
    double low = 0, high = removed;
    for (int halving = 0; halving < 20; ++halving) {
      const double middle = (low + high) / 2;
      (is_level(middle) ? high : low) = middle;
    }
    state.levelling_um += high;
    state.overshoot_um += removed - high;
  }

  state.efficiency.push_back(efficiency(state, point, removed, world));
  state.scratches = scratched(state, in_world, point, world);
  if (is_first) state.touched_share = point.touched_share;
  state.band_um *= point.band_ratio;
  state.valley_um *= point.valley_ratio;
  state.removed_um += removed;
  state.removed_sd_um = std::hypot(state.removed_sd_um, step.motion.dwell_cv * removed);
  state.minutes += made * pass_minutes(step.motion, panel.area_m2);
  state.discs += step.abrasive.carrier == Carrier::compound ? 0 : use.discs;
}

// Surfaces that span what the step leaves, each made from the start of a world that ends like it.
std::vector<HeightField> Sampler::next_starts(const CurvePlan& plan, const StepCurves& curves,
                                              const std::vector<double>& start_rms_um) {
  std::vector<double> ends;
  for (const PanelWorlds& panel : panels_)
    for (const State& state : panel.states) ends.push_back(state.band_um[0]);
  const double least = quantile_of(ends, rare), most = quantile_of(ends, 1 - rare);
  if (!(least > 0)) return {starts_.back()};
  const int count =
      std::clamp(1 + static_cast<int>(std::ceil(std::log(most / least) / start_spacing)), 1, most_starts);
  std::vector<HeightField> made(static_cast<std::size_t>(count), starts_.front());
  parallel_for(count, 0, [&](int k) {
    const double wish =
        count == 1 ? quantile_of(ends, .5) : least * std::pow(most / least, k / (count - 1.0));
    std::size_t like = 0;
    for (std::size_t i = 1; i < ends.size(); ++i)
      if (std::abs(ends[i] - wish) < std::abs(ends[like] - wish)) like = i;
    const auto nearer = [&](const HeightField& a, const HeightField& b) {
      return std::abs(a.rms_um() - start_rms_um[like]) < std::abs(b.rms_um() - start_rms_um[like]);
    };
    const HeightField& start = *std::min_element(starts_.begin(), starts_.end(), nearer);
    made[static_cast<std::size_t>(k)] =
        surface_after(plan, start, curves.removal_to_um(start.rms_um(), wish));
  });
  solves_ += count;
  std::sort(made.begin(), made.end(),
            [](const HeightField& a, const HeightField& b) { return a.rms_um() < b.rms_um(); });
  std::vector<HeightField> apart;
  for (HeightField& surface : made)
    if (apart.empty() || surface.rms_um() > 1.001 * apart.back().rms_um())
      apart.push_back(std::move(surface));
  return apart;
}

void Sampler::work(std::size_t place) {
  const Step& step = sequence_.step[place];
  const bool is_first = place == 0;
  const DiscContact nominal = disc_contact(step, surface_.grid(), job_.panel.front().crown_radius_m);
  const StepWorlds drawn = step_worlds(worlds_, step, static_cast<int>(place));
  std::vector<std::vector<StepWorld>> in_worlds;
  for (const PanelWorlds& panel : panels_)
    in_worlds.push_back(step_worlds_of(*panel.panel, step, drawn, nominal));
  const CurvePlan plan = plan_of(step, nominal, in_worlds, is_first);
  const double steps = static_cast<double>(sequence_.step.size());
  const StepCurves curves(
      plan, progress_ ? Progress([&](double done) { progress_((static_cast<double>(place) + done) / steps); })
                      : Progress());
  solves_ += curves.solves();

  std::vector<double> start_rms_um;
  for (std::size_t p = 0; p < panels_.size(); ++p) {
    for (const State& state : panels_[p].states) start_rms_um.push_back(state.band_um[0]);
    in_tasks(panels_[p].states.size(), [&](std::size_t world) {
      march(world, *panels_[p].panel, in_worlds[p][world], curves, is_first, panels_[p].states[world]);
    });
  }
  const bool is_last = place + 1 == sequence_.step.size();
  const bool is_seen = job_.target.image_clarity_percent || job_.target.letter_mm;
  if (!is_last || is_seen) set_starts(next_starts(plan, curves, start_rms_um));
}

void Sampler::set_starts(std::vector<HeightField> starts) {
  starts_ = std::move(starts);
  starts_rms_um_.clear();
  ideal_.clear();
  for (const HeightField& start : starts_) {
    starts_rms_um_.push_back(start.rms_um());
    ideal_.emplace_back(start);
  }
}

void Sampler::look_at_ends(double clarity_light) {
  if (job_.target.image_clarity_percent) {
    for (const double share : {.05, .50, .95})
      clarity_scales_.push_back(quantile_of(worlds_.texture_scale, share));
    for (const double s : clarity_scales_) {
      std::vector<double> row;
      for (const HeightField& end : starts_)
        row.push_back(clarity_light *
                      image_clarity_percent(HeightField(end.height_um() * s, end.pixel_mm())));
      clarity_percent_.push_back(std::move(row));
    }
  }
  if (job_.target.letter_mm)
    for (const HeightField& end : starts_) wander_arcmin_.push_back(seen_wander_arcmin(end, job_.viewer));
}

bool Sampler::is_missed(const State& state, std::size_t world) const {
  const Target& target = job_.target;
  StepPoint here;
  here.band_ratio = Eigen::ArrayXd::Ones(state.band_um.size());
  here.touched_share = state.touched_share;
  if ((target.rms_um || target.preset) && target_margin(state, here, world) < 0) return true;
  if (target.letter_mm &&
      smallest_letter_mm(scale(world) * between(starts_rms_um_, wander_arcmin_, state.band_um[0]),
                         *target.distance_m) > *target.letter_mm)
    return true;
  if (target.image_clarity_percent) {
    std::vector<double> by_scale;
    for (const std::vector<double>& row : clarity_percent_)
      by_scale.push_back(between(starts_rms_um_, row, state.band_um[0]));
    if (between(clarity_scales_, by_scale, scale(world)) < *target.image_clarity_percent) return true;
  }
  return false;
}

SampledRisk Sampler::result(double clarity_light) {
  look_at_ends(clarity_light);
  const IdealCut ideal(surface_);
  const auto target_band = static_cast<Eigen::Index>(job_.target.rms_um ? band_of(job_.target.band_mm) : 0);
  SampledRisk sampled;
  sampled.node_solves = solves_;
  for (std::size_t p = 0; p < panels_.size(); ++p) {
    const auto& [panel, states] = panels_[p];
    PanelWork work;
    RiskDraws draws;
    draws.step_efficiency.resize(sequence_.step.size());
    for (std::size_t world = 0; world < states.size(); ++world) {
      const State& state = states[world];
      const double s = scale(world);
      work.removed_um.push_back(state.removed_um);
      work.dwell_cv.push_back(state.removed_um > 0 ? state.removed_sd_um / state.removed_um : 0);
      work.valley_depth_um.push_back(s * state.valley_um);
      work.valley_before_um.push_back(s * start_.valley_um);
      draws.removed_um.push_back(state.removed_um);
      draws.levelling_um.push_back(state.levelling_um);
      draws.overshoot_um.push_back(state.overshoot_um);
      draws.debt_um.push_back(state.debt_um);
      draws.rms_um.push_back(s * state.band_um[target_band]);
      draws.touched_share.push_back(state.touched_share);
      draws.minutes.push_back(state.minutes);
      draws.discs.push_back(state.discs);
      draws.levelling_efficiency.push_back(
          state.removed_um > 0 ? std::min(1.0, s * ideal.removal_um(state.band_um[0]) / state.removed_um)
                               : 0);
      for (std::size_t step = 0; step < state.efficiency.size(); ++step)
        draws.step_efficiency[step].push_back(state.efficiency[step]);
      draws.is_target_missed.push_back(is_missed(state, world) ? 1 : 0);
    }
    const FilmMap film = film_map(*panel, job_.coating);
    const double patch_m2 =
        surface_.grid().width_mm() * surface_.grid().height_mm() * metre_per_mm * metre_per_mm;
    const PanelExtremes extremes =
        extremes_of(cells_of(*panel), film, work, disc_area_m2(sequence_.step.front().motion), patch_m2,
                    wavelength_mm_, hash_key({job_.seed, p}));
    draws.clear_left_least_um = extremes.clear_left_least_um;
    for (std::size_t world = 0; world < states.size(); ++world) {
      draws.is_struck_through.push_back(extremes.clear_left_least_um[world] <= 0 ? 1 : 0);
      draws.is_budget_exceeded.push_back(
          breaks(job_.budget, states[world].removed_um, extremes.clear_left_um[world]) ? 1 : 0);
    }
    sampled.draws.push_back(std::move(draws));
  }
  return sampled;
}

}  // namespace

SampledRisk sample_risk(const Job& job, const HeightField& surface, const Sequence& sequence,
                        double clarity_light, const Progress& progress) {
  job.validate();
  sequence.validate();
  Sampler sampler(job, surface, sequence, progress);
  for (std::size_t place = 0; place < sequence.step.size(); ++place)
    working_at("sequence " + sequence.name + ", step " + title_of(sequence.step[place]) + ": ",
               [&] { sampler.work(place); });
  return sampler.result(clarity_light);
}

}  // namespace libtexture
