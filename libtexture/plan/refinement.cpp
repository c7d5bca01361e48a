#include "libtexture/plan/refinement.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "libtexture/base/error.hpp"
#include "libtexture/plan/worked_panel.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/process/scratches.hpp"

namespace libtexture {

namespace {

constexpr double film_disc_from_n_m = 2e-5;  // bending stiffness of a skin; estimate, see carrier_of
constexpr double finished_depths = 20;       // removal that finishes a population: exp(-20)
constexpr double dulling_depths = 5;         // removal after which exp(-5) of a population dulls no more
constexpr double dull_below_share = 0.975;   // of the light mirrored; see dulls()
constexpr int most_passes = 1000;            // as Step allows
constexpr int passes_allowed = 3;            // times those expected
constexpr double gloss_angle_deg = 20;
constexpr double judged_wave_mm = 3;  // where pads are told apart as soft and stiff; waves of sprayed clear

double softness(const Backing& backing) {
  return -stiffness_kpa_per_um(backing, judged_wave_mm);
}

// A way to refine: a step, and the passes that it takes.
struct Way {
  Step step;
  int passes;
};

// The finished grooves of a step on one panel.
Scratches finished_on(const Job& job, const Step& step, const Panel& panel) {
  const DiscContact contact = disc_contact(step, job.patch, crown_of(panel));
  const double depth_um = groove_depth_um(step, contact.pressure_kpa, 1, job.coating.hardness_mpa);
  Scratches scratches;
  scratch(scratches, groove_figures(0, step.abrasive, step.motion, depth_um),
          Array2d::Constant(1, 1, finished_depths * depth_um));
  return scratches;
}

// Clear [um] that the finished grooves of a step ask of the next one.
struct Debt {
  double owed_um;     // until none is visible
  double dulling_um;  // until the gloss is back; 0 where it is

  double removal_um() const { return std::max(owed_um, dulling_um); }
};

Debt debt_of(const Job& job, const Step& step) {
  double depth_um = 0;
  if (dulls(job, step))
    for (const Panel& panel : job.panel)
      depth_um = std::max(depth_um, finished_on(job, step, panel).populations.front().figures.depth_um);
  return {finished_owed_um(job, step), dulling_depths * depth_um};
}

bool carries_without_collapse(const Job& job, const Step& step) {
  try {
    for (const Panel& panel : job.panel) disc_contact(step, job.patch, crown_of(panel));
    return true;
  } catch (const InvalidInput&) {
    return false;
  }
}

std::optional<Way> way_of(const Job& job, const Tools& tools, const Abrasive& abrasive, const Debt& debt,
                          const WorkLimits& limits) {
  Step step;
  step.name = abrasive.name;
  step.abrasive = abrasive;
  step.wetness = abrasive.made_for.front();
  step.passes = passes_allowed * limits.refine_passes_most;
  std::vector<Backing> backings;
  for (const Backing& backing : tools.backings)
    if (carrier_of(backing) == abrasive.carrier) backings.push_back(backing);
  std::sort(backings.begin(), backings.end(),
            [](const Backing& a, const Backing& b) { return softness(a) > softness(b); });
  const bool is_compound = abrasive.carrier == Carrier::compound;
  const auto choose = [&](const Motion& motion) {
    step.motion = motion;
    const auto found = std::find_if(backings.begin(), backings.end(), [&](const Backing& backing) {
      step.backing = backing;
      return carries_without_collapse(job, step);
    });
    return found != backings.end();
  };
  // Whether a compound leaves anything to do decides how it is used: try it as the last polish first.
  if (!choose(is_compound ? tools.polish : tools.disc)) return std::nullopt;
  if (is_compound && debt_of(job, step).removal_um() > 0) {
    std::reverse(backings.begin(), backings.end());
    if (!choose(tools.compound)) return std::nullopt;
  }
  const auto area = [](const Panel& a, const Panel& b) { return a.area_m2 < b.area_m2; };
  const double area_m2 = std::max_element(job.panel.begin(), job.panel.end(), area)->area_m2;
  const int passes = passes_to_remove(job, step, area_m2, debt.removal_um());
  const bool is_last = debt_of(job, step).removal_um() == 0;
  const bool is_by_eye = !is_last || debt.owed_um >= debt.dulling_um;
  if (is_by_eye) step.stop.clear_owed_um = is_last ? 0 : limits.owed_left_um;
  const int enough = is_by_eye ? std::max(passes, limits.refine_passes_most) : passes;
  step.passes = std::min(most_passes, passes_allowed * enough);
  return Way{step, passes};
}

}  // namespace

Carrier carrier_of(const Backing& backing) {
  if (!backing.skin) return Carrier::compound;
  return bending_stiffness_n_m(*backing.skin) < film_disc_from_n_m ? Carrier::foam_disc : Carrier::film_disc;
}

void WorkLimits::validate() const {
  require_within(passes_most, 1, 300, "WorkLimits", "passes_most");
  require_positive(discs_per_m2_most, "WorkLimits", "discs_per_m2_most");
  require_positive(minutes_per_m2_most, "WorkLimits", "minutes_per_m2_most");
  require_within(look_every_passes, 1, 300, "WorkLimits", "look_every_passes");
  require_within(refine_passes_most, 1, 300, "WorkLimits", "refine_passes_most");
  require_not_negative(owed_left_um, "WorkLimits", "owed_left_um");
  require(grain_ratio_most >= 1, "WorkLimits", "grain_ratio_most", "must be >= 1", grain_ratio_most);
}

double finished_owed_um(const Job& job, const Step& step) {
  double most = 0;
  for (const Panel& panel : job.panel)
    most = std::max(most, clear_owed_um(finished_on(job, step, panel), Marks::all, job.scratch_limits));
  return most;
}

bool dulls(const Job& job, const Step& step) {
  return std::any_of(job.panel.begin(), job.panel.end(), [&](const Panel& panel) {
    return specular_share_map(finished_on(job, step, panel), gloss_angle_deg)(0, 0) < dull_below_share;
  });
}

bool reaches_grooves(const Abrasive& next, const Abrasive& last, const WorkLimits& limits) {
  const double next_um = next.grit.median_um(), last_um = last.grit.median_um();
  return next_um < last_um &&
         (last.carrier == Carrier::compound || last_um <= limits.grain_ratio_most * next_um);
}

int passes_to_remove(const Job& job, const Step& step, double area_m2, double removal_um) {
  require_positive(removal_um, "passes_to_remove", "removal_um");
  DiscUse use;
  double removed = 0;
  int passes = 0;
  while (removed < removal_um && passes < most_passes) {
    removed += removal_of_pass_um(step, area_m2, job.coating.hardness_mpa, use);
    ++passes;
  }
  return passes;
}

std::vector<Step> refinement(const Job& whole, const Tools& tools, const Step& first,
                             const WorkLimits& limits) {
  limits.validate();
  const Job job = worked_job(whole, first.motion);
  std::vector<Step> steps;
  Abrasive last = first.abrasive;
  Debt debt = debt_of(job, first);
  while (debt.removal_um() > 0) {
    std::vector<Way> ways;
    for (const Abrasive& abrasive : tools.abrasives)
      if (reaches_grooves(abrasive, last, limits))
        if (std::optional<Way> way = way_of(job, tools, abrasive, debt, limits)) ways.push_back(*way);
    if (ways.empty()) break;
    // Within the limit the finest; beyond it the quickest.
    const auto is_better = [&](const Way& a, const Way& b) {
      const int beyond_a = std::max(0, a.passes - limits.refine_passes_most);
      const int beyond_b = std::max(0, b.passes - limits.refine_passes_most);
      return beyond_a != beyond_b ? beyond_a < beyond_b
                                  : a.step.abrasive.grit.median_um() < b.step.abrasive.grit.median_um();
    };
    const Way& way = *std::min_element(ways.begin(), ways.end(), is_better);
    steps.push_back(way.step);
    debt = debt_of(job, way.step);
    last = way.step.abrasive;
  }
  return steps;
}

}  // namespace libtexture
