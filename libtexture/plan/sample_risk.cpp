#include "libtexture/plan/sample_risk.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/march.hpp"
#include "libtexture/plan/node_patch.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/plan/seen_target.hpp"
#include "libtexture/plan/worked_panel.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/process/pace.hpp"

namespace libtexture {

namespace {

constexpr std::size_t first_factors = 5, later_factors = 3;  // nodes of S/p: the first step levels most
constexpr double one_factor = 1.001;  // factors that spread less than this need one node
constexpr double rare = 0.002;        // share of worlds at either end that take the outermost node's curve

// Shares of the time, for progress, as measured on a patch of 512 x 512: all steps; of a step until it is
// planned, until its curves are solved; of the rest, the worlds' march.
constexpr double stepping_work = 0.97, planned_by = 0.02, solved_by = 0.75, marching_work = 0.1;
constexpr double planned_with_bump_by = 0.4, bump_from = 0.05;  // where a defect that is followed is solved

// Nodes from the least factor to the most, evenly in their logarithm; one where they hardly differ.
std::vector<double> spaced(double least, double most, std::size_t nodes) {
  std::vector<double> factors{least};
  if (most <= one_factor * least) return factors;
  for (std::size_t k = 1; k < nodes; ++k)
    factors.push_back(least *
                      std::pow(most / least, static_cast<double>(k) / static_cast<double>(nodes - 1)));
  return factors;
}

// All waves, then the bands that the target and the steps' rules ask for.
std::vector<std::array<double, 2>> bands_of(const Target& target, const Sequence& sequence) {
  std::vector<std::array<double, 2>> bands{{0, HUGE_VAL}};
  const auto add = [&](const std::optional<std::array<double, 2>>& band_mm) {
    if (band_mm && std::find(bands.begin(), bands.end(), *band_mm) == bands.end()) bands.push_back(*band_mm);
  };
  if (target.rms_um) add(target.band_mm);
  for (const Step& step : sequence.step) add(step.stop.band_mm);
  return bands;
}

// All panels in all worlds, worked in one way.
struct Worked {
  std::optional<DefectWayKind> way = {};  // with a defect
  double may_stay_um = 0;                 // of it
  std::vector<Panel> panels = {};
  std::vector<std::vector<WorldState>> states = {};  // by panel
};

// The job's own way, then the others.
std::vector<Worked> worked_ways(const Job& job, const Motion& first) {
  const std::optional<Defect>& defect = job.target.defect;
  if (!defect) return {{.panels = job.panel}};
  std::vector<Worked> ways;
  const Viewer viewer = viewer_of(job);
  for (const DefectWayKind way : sampled_ways(*defect, viewer)) {
    ways.push_back({.way = way, .may_stay_um = done_at_um(way, *defect, viewer)});
    for (const Panel& panel : job.panel)
      ways.back().panels.push_back(worked_panel(panel, worked_as(way, *defect), first));
  }
  return ways;
}

// One sequence on its way.
class Sampler {
 public:
  Sampler(const Job& job, const HeightField& surface, const Worlds& worlds, const SampledSequence& sampled)
      : job_(job),
        worlds_(worlds),
        sampled_(sampled),
        bands_mm_(bands_of(job.target, sampled.sequence)),
        surface_(surface),
        starts_({surface}),
        wavelength_mm_(mean_wavelength_mm(surface)),
        budget_(budget_of(job)) {
    start_.band_um = band_rms_of(surface, bands_mm_);
    start_.valley_um = surface.valley_depth_um();
    std::vector<WorldState> states;
    for (std::size_t world = 0; world < worlds.person.size(); ++world) states.push_back(start_in(world));
    ways_ = worked_ways(job, sampled.sequence.step.front().motion);
    for (Worked& way : ways_) way.states.assign(job.panel.size(), states);
  }

  std::size_t steps() const { return sampled_.sequence.step.size(); }
  std::string place_name(std::size_t place) const {
    return "sequence " + sampled_.sequence.name + ", step " + titles_of(sampled_.sequence.step)[place] + ": ";
  }
  CurvePlan plan(std::size_t place, const Progress& progress);
  void solve_bump(const Progress& progress);
  int march(std::size_t place, const CurvePlan& plan, const StepCurves& curves, const Progress& progress);
  SampledRisk result(const Progress& progress) const;

 private:
  // What a person sees of the surfaces before work and at its end, where the target asks for that.
  struct Seen {
    std::optional<SeenTarget> before, after;
  };

  WorldState start_in(std::size_t world) const;
  March rules(const Worked& way) const;
  std::vector<RiskDraws> all_draws(const Worked& way, const Seen& seen, const Progress& progress) const;
  RiskDraws draws_of(const Worked& way, std::size_t panel, const Seen& seen, const Progress& progress) const;
  bool is_missed(const March& rules, const WorldState& state, std::size_t world,
                 const std::optional<SeenTarget>& seen) const;
  PanelCells cells_worked(const Worked& way, std::size_t panel) const;
  void add_clear(PanelExtremes extremes, RiskDraws& draws) const;

  const Job& job_;
  const Worlds& worlds_;
  const SampledSequence& sampled_;
  const std::vector<std::array<double, 2>> bands_mm_;
  const HeightField& surface_;
  StartSurfaces starts_;
  WorldState start_;
  const double wavelength_mm_;
  const Budget budget_;
  std::vector<std::vector<WorldStep>> in_worlds_;  // of the step at work, by panel
  std::vector<Worked> ways_;       // the job's own first, whose states the curves of later steps follow
  std::optional<BumpCurve> bump_;  // of a defect that is followed, under the first step
  int solves_ = 0;
};

WorldState Sampler::start_in(std::size_t world) const {
  WorldState state = start_;
  state.path = {{0}, {worlds_.texture_scale[world] * start_.band_um[0]}};
  if (job_.target.defect) state.defect_left_um = worlds_.defect_um[world];
  return state;
}

March Sampler::rules(const Worked& way) const {
  March march{job_, worlds_, bands_mm_, start_.band_um[0]};
  march.may_stay_um = way.may_stay_um;
  if (bump_) march.bump = &*bump_;
  if (job_.target.defect && wavelength_mm_ > 0)
    march.defect_waves = std::max(1.0, job_.target.defect->length_mm.value_or(0) / wavelength_mm_);
  return march;
}

// What has to be solved for the step at a place.
CurvePlan Sampler::plan(std::size_t place, const Progress& progress) {
  const Step& step = sampled_.sequence.step[place];
  CurvePlan plan;
  plan.step = step;
  plan.contact = disc_contact(step, surface_.grid(), crown_of(job_.panel.front()));
  plan.hardness_mpa = job_.coating.hardness_mpa;
  plan.starts = starts_.surfaces();
  plan.bands_mm = bands_mm_;
  plan.is_shape_asked = step.stop.touched_share || (place == 0 && job_.target.preset == TargetPreset::full);
  const StepWorlds drawn = step_worlds(worlds_, step, static_cast<int>(place));
  const double wetness = wetness_effect(step.abrasive, step.wetness).wear_rate;
  std::vector<double> factors, removals;
  in_worlds_.clear();
  for (std::size_t p = 0; p < job_.panel.size(); ++p) {
    const PanelAtStep panel{surface_.grid(), wavelength_mm_, crown_of(job_.panel[p])};
    in_worlds_.push_back(
        world_steps(worlds_, step, drawn, panel, plan.contact, nth_part(progress, p, job_.panel.size())));
    for (std::size_t world = 0; world < worlds_.person.size(); ++world) {
      const WorldStep& one = in_worlds_.back()[world];
      const double fresh = one.step.abrasive.wear_rate_mm3_per_n_m * wetness *
                           hardness_wear_factor(rules(ways_.front()).hardness_mpa(world));
      factors.push_back(one.stiffness_factor);
      removals.push_back(step.passes * removal_per_pass_um(one.step.motion, fresh) /
                         worlds_.texture_scale[world]);
    }
  }
  const double least = quantile_of(factors, rare), most = quantile_of(factors, 1 - rare);
  plan.stiffness_factors = spaced(least, most, place == 0 ? first_factors : later_factors);
  plan.most_removal_um = quantile_of(removals, 1 - rare);
  return plan;
}

// How the first step, which is planned, takes out a defect that it follows.
void Sampler::solve_bump(const Progress& progress) {
  const double best_um = size_um(*job_.target.defect);
  std::vector<double> factors;
  for (const std::vector<WorldStep>& worlds : in_worlds_)
    for (std::size_t world = 0; world < worlds.size(); ++world)
      factors.push_back(worlds[world].stiffness_factor / worlds_.texture_scale[world] *
                        worlds_.defect_um[world] / best_um);
  double most_um = 0;
  for (const Panel& panel : job_.panel)
    most_um = std::max(most_um, film_anywhere(film_map(panel, job_.coating)).clear_um);
  bump_.emplace(
      BumpPlan{.defect = *job_.target.defect,
               .step = sampled_.sequence.step.front(),
               .crown = crown_of(job_.panel.front()),
               .factors = spaced(quantile_of(factors, rare), quantile_of(factors, 1 - rare), first_factors),
               .most_um = most_um},
      progress);
  solves_ += static_cast<int>(first_factors);
}

// Takes all worlds through the step; returns the levelling runs that the next step's starts took.
int Sampler::march(std::size_t place, const CurvePlan& plan, const StepCurves& curves,
                   const Progress& progress) {
  const Progress marching = part_of(progress, 0, marching_work),
                 starting = part_of(progress, marching_work, 1);
  StepEnds ends;
  for (const std::vector<WorldState>& states : ways_.front().states)
    for (const WorldState& state : states) ends.start_rms_um.push_back(state.band_um[0]);
  const std::size_t panels = job_.panel.size();
  for (std::size_t i = 0; i < ways_.size() * panels; ++i) {
    Worked& way = ways_[i / panels];
    const std::size_t p = i % panels;
    const March march = rules(way);
    const auto step = [&](std::size_t world) {
      march.step(world, way.panels[p], in_worlds_[p][world], curves, starts_, static_cast<int>(place),
                 way.states[p][world]);
    };
    parallel_for_small(way.states[p].size(), step, nth_part(marching, i, ways_.size() * panels));
  }
  for (const std::vector<WorldState>& states : ways_.front().states)
    for (const WorldState& state : states) ends.end_rms_um.push_back(state.band_um[0]);
  int solves = 0;
  if (place + 1 < steps() || asks_sight(job_.target))
    starts_ = next_starts(plan, curves, ends, solves, starting);
  solves_ += static_cast<int>(plan.starts.size() * plan.stiffness_factors.size()) + solves;
  return solves;
}

bool Sampler::is_missed(const March& rules, const WorldState& state, std::size_t world,
                        const std::optional<SeenTarget>& seen) const {
  const bool is_judged = asks_height(job_.target) || job_.target.defect;
  return (is_judged && rules.target_margin(state, world) < 0) ||
         (seen && seen->is_missed(state.band_um[0], worlds_.texture_scale[world]));
}

// The cells that lose clear. Where a patch has a place, that place alone; where it has none, it may be any
// cell of the panel, and the worst of them counts.
PanelCells Sampler::cells_worked(const Worked& way, std::size_t p) const {
  PanelCells cells = cells_of(job_.panel[p]);
  if (!way.way) return cells;
  const Defect defect = worked_as(*way.way, *job_.target.defect);
  if (!defect.patch_mm) return cells;
  const double worked_m2 = way.panels[p].area_m2;
  const auto place_mm = patch_place_mm(defect);
  if (place_mm) cells.places = {*place_mm};
  cells.area_m2 = place_mm ? worked_m2 : std::min(cells.area_m2, worked_m2);
  return cells;
}

// Clear before and after, and what the budget makes of it.
void Sampler::add_clear(PanelExtremes extremes, RiskDraws& draws) const {
  draws.clear_before_um = std::move(extremes.clear_before_um);
  draws.clear_left_um = std::move(extremes.clear_left_um);
  draws.clear_left_least_um = std::move(extremes.clear_left_least_um);
  for (std::size_t world = 0; world < draws.removed_um.size(); ++world) {
    const ClearSpent spent{draws.removed_um[world], draws.clear_before_um[world], draws.clear_left_um[world]};
    const bool is_exceeded = breaks(budget_, spent);
    const bool is_short_before = spent.before_um < must_stay_um(budget_);
    draws.removable_um.push_back(std::max(0.0, removable_um(budget_, spent.before_um)));
    draws.is_struck_through.push_back(draws.clear_left_least_um[world] <= 0 ? 1 : 0);
    draws.is_budget_exceeded.push_back(is_exceeded ? 1 : 0);
    draws.is_clear_left_short.push_back(spent.left_um < must_stay_um(budget_) ? 1 : 0);
    draws.is_short_before.push_back(is_short_before ? 1 : 0);
    draws.is_broken_by_work.push_back(is_exceeded && !is_short_before ? 1 : 0);
  }
}

RiskDraws Sampler::draws_of(const Worked& way, std::size_t p, const Seen& seen,
                            const Progress& progress) const {
  const Panel& panel = job_.panel[p];
  const March march = rules(way);
  const IdealCut ideal(surface_);
  const Eigen::Index band = march.band_of(job_.target.rms_um ? job_.target.band_mm : std::nullopt);
  PanelWork work;
  RiskDraws draws;
  draws.step_efficiency.resize(steps());
  for (std::size_t world = 0; world < way.states[p].size(); ++world) {
    const WorldState& state = way.states[p][world];
    const double s = worlds_.texture_scale[world];
    work.removed_um.push_back(state.removed_um);
    work.dwell_cv.push_back(state.removed_um > 0 ? state.removed_sd_um / state.removed_um : 0);
    work.valley_depth_um.push_back(s * state.valley_um);
    work.valley_before_um.push_back(s * start_.valley_um);
    draws.removed_um.push_back(state.removed_um);
    draws.levelling_um.push_back(state.levelling_um);
    draws.overshoot_um.push_back(state.overshoot_um);
    draws.debt_um.push_back(state.debt_um);
    draws.rms_um.push_back(s * state.band_um[band]);
    draws.touched_share.push_back(state.touched_share);
    draws.minutes.push_back(state.minutes);
    draws.discs.push_back(state.discs);
    const double ideal_um = s * ideal.removal_um(state.band_um[0]);
    draws.levelling_efficiency.push_back(state.removed_um > 0 ? std::min(1.0, ideal_um / state.removed_um)
                                                              : 0);
    for (std::size_t step = 0; step < state.efficiency.size(); ++step)
      draws.step_efficiency[step].push_back(state.efficiency[step]);
    draws.is_target_missed.push_back(is_missed(march, state, world, seen.after) ? 1 : 0);
    draws.is_target_met_before.push_back(is_missed(march, start_in(world), world, seen.before) ? 0 : 1);
    if (!way.way) continue;
    draws.defect_left_um.push_back(std::max(0.0, state.defect_left_um));
    draws.defect_removed_um.push_back(state.defect_removed_um);
    draws.is_defect_left.push_back(state.defect_left_um > way.may_stay_um ? 1 : 0);
  }
  const double patch_m2 =
      surface_.grid().width_mm() * surface_.grid().height_mm() * metre_per_mm * metre_per_mm;
  add_clear(extremes_of(cells_worked(way, p), film_map(panel, job_.coating), work,
                        disc_area_m2(sampled_.sequence.step.front().motion), patch_m2, wavelength_mm_,
                        hash_key({job_.seed, p}), progress),
            draws);
  return draws;
}

std::vector<RiskDraws> Sampler::all_draws(const Worked& way, const Seen& seen,
                                          const Progress& progress) const {
  std::vector<RiskDraws> draws;
  for (std::size_t p = 0; p < job_.panel.size(); ++p)
    draws.push_back(draws_of(way, p, seen, nth_part(progress, p, job_.panel.size())));
  return draws;
}

SampledRisk Sampler::result(const Progress& progress) const {
  Seen seen;
  if (asks_sight(job_.target)) {
    seen.before.emplace(job_, worlds_, StartSurfaces({surface_}), MirroredLight{});
    seen.after.emplace(job_, worlds_, starts_, sampled_.light());
  }
  SampledRisk sampled{.node_solves = solves_, .defect_um = worlds_.defect_um};
  for (std::size_t way = 0; way < ways_.size(); ++way) {
    auto draws = all_draws(ways_[way], seen, nth_part(progress, way, ways_.size()));
    if (way == 0)
      sampled.draws = std::move(draws);
    else
      sampled.other_ways.push_back({*ways_[way].way, std::move(draws)});
  }
  for (const std::vector<WorldState>& states : ways_.front().states) {
    std::vector<TexturePath> paths;
    for (const WorldState& state : states) paths.push_back(state.path);
    sampled.texture_left.push_back(texture_left(paths));
  }
  return sampled;
}

}  // namespace

SampledRisks sample_risk(const Job& job, const HeightField& surface,
                         const std::vector<SampledSequence>& sequences, const Progress& progress) {
  job.validate();
  const HeightField patch = node_patch(surface);
  const Worlds worlds = worlds_of(job);
  std::vector<Sampler> samplers;
  samplers.reserve(sequences.size());
  std::size_t places = 0;
  for (const SampledSequence& sampled : sequences) {
    sampled.sequence.validate();
    samplers.emplace_back(job, patch, worlds, sampled);
    places = std::max(places, samplers.back().steps());
  }
  SampledRisks result;
  const Progress stepping = part_of(progress, 0, stepping_work),
                 resulting = part_of(progress, stepping_work, 1);
  for (std::size_t place = 0; place < places; ++place) {
    const Progress here = nth_part(stepping, place, places);
    const bool cuts_bump = place == 0 && job.target.defect && is_followed(*job.target.defect);
    const double planned = cuts_bump ? planned_with_bump_by : planned_by;
    const Progress planning = part_of(here, 0, planned), solving = part_of(here, planned, solved_by),
                   marching = part_of(here, solved_by, 1);
    std::vector<Sampler*> working;
    for (Sampler& sampler : samplers)
      if (place < sampler.steps()) working.push_back(&sampler);
    std::vector<CurvePlan> plans;
    for (std::size_t i = 0; i < working.size(); ++i)
      plans.push_back(working_at(working[i]->place_name(place), [&] {
        const Progress part = nth_part(planning, i, working.size());
        CurvePlan plan = working[i]->plan(place, part_of(part, 0, cuts_bump ? bump_from : 1));
        if (cuts_bump) working[i]->solve_bump(part_of(part, bump_from, 1));
        return plan;
      }));
    const SolvedCurves solved = solve_curves(plans, solving);
    result.node_solves += solved.solves;
    for (std::size_t i = 0; i < working.size(); ++i)
      result.node_solves +=
          working[i]->march(place, plans[i], solved.curves[i], nth_part(marching, i, working.size()));
  }
  for (std::size_t i = 0; i < samplers.size(); ++i)
    result.risks.push_back(samplers[i].result(nth_part(resulting, i, samplers.size())));
  report(progress, 1);
  return result;
}

}  // namespace libtexture
