#include "libtexture/plan/known_tools.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "libtexture/plan/teach.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

std::vector<Step> steps_of(const Job& job) {
  std::vector<Step> steps;
  for (const Sequence& sequence : job.sequence)
    steps.insert(steps.end(), sequence.step.begin(), sequence.step.end());
  return steps;
}

template <class Tool>
const Tool* same_key(const std::vector<Tool>& tools, const Tool& tool) {
  const auto found =
      std::find_if(tools.begin(), tools.end(), [&](const Tool& one) { return key_of(one) == key_of(tool); });
  return found == tools.end() ? nullptr : &*found;
}

// Takes a job's figures of a tool, where a step uses it.
template <class Tool>
bool take_used(Tool& tool, const std::vector<Step>& steps, Tool Step::*part) {
  const auto used = std::find_if(steps.begin(), steps.end(),
                                 [&](const Step& step) { return key_of(step.*part) == key_of(tool); });
  if (used == steps.end()) return false;
  tool = (*used).*part;
  return true;
}

// A step of the job with the abrasive as it was before, and what was learned of it since.
struct Teacher {
  Step tried;
  Lesson lesson;

  double left_share() const { return lesson.log_sd / lesson.before.log_sd(); }
};

// Keeps the one that narrowed its figure the most.
void keep_better(std::optional<Teacher>& best, Teacher teacher) {
  if (!(teacher.left_share() < (best ? best->left_share() : 1))) return;
  best = std::move(teacher);
}

// The step as it was before its abrasive was known better than the tools at hand know it.
std::optional<Step> before(const Step& step, const std::vector<Abrasive>& shipped) {
  const Abrasive* was = same_key(shipped, step.abrasive);
  if (!was) return std::nullopt;
  Step tried = step;
  tried.abrasive = *was;
  return tried;
}

std::optional<Teacher> wear_teacher(const Abrasive& kin, const std::vector<Step>& steps,
                                    const std::vector<Abrasive>& shipped, const Uncertainty& uncertainty) {
  std::optional<Teacher> best;
  for (const Step& step : steps) {
    const Abrasive& known = step.abrasive;
    if (known.wear_rate_of != FigureOf::this_hand || family_key_of(known) != family_key_of(kin)) continue;
    if (const std::optional<Step> tried = before(step, shipped)) {
      const double shift = std::log(known.wear_rate_mm3_per_n_m / tried->abrasive.wear_rate_mm3_per_n_m);
      keep_better(best, {*tried, {wear_spread(*tried, uncertainty), shift, known.wear_rate_log_sd}});
    }
  }
  return best;
}

std::optional<Teacher> groove_teacher(const std::vector<Step>& steps, const std::vector<Abrasive>& shipped,
                                      const Uncertainty& uncertainty) {
  std::optional<Teacher> best;
  for (const Step& step : steps) {
    if (step.abrasive.groove_depth_of != FigureOf::this_hand) continue;
    if (const std::optional<Step> tried = before(step, shipped)) {
      const double shift =
          std::log(reference_groove_depth_um(step.abrasive) / reference_groove_depth_um(tried->abrasive));
      keep_better(best, {*tried,
                         {groove_spread(*tried, uncertainty), shift,
                          groove_depth_spread(step.abrasive, uncertainty).log_sd()}});
    }
  }
  return best;
}

}  // namespace

Tools known_tools(Tools tools, const Job& job) {
  const std::vector<Step> steps = steps_of(job);
  const std::vector<Abrasive> shipped = tools.abrasives;
  const std::optional<Teacher> of_grooves = groove_teacher(steps, shipped, job.uncertainty);
  for (Abrasive& abrasive : tools.abrasives) {
    if (take_used(abrasive, steps, &Step::abrasive)) continue;
    const auto learn = [&](const std::optional<Teacher>& teacher, const auto& teach) {
      if (!teacher) return;
      Step step = teacher->tried;  // by the same hand
      step.abrasive = abrasive;
      teach(step, teacher->tried.abrasive, teacher->lesson);
      abrasive = step.abrasive;
    };
    learn(wear_teacher(abrasive, steps, shipped, job.uncertainty),
          [&](Step& step, const Abrasive& tried, const Lesson& lesson) {
            teach_wear(step, tried, lesson, job.uncertainty);
          });
    learn(of_grooves, [&](Step& step, const Abrasive& tried, const Lesson& lesson) {
      teach_grooves(step, tried, lesson, job.uncertainty);
    });
  }
  for (Backing& backing : tools.backings) take_used(backing, steps, &Step::backing);
  for (Motion* motion : {&tools.disc, &tools.compound, &tools.polish})
    take_used(*motion, steps, &Step::motion);
  return tools;
}

}  // namespace libtexture
