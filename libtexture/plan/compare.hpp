#pragma once
// Compare: every sequence of a job side by side, in the same possible worlds.

#include <string>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/plan/spread.hpp"

namespace libtexture {

/// What an alternative costs more than the best one: quantiles of the difference in each world, which is
/// known far better than either alone. Only worlds count in which both meet the target, as giving up early is
/// not saving; all of them where those are under a twentieth.
struct Difference {
  Spread removed_um = {};    ///< clear spent [um]
  Spread levelling_um = {};  ///< of it, for levelling [um]
  Spread overshoot_um = {};  ///< of it, cut past the target before the next look [um]
  Spread debt_um = {};       ///< of it, for the scratches that the first step left [um]
  Spread minutes = {};       ///< machine time [min]
  bool is_drowned = false;  ///< 5 % or more of the worlds say the opposite: nobody can tell which spends less
  int worlds = 0;           ///< that the quantiles are over
  int cheaper_worlds = 0;   ///< of them, those in which the best one spends less

  bool operator==(const Difference&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("removed_um", &Difference::removed_um),
                      optional("levelling_um", &Difference::levelling_um),
                      optional("overshoot_um", &Difference::overshoot_um),
                      optional("debt_um", &Difference::debt_um),
                      optional("minutes", &Difference::minutes),
                      optional("is_drowned", &Difference::is_drowned),
                      optional("worlds", &Difference::worlds),
                      optional("cheaper_worlds", &Difference::cheaper_worlds)};
  }
};

/// One sequence: clear is the mean over all panels by area, the rest their sum or their worst.
struct Alternative {
  std::string sequence = {};               ///< its name
  std::string first_abrasive = {};         ///< of its first step
  double first_grain_um = 0;               ///< median grain of it [um]
  Verdict verdict = Verdict::do_not_sand;  ///< of the prediction
  std::vector<Statement> reasons = {};     ///< of the verdict
  Spread removed_um = {};                  ///< clear spent: levelling + overshoot + debt [um]
  Spread levelling_um = {};                ///< until the texture's target was met [um]
  Spread overshoot_um = {};                ///< from that moment to the next look [um]
  Spread debt_um = {};                     ///< for scratches of earlier steps [um]
  /// struck through, a rule broken by the work or the target missed, on any panel, 0 to 1
  double trouble_probability = 0;
  double strike_through_probability = 0;   ///< no clear left somewhere, 0 to 1
  double budget_exceeded_probability = 0;  ///< a rule of the budget is broken, before work or by it, 0 to 1
  double broken_by_work_probability = 0;   ///< a rule is broken by the work, as PanelRisk has it, 0 to 1
  double target_missed_probability = 0;    ///< something that the target asks for is not reached, 0 to 1
  Spread minutes = {};                     ///< machine time on all panels [min]
  Spread discs = {};                       ///< on all panels
  LabourMinutes labour = {};               ///< a person's time on all panels, best estimate
  /// Of it, what goes by the discs' size, smallest first.
  std::vector<DiscSizeMinutes> disc_sizes = {};
  Spread rms_um = {};                ///< texture left, in the target's band [um]
  double marks_per_cm2 = 0;          ///< visible grooves left, best estimate, worst panel [1/cm2]
  std::vector<Reached> target = {};  ///< what it asks and what is reached, best estimate, worst panel
  bool is_on_front = false;          ///< no other is as good in clear, trouble, time, discs, texture
                                     ///< and marks, and better in one (medians)
  Difference more = {};              ///< than the best alternative
  bool is_reaching = false;          ///< misses the target in under a fifth of the worlds, as printed
  int rank = 0;                      ///< 1 = best: see Comparison::best

  bool operator==(const Alternative&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("sequence", &Alternative::sequence),
                      optional("first_abrasive", &Alternative::first_abrasive),
                      optional("first_grain_um", &Alternative::first_grain_um),
                      optional("verdict", &Alternative::verdict),
                      optional("reasons", &Alternative::reasons),
                      optional("removed_um", &Alternative::removed_um),
                      optional("levelling_um", &Alternative::levelling_um),
                      optional("overshoot_um", &Alternative::overshoot_um),
                      optional("debt_um", &Alternative::debt_um),
                      optional("trouble_probability", &Alternative::trouble_probability),
                      optional("strike_through_probability", &Alternative::strike_through_probability),
                      optional("budget_exceeded_probability", &Alternative::budget_exceeded_probability),
                      optional("broken_by_work_probability", &Alternative::broken_by_work_probability),
                      optional("target_missed_probability", &Alternative::target_missed_probability),
                      optional("minutes", &Alternative::minutes),
                      optional("discs", &Alternative::discs),
                      optional("labour", &Alternative::labour),
                      optional("disc_sizes", &Alternative::disc_sizes),
                      optional("rms_um", &Alternative::rms_um),
                      optional("marks_per_cm2", &Alternative::marks_per_cm2),
                      optional("target", &Alternative::target),
                      optional("is_on_front", &Alternative::is_on_front),
                      optional("more", &Alternative::more),
                      optional("is_reaching", &Alternative::is_reaching),
                      optional("rank", &Alternative::rank)};
  }
};

/// All sequences of a job.
struct Comparison {
  std::optional<std::string> note = {};        ///< of the job: where its figures come from
  std::vector<Alternative> alternatives = {};  ///< as in the job
  /// The first by rank: those that reach the target, by the clear that they spend (median); then the others,
  /// by how often they miss it. Verdicts do not count.
  std::string best = {};
  Statement headline = {.kind = StatementKind::all_meet_before};  ///< what was ranked, what came first
  /// Too little clear is there before any work, on any panel: whatever the sequence, 0 to 1.
  double short_before_probability = 0;
  double removable_um = 0;  ///< what the budget lets go at the panel where it is least, reserve kept [um]
  std::vector<Statement> findings = {};       ///< what each other sequence costs more than the best
  std::vector<Statement> warnings = {};       ///< limits that the model came near
  std::vector<Statement> cautions = {};       ///< of the whole job
  std::vector<Statement> step_cautions = {};  ///< of the steps, by the abrasives that they work with
  int samples = 0;                            ///< possible worlds that all were drawn in
  int node_solves = 0;     ///< levelling runs that the draws were read off, shared ones once; 0 = not told
  std::uint64_t seed = 0;  ///< of the job

  bool operator==(const Comparison&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("note", &Comparison::note),
                      optional("alternatives", &Comparison::alternatives),
                      optional("best", &Comparison::best),
                      optional("headline", &Comparison::headline),
                      optional("short_before_probability", &Comparison::short_before_probability),
                      optional("removable_um", &Comparison::removable_um),
                      optional("findings", &Comparison::findings),
                      optional("warnings", &Comparison::warnings),
                      optional("cautions", &Comparison::cautions),
                      optional("step_cautions", &Comparison::step_cautions),
                      optional("samples", &Comparison::samples),
                      optional("node_solves", &Comparison::node_solves),
                      optional("seed", &Comparison::seed)};
  }
};

/// Predicts each sequence of a job, at least one, on a starting surface, in the same worlds, and compares.
Comparison compare(const Job& job, const HeightField& surface, const Progress& progress = {});

/// The comparison of predictions of one job, one per sequence, in the job's order.
Comparison comparison_of(const Job& job, const std::vector<Predicted>& predicted);

}  // namespace libtexture
