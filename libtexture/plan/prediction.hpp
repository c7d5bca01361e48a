#pragma once
// Prediction: what a job will cost, as plain values: the content of the table, the JSON file and the report.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/budget.hpp"
#include "libtexture/plan/defect_answer.hpp"
#include "libtexture/plan/edge_margin.hpp"
#include "libtexture/plan/knowledge.hpp"
#include "libtexture/plan/labour.hpp"
#include "libtexture/plan/risk.hpp"
#include "libtexture/process/history.hpp"

namespace libtexture {

/// The answer to "may this be levelled?", from the mildest to the worst.
enum class Verdict { nothing_to_do, go, go_with_care, do_not_sand };
constexpr std::array<std::pair<Verdict, const char*>, 4> names_of(Verdict) {
  return {{{Verdict::nothing_to_do, "nothing to do"},
           {Verdict::go, "go"},
           {Verdict::go_with_care, "go with care"},
           {Verdict::do_not_sand, "do not sand"}}};
}

/// A target that is missed in this share of the possible worlds makes a plan one to take with care
/// (estimate).
inline constexpr double target_missed_care = 0.20;

/// One panel: what its readings say of the clear, and what the sequence does to it.
struct PanelPrediction {
  std::string name = {};  ///< of the panel
  double area_m2 = 0;     ///< [m2]
  /// thinnest reading; of a patch with a place, the film expected there [um]
  double total_film_least_um = 0;
  double clear_um = 0;                  ///< expected clear at that place [um]
  double clear_sd_um = 0;               ///< its standard deviation [um]
  double removed_um = 0;                ///< mean clear removed by the sequence [um]
  double removed_max_um = 0;            ///< most clear removed at any point of the patch [um]
  double clear_left_mean_um = 0;        ///< at that place [um]; below 0 = struck through
  double clear_left_least_um = 0;       ///< the thinnest clear of the patch, at that place [um]
  double removable_um = 0;              ///< what the budget lets go at that place, reserve kept [um]
  std::vector<BudgetRule> budget = {};  ///< every rule, and which binds
  int discs = 0;                        ///< discs used
  double minutes = 0;                   ///< machine time [min]
  LabourMinutes labour = {};            ///< a person's time
  /// Of each step: discs, and when to change them.
  std::vector<DiscLife> disc_lives = {};
  /// The margin to leave unsanded, where the panel states the length of its edges.
  std::optional<EdgeMargin> edge = {};
  /// Ways to be rid of the target's defect, and what each costs; none without a defect.
  std::optional<DefectAnswer> defect = {};
  PanelRisk risk = {};                  ///< how sure all this is, and what may go wrong
  HistoryRow start = {};                ///< the texture before
  std::vector<HistoryRow> steps = {};   ///< a row a step
  std::vector<HistoryRow> passes = {};  ///< a row a pass

  bool operator==(const PanelPrediction&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("name", &PanelPrediction::name),
                      optional("area_m2", &PanelPrediction::area_m2),
                      optional("total_film_least_um", &PanelPrediction::total_film_least_um),
                      optional("clear_um", &PanelPrediction::clear_um),
                      optional("clear_sd_um", &PanelPrediction::clear_sd_um),
                      optional("removed_um", &PanelPrediction::removed_um),
                      optional("removed_max_um", &PanelPrediction::removed_max_um),
                      optional("clear_left_mean_um", &PanelPrediction::clear_left_mean_um),
                      optional("clear_left_least_um", &PanelPrediction::clear_left_least_um),
                      optional("removable_um", &PanelPrediction::removable_um),
                      optional("budget", &PanelPrediction::budget),
                      optional("discs", &PanelPrediction::discs),
                      optional("minutes", &PanelPrediction::minutes),
                      optional("labour", &PanelPrediction::labour),
                      optional("disc_lives", &PanelPrediction::disc_lives),
                      optional("edge", &PanelPrediction::edge),
                      optional("defect", &PanelPrediction::defect),
                      optional("risk", &PanelPrediction::risk),
                      optional("start", &PanelPrediction::start),
                      optional("steps", &PanelPrediction::steps),
                      optional("passes", &PanelPrediction::passes)};
  }
};

/// A whole job by one sequence.
struct Prediction {
  std::string sequence = {};                     ///< name of the sequence
  std::optional<std::string> note = {};          ///< of the job: where its figures come from
  Verdict verdict = Verdict::do_not_sand;        ///< may it be levelled?
  std::vector<Statement> reasons = {};           ///< why
  Knowledge knowledge = Knowledge::estimates;    ///< what its figures rest on
  std::vector<double> band_edges_mm = {};        ///< edges of HistoryRow::band_rms_um [mm]
  std::vector<PanelPrediction> panels = {};      ///< as in the job
  int discs = 0;                                 ///< discs used on all panels
  double minutes = 0;                            ///< machine time on all panels [min]
  Spread discs_spread = {};                      ///< how sure the discs are
  Spread minutes_spread = {};                    ///< how sure the machine time is [min]
  LabourMinutes labour = {};                     ///< a person's time on all panels
  std::vector<DiscSizeMinutes> disc_sizes = {};  ///< of it, what goes by the discs' size, smallest first
  std::vector<Statement> checklist = {};         ///< what to do before the first pass
  std::vector<Statement> warnings = {};          ///< limits that the model came near
  std::vector<Statement> cautions = {};          ///< of the whole job
  std::vector<Statement> step_cautions = {};     ///< of each step, which they name
  std::uint64_t seed = 0;                        ///< of the job

  bool operator==(const Prediction&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("sequence", &Prediction::sequence),
                      optional("note", &Prediction::note),
                      optional("verdict", &Prediction::verdict),
                      optional("reasons", &Prediction::reasons),
                      optional("knowledge", &Prediction::knowledge),
                      optional("band_edges_mm", &Prediction::band_edges_mm),
                      optional("panels", &Prediction::panels),
                      optional("discs", &Prediction::discs),
                      optional("minutes", &Prediction::minutes),
                      optional("discs_spread", &Prediction::discs_spread),
                      optional("minutes_spread", &Prediction::minutes_spread),
                      optional("labour", &Prediction::labour),
                      optional("disc_sizes", &Prediction::disc_sizes),
                      optional("checklist", &Prediction::checklist),
                      optional("warnings", &Prediction::warnings),
                      optional("cautions", &Prediction::cautions),
                      optional("step_cautions", &Prediction::step_cautions),
                      optional("seed", &Prediction::seed)};
  }
};

}  // namespace libtexture
