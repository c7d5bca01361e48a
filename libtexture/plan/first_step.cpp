#include "libtexture/plan/first_step.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/worked_panel.hpp"
#include "libtexture/process/pace.hpp"

namespace libtexture {

namespace {

constexpr double softer_may_cost = 1.1;  // clear of a softer backing over that of the best; estimate
constexpr int passes_allowed = 3;        // times those expected: see refinement()

// A backing on every panel of the job.
struct Fit {
  Backing backing = {};
  Carrier carrier = Carrier::film_disc;
  std::vector<LevelCost> costs = {};  // by panel
  std::string collapse = {};          // why it cannot be used; empty where it can
};

double by_area(const Job& job, const std::vector<double>& of_panels) {
  double sum = 0, area_m2 = 0;
  for (std::size_t p = 0; p < of_panels.size(); ++p) {
    sum += job.panel[p].area_m2 * of_panels[p];
    area_m2 += job.panel[p].area_m2;
  }
  return sum / area_m2;
}

double levelling_um(const Job& job, const Fit& fit) {
  std::vector<double> costs;
  for (const LevelCost& cost : fit.costs) costs.push_back(cost.removal_um);
  return by_area(job, costs);
}

bool reaches(const Fit& fit) {
  return fit.collapse.empty() && std::all_of(fit.costs.begin(), fit.costs.end(),
                                             [](const LevelCost& cost) { return cost.is_reached; });
}

double clear_worked_um(const Job& job, const Panel& panel) {
  return film_worked(panel, job.coating, job.target.defect).clear_um;
}

Step step_with(const Abrasive& abrasive, const Backing& backing, const Tools& tools,
               const WorkLimits& limits) {
  Step step;
  step.name = abrasive.name;
  step.abrasive = abrasive;
  step.backing = backing;
  step.motion = tools.disc;
  step.wetness = abrasive.made_for.front();
  step.passes = limits.passes_most;
  step.look_every_passes = limits.look_every_passes;
  return step;
}

// Levelling hardly depends on the grain: the coarsest of its carrier, which spends most, stands for all.
const Abrasive* coarsest(const Tools& tools, Carrier carrier) {
  const Abrasive* found = nullptr;
  for (const Abrasive& one : tools.abrasives)
    if (one.carrier == carrier && (!found || one.grit.median_um() > found->grit.median_um())) found = &one;
  return found;
}

std::vector<Fit> fits_of(const Job& job, const HeightField& surface, const Tools& tools,
                         const WorkLimits& limits, const Progress& progress) {
  std::vector<Fit> fits;
  for (const Backing& backing : tools.backings)
    if (carrier_of(backing) != Carrier::compound && coarsest(tools, carrier_of(backing)))
      fits.push_back({backing, carrier_of(backing)});
  parallel_for(static_cast<int>(fits.size()), progress, [&](int i, const Progress& part) {
    Fit& fit = fits[static_cast<std::size_t>(i)];
    const Step step = step_with(*coarsest(tools, fit.carrier), fit.backing, tools, limits);
    try {
      for (std::size_t p = 0; p < job.panel.size(); ++p) {
        const Panel& panel = job.panel[p];
        fit.costs.push_back(
            level_cost(surface, job.target, step,
                       {crown_of(panel), job.coating.hardness_mpa, clear_worked_um(job, panel)},
                       nth_part(part, p, job.panel.size())));
      }
    } catch (const InvalidInput& error) {
      fit.collapse = error.what();
    }
    report(part, 1);
  });
  return fits;
}

// The softest that spends little more than the best; the one that comes nearest where none reaches the
// target.
const Fit* fit_for(const Job& job, const std::vector<Fit>& fits, Carrier carrier) {
  const Fit* best = nullptr;
  const auto is_usable = [&](const Fit& fit) { return fit.carrier == carrier && fit.collapse.empty(); };
  for (const Fit& fit : fits) {
    if (!is_usable(fit)) continue;
    if (!best || (reaches(fit) && !reaches(*best)) ||
        (reaches(fit) == reaches(*best) && levelling_um(job, fit) < levelling_um(job, *best)))
      best = &fit;
  }
  if (!best || !reaches(*best)) return best;
  const Fit* softest = best;
  const double wave_mm = best->costs.front().obstacle.wavelength_mm;
  for (const Fit& fit : fits)
    if (is_usable(fit) && reaches(fit) &&
        levelling_um(job, fit) <= softer_may_cost * levelling_um(job, *best) &&
        stiffness_kpa_per_um(fit.backing, wave_mm) < stiffness_kpa_per_um(softest->backing, wave_mm))
      softest = &fit;
  return softest;
}

// A part of the target that is not met.
Statement unmet(const Reached& part, const Target& target) {
  if (part.asks == "image_clarity_percent")
    return {.kind = StatementKind::clarity_unmet,
            .figures = {{"found_percent", *part.found}, {"wanted_percent", part.wanted}}};
  if (part.asks == "letter_mm" && !part.found)
    return {.kind = StatementKind::no_letter_read, .figures = {{"wanted_mm", part.wanted}}};
  if (part.asks == "letter_mm")
    return {.kind = StatementKind::letter_unmet,
            .figures = {{"found_mm", *part.found}, {"wanted_mm", part.wanted}}};
  if (part.asks == "defect")
    return {.kind = StatementKind::defect_unmet,
            .figures = {{"left_um", *part.found}, {"size_um", size_um(*target.defect)}}};
  if (part.asks == "preset" && target.preset == TargetPreset::full)
    return {.kind = StatementKind::touch_unmet,
            .figures = {{"found_share", *part.found}, {"wanted_share", part.wanted}}};
  return {.kind = StatementKind::rms_unmet,
          .figures = {{"found_um", *part.found}, {"wanted_um", part.wanted}}};
}

// What is left of the target once the clear has run out, the waves in the way, and what would help.
std::vector<Statement> out_of_reach(const Fit& fit, const Target& target) {
  const auto fails = std::find_if(fit.costs.begin(), fit.costs.end(),
                                  [](const LevelCost& cost) { return !cost.is_reached; });
  const Obstacle& waves = fails->obstacle;
  const bool is_by_waves = std::any_of(fails->target.begin(), fails->target.end(), [](const Reached& part) {
    return !part.is_met && part.asks != "defect";
  });
  std::vector<Statement> reasons{
      {.kind = StatementKind::clear_runs_out, .figures = {{"clear_um", fails->removal_um}}}};
  for (const Reached& part : fails->target)
    if (!part.is_met) reasons.push_back(unmet(part, target));
  if (!is_by_waves) {
    if (is_followed(*target.defect)) reasons.push_back({.kind = StatementKind::stiffer_backing_helps});
    return reasons;
  }
  reasons.push_back({.kind = StatementKind::waves_resist,
                     .backing = fit.backing.name,
                     .figures = {{"wavelength_mm", waves.wavelength_mm},
                                 {"rms_um", waves.rms_um},
                                 {"clear_per_e_fold_um", waves.clear_per_e_fold_um}}});
  reasons.push_back(
      {.kind = waves.is_followed ? StatementKind::larger_disc_helps : StatementKind::stiffer_backing_helps});
  return reasons;
}

// What the budget lets go on the panel that bears least, by best estimates [um].
double least_removable_um(const Job& job) {
  double least = HUGE_VAL;
  for (const Panel& panel : job.panel)
    least = std::min(least, removable_um(budget_of(job), clear_worked_um(job, panel)));
  return least;
}

// One first step with what it takes on all panels.
FirstStep weigh(const Job& job, const Abrasive& abrasive, const Fit* fit, const Tools& tools,
                const WorkLimits& limits) {
  FirstStep first{.abrasive = abrasive.name, .grain_um = abrasive.grit.median_um()};
  if (!fit) {
    first.reasons.push_back({.kind = StatementKind::no_backing_carries});
    return first;
  }
  first.backing = fit->backing.name;
  first.levelling_um = levelling_um(job, *fit);
  if (!reaches(*fit)) {
    first.reasons = out_of_reach(*fit, job.target);
    return first;
  }
  const Step step = step_with(abrasive, fit->backing, tools, limits);
  double area_m2 = 0;
  for (std::size_t p = 0; p < job.panel.size(); ++p) {
    const Panel panel = worked_panel(job.panel[p], job.target.defect, step.motion);
    area_m2 += panel.area_m2;
    if (!(fit->costs[p].removal_um > 0)) continue;
    const int needed = passes_to_remove(job, step, panel.area_m2, fit->costs[p].removal_um);
    const int looks = (needed + limits.look_every_passes - 1) / limits.look_every_passes;
    const int passes = looks * limits.look_every_passes;
    DiscUse use;
    for (int pass = 0; pass < passes; ++pass)
      removal_of_pass_um(step, panel.area_m2, job.coating.hardness_mpa, use);
    first.passes = std::max(first.passes, passes);
    first.discs += use.discs;
    first.minutes += passes * pass_minutes(step.motion, panel.area_m2);
  }
  const double least_um = least_removable_um(job);
  const auto refuse_over = [&](const char* figure, double used, double most, StatementKind kind) {
    if (used > most) first.reasons.push_back({.kind = kind, .figures = {{figure, used}, {"limit", most}}});
  };
  refuse_over("passes", first.passes, limits.passes_most, StatementKind::too_many_passes);
  // One disc a panel is always at hand, however small the area.
  if (first.discs > static_cast<double>(job.panel.size()))
    refuse_over("discs", first.discs / area_m2, limits.discs_per_m2_most, StatementKind::too_many_discs);
  refuse_over("minutes", first.minutes / area_m2, limits.minutes_per_m2_most,
              StatementKind::too_many_minutes);
  first.is_reaching = first.reasons.empty();
  if (!first.is_reaching && first.levelling_um > least_um)
    first.reasons.insert(first.reasons.begin(), {.kind = StatementKind::too_dear,
                                                 .figures = {{"levelling_um", first.levelling_um},
                                                             {"removable_um", std::max(0.0, least_um)}}});
  return first;
}

Sequence sequence_of(const Job& job, const Abrasive& abrasive, const Fit& fit, const FirstStep& first,
                     const Tools& tools, const WorkLimits& limits) {
  Step level = step_with(abrasive, fit.backing, tools, limits);
  level.passes = std::min(1000, passes_allowed * std::max(first.passes, limits.look_every_passes));
  const auto costs_more = [](const LevelCost& a, const LevelCost& b) { return a.removal_um < b.removal_um; };
  level.stop = stop_at(job.target, *std::max_element(fit.costs.begin(), fit.costs.end(), costs_more));
  Sequence sequence{abrasive.name + " first", {level}};
  for (Step& step : refinement(job, tools, level, limits)) sequence.step.push_back(std::move(step));
  return sequence;
}

// What it leaves cannot be taken out step by step.
void refuse_grooves(Weighed& weighed, const WorkLimits& limits) {
  weighed.sequence.reset();
  weighed.first.is_reaching = false;
  weighed.first.reasons.push_back(
      {.kind = StatementKind::grooves_unreached, .figures = {{"grain_ratio_most", limits.grain_ratio_most}}});
}

}  // namespace

std::vector<Weighed> weigh_first_steps(const Job& job, const HeightField& surface, const Tools& tools,
                                       const WorkLimits& limits, const Progress& progress) {
  job.validate();
  limits.validate();
  const std::vector<Fit> fits = fits_of(job, surface, tools, limits, progress);
  std::vector<Weighed> all;
  for (const Abrasive& abrasive : tools.abrasives) {
    if (abrasive.carrier == Carrier::compound) continue;
    const Fit* fit = fit_for(job, fits, abrasive.carrier);
    Weighed weighed{weigh(job, abrasive, fit, tools, limits), std::nullopt};
    if (weighed.first.is_reaching) {
      weighed.sequence = sequence_of(job, abrasive, *fit, weighed.first, tools, limits);
      if (finished_owed_um(job, weighed.sequence->step.back()) > 0) refuse_grooves(weighed, limits);
    }
    all.push_back(std::move(weighed));
  }
  std::stable_sort(all.begin(), all.end(), [](const Weighed& a, const Weighed& b) {
    return std::pair(a.first.grain_um, a.first.levelling_um) <
           std::pair(b.first.grain_um, b.first.levelling_um);
  });
  return all;
}

}  // namespace libtexture
