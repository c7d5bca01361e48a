#include "libtexture/plan/recommend.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/cautions.hpp"

namespace libtexture {

namespace {

constexpr double weighing_share = 0.2;  // of the progress
constexpr int nodes_pixels = 65536;     // of the patch on which sequences are compared

const Alternative& named(const Comparison& comparison, const std::string& name) {
  return *std::find_if(comparison.alternatives.begin(), comparison.alternatives.end(),
                       [&](const Alternative& one) { return one.sequence == name; });
}

std::string in_words(const Spread& spread) {
  return to_text(spread.p50, 1) + " um (5 to 95 %: " + to_text(spread.p05, 1) + " to " +
         to_text(spread.p95, 1) + ")";
}

// Why first steps fail, a sentence for those that fail alike.
void add_failures(std::vector<std::string>& reasons, const std::vector<FirstStep>& failed) {
  std::vector<std::string> told;
  for (const FirstStep& first : failed) {
    if (std::find(told.begin(), told.end(), first.reason) != told.end()) continue;
    told.push_back(first.reason);
    std::string names;
    for (const FirstStep& other : failed)
      if (other.reason == first.reason) names.append(names.empty() ? "" : ", ").append(other.abrasive);
    reasons.push_back(names + ": " + first.reason);
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

// What the finest costs more than the best, in the comparison's own words.
const std::string& finding_of(const Comparison& comparison, const std::string& name) {
  return *std::find_if(comparison.findings.begin(), comparison.findings.end(),
                       [&](const std::string& finding) { return finding.rfind(name + " spends ", 0) == 0; });
}

std::string trouble_of(const Alternative& one) {
  return one.sequence + " (" + std::string(name_of(one.verdict)) + ") is in trouble in " +
         to_text(100 * one.trouble_probability, 0) + " of 100 cases";
}

void explain(Recommendation& advice, const Alternative& choice) {
  const std::vector<std::string>& why = choice.reasons;
  if (choice.verdict == Verdict::do_not_sand) {
    advice.reasons.push_back("The budget does not bear even the sequence that spends least clear, " +
                             choice.sequence + ": " + in_words(choice.removed_um));
    advice.reasons.insert(advice.reasons.end(), why.begin(), why.end());
    return;
  }
  advice.reasons.push_back(choice.sequence + " spends " + in_words(choice.removed_um) + " of clear");
  advice.reasons.insert(advice.reasons.end(), why.begin(), why.end());
  const Alternative& finest = named(advice.comparison, advice.finest);
  if (advice.comparison.best == advice.finest)
    advice.reasons.push_back("The finest first step that reaches the target spends least clear here");
  else
    advice.reasons.push_back("Finest first is not the cheapest here: " +
                             finding_of(advice.comparison, advice.finest));
  if (&choice != &finest)
    advice.reasons.push_back("Not the finest: " + trouble_of(finest) + ", " + trouble_of(choice));
  std::vector<FirstStep> finer;
  for (const FirstStep& first : advice.first_steps)
    if (first.grain_um < finest.first_grain_um) finer.push_back(first);
  add_failures(advice.reasons, finer);
}

}  // namespace

Recommendation recommend(const Job& job, const HeightField& surface, const Tools& tools,
                         const WorkLimits& limits, const Progress& progress) {
  const HeightField nodes = thinned(surface, nodes_pixels);
  const auto weighed = weigh_first_steps(job, nodes, tools, limits, part_of(progress, 0, weighing_share));
  Recommendation advice;
  Job compared = job;
  compared.sequence.clear();
  for (const Weighed& one : weighed) {
    advice.first_steps.push_back(one.first);
    if (one.sequence) compared.sequence.push_back(*one.sequence);
  }
  require(!weighed.empty(), "recommend", "tools", "must hold at least one disc", "none");
  advice.cautions = general_cautions();
  if (compared.sequence.empty()) {
    advice.reasons.push_back("Do not sand for this target: no disc and backing at hand reaches it");
    add_failures(advice.reasons, advice.first_steps);
    report(progress, 1);
    return advice;
  }
  advice.sequences = compared.sequence;
  advice.comparison = compare(compared, nodes, part_of(progress, weighing_share, 1));
  advice.finest = compared.sequence.front().name;
  const Alternative& choice = chosen(advice.comparison.alternatives, advice.comparison);
  advice.recommended = choice.sequence;
  advice.verdict = choice.verdict;
  explain(advice, choice);
  return advice;
}

}  // namespace libtexture
