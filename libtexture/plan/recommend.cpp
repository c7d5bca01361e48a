#include "libtexture/plan/recommend.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/node_patch.hpp"

namespace libtexture {

namespace {

constexpr double weighing_share = 0.2;  // of the progress

const Alternative& named(const Comparison& comparison, const std::string& name) {
  return *std::find_if(comparison.alternatives.begin(), comparison.alternatives.end(),
                       [&](const Alternative& one) { return one.sequence == name; });
}

// What a sequence spends.
Statement spending(StatementKind kind, const Alternative& one) {
  return {.kind = kind,
          .sequence = one.sequence,
          .figures = {{"removed_um", one.removed_um.p50},
                      {"removed_p05_um", one.removed_um.p05},
                      {"removed_p95_um", one.removed_um.p95}}};
}

// Why first steps fail; those that fail alike share their statements.
void add_failures(std::vector<Statement>& reasons, const std::vector<FirstStep>& failed) {
  std::vector<const std::vector<Statement>*> told;
  for (const FirstStep& first : failed) {
    if (std::any_of(told.begin(), told.end(), [&](const auto* one) { return *one == first.reasons; }))
      continue;
    told.push_back(&first.reasons);
    std::vector<std::string> abrasives;
    for (const FirstStep& other : failed)
      if (other.reasons == first.reasons) abrasives.push_back(other.abrasive);
    for (Statement reason : first.reasons) {
      reason.abrasives = abrasives;
      reasons.push_back(std::move(reason));
    }
  }
}

// Of those with the mildest verdict, and not beaten in everything, the finest; a coarser one where it surely
// spends less.
const Alternative& chosen(const std::vector<Alternative>& finest_first, const Comparison& comparison) {
  const auto milder = [](const Alternative& a, const Alternative& b) { return a.verdict < b.verdict; };
  const Verdict mildest = std::min_element(finest_first.begin(), finest_first.end(), milder)->verdict;
  if (mildest == Verdict::do_not_sand) return named(comparison, comparison.best);
  const Alternative* finest = nullptr;
  for (const Alternative& one : finest_first) {
    if (one.verdict != mildest || !one.is_on_front) continue;
    if (!finest) finest = &one;
    if (!(one.more.removed_um.p05 > 0)) return one;
  }
  if (finest) return *finest;
  return *std::find_if(finest_first.begin(), finest_first.end(),
                       [&](const Alternative& one) { return one.verdict == mildest; });
}

Statement riskier(const Alternative& finest, const Alternative& choice, int samples) {
  return {.kind = StatementKind::finest_is_riskier,
          .sequence = finest.sequence,
          .other_sequence = choice.sequence,
          .figures = {{"trouble_probability", finest.trouble_probability},
                      {"other_trouble_probability", choice.trouble_probability},
                      {"samples", samples}}};
}

bool is_mostly_missed(const std::vector<Statement>& reasons) {
  return std::any_of(reasons.begin(), reasons.end(), [](const Statement& reason) {
    return reason.kind == StatementKind::target_mostly_missed;
  });
}

// Beside what comes first; what was ranked where none reaches the target often enough.
void add_what_finest_spends(std::vector<Statement>& reasons, const Comparison& comparison,
                            const Alternative& finest) {
  if (!named(comparison, comparison.best).is_reaching) {
    reasons.push_back(comparison.headline);
    return;
  }
  if (comparison.best == finest.sequence) {
    reasons.push_back({.kind = StatementKind::finest_is_cheapest, .sequence = finest.sequence});
    return;
  }
  if (finest.is_reaching)
    reasons.push_back({.kind = StatementKind::finest_is_not_cheapest,
                       .sequence = finest.sequence,
                       .other_sequence = comparison.best});
  for (const Statement& finding : comparison.findings)
    if (finding.sequence == finest.sequence || finding.other_sequence == finest.sequence)
      reasons.push_back(finding);
}

void explain(Recommendation& advice, const Alternative& choice) {
  std::vector<Statement>& reasons = advice.reasons;
  const std::vector<Statement>& why = choice.reasons;
  const bool is_off = choice.verdict == Verdict::do_not_sand;
  const bool is_nothing = choice.verdict == Verdict::nothing_to_do;
  if (is_off && is_mostly_missed(why))
    reasons.push_back(advice.comparison.headline);
  else if (!is_nothing)
    reasons.push_back(
        spending(is_off ? StatementKind::budget_bears_none : StatementKind::plan_spends, choice));
  reasons.insert(reasons.end(), why.begin(), why.end());
  if (is_off || is_nothing) return;
  const Comparison& comparison = advice.comparison;
  const Alternative& finest = named(comparison, advice.finest);
  add_what_finest_spends(reasons, comparison, finest);
  if (&choice != &finest) reasons.push_back(riskier(finest, choice, comparison.samples));
  std::vector<FirstStep> finer;
  for (const FirstStep& first : advice.first_steps)
    if (first.grain_um < finest.first_grain_um) finer.push_back(first);
  add_failures(reasons, finer);
}

}  // namespace

Recommendation recommend(const Job& job, const HeightField& surface, const Tools& tools,
                         const WorkLimits& limits, const Progress& progress) {
  const HeightField nodes = node_patch(surface);
  const auto weighed = weigh_first_steps(job, nodes, tools, limits, part_of(progress, 0, weighing_share));
  Recommendation advice;
  advice.note = job.note;
  Job compared = job;
  compared.sequence.clear();
  for (const Weighed& one : weighed) {
    advice.first_steps.push_back(one.first);
    if (one.sequence) compared.sequence.push_back(*one.sequence);
  }
  require(!weighed.empty(), "recommend", "tools", "must hold at least one disc", "none");
  advice.cautions = general_cautions();
  if (compared.sequence.empty()) {
    advice.reasons.push_back({.kind = StatementKind::no_tool_reaches});
    if (job.target.defect) advice.reasons.push_back({.kind = StatementKind::defect_leave_it});
    add_failures(advice.reasons, advice.first_steps);
    report(progress, 1);
    return advice;
  }
  advice.sequences = compared.sequence;
  advice.comparison = compare(compared, surface, part_of(progress, weighing_share, 1));
  advice.finest = compared.sequence.front().name;
  const Alternative& choice = chosen(advice.comparison.alternatives, advice.comparison);
  advice.verdict = choice.verdict;
  if (advice.verdict != Verdict::nothing_to_do) advice.recommended = choice.sequence;
  explain(advice, choice);
  return advice;
}

}  // namespace libtexture
