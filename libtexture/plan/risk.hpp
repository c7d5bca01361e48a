#pragma once
// Risk: what a sequence may cost on one panel, and what may go wrong, as quantiles and probabilities.

#include <optional>
#include <vector>

#include "libtexture/plan/spread.hpp"
#include "libtexture/plan/texture_left.hpp"
#include "libtexture/plan/variance_shares.hpp"

namespace libtexture {

/// One value per draw: entry i of each is what happens in possible world i. The same job and seed have the
/// same worlds for every sequence, so that alternatives are compared world by world.
struct RiskDraws {
  std::vector<double> removed_um = {};       ///< mean clear removed by the sequence [um]
  std::vector<double> levelling_um = {};     ///< of it, cut until the texture's target or stop was met [um]
  std::vector<double> overshoot_um = {};     ///< of it, cut between that moment and the next look [um]
  std::vector<double> debt_um = {};          ///< of it, cut by the later steps, which take out scratches [um]
  std::vector<double> clear_before_um = {};  ///< where it is thinnest before any work, likewise [um]
  std::vector<double> removable_um = {};     ///< what the budget lets go, reserve kept; 0 = nothing [um]
  std::vector<double> clear_left_um = {};    ///< where it is thinnest, mean over a disc's face [um]
  std::vector<double> clear_left_least_um =
      {};                           ///< thinnest clear anywhere on the panel [um]; below 0 = struck through
  std::vector<double> rms_um = {};  ///< texture left, in the target's band [um]
  std::vector<double> touched_share = {};         ///< area that the first step has touched
  std::vector<double> minutes = {};               ///< machine time [min]
  std::vector<double> discs = {};                 ///< discs used
  std::vector<double> levelling_efficiency = {};  ///< least clear that any cutter needs over the clear spent
  std::vector<std::vector<double>> step_efficiency =
      {};                                        ///< the same for each step alone: by step, then draw
  std::vector<double> is_struck_through = {};    ///< 1 where the clear is, anywhere; 0 elsewhere
  std::vector<double> is_budget_exceeded = {};   ///< 1 where a rule of the budget is broken
  std::vector<double> is_clear_left_short = {};  ///< of them, 1 where too little clear stays
  std::vector<double> is_short_before = {};      ///< 1 where too little clear is there before any work
  std::vector<double> is_broken_by_work = {};    ///< 1 where a rule is broken, and none was before work
  std::vector<double> is_target_missed = {};  ///< 1 where something that the target asks for is not reached
  std::vector<double> is_target_met_before = {};  ///< 1 where all of it is reached before any work
  std::vector<double> defect_left_um = {};        ///< of the target's defect [um]; empty without one
  std::vector<double> defect_removed_um = {};     ///< clear removed beside it [um]; empty without one
  std::vector<double> is_defect_left = {};        ///< 1 where more of it stays than may; empty without one

  bool operator==(const RiskDraws&) const = default;
};

/// What the draws say. removed = levelling + overshoot + debt in every draw (not in their quantiles).
struct PanelRisk {
  Spread removed_um = {};       ///< mean clear removed by the sequence [um]
  Spread levelling_um = {};     ///< of it, cut until the texture's target or stop was met [um]
  Spread overshoot_um = {};     ///< of it, cut between that moment and the next look [um]
  Spread debt_um = {};          ///< of it, cut by the later steps, which take out scratches [um]
  Spread clear_before_um = {};  ///< where it is thinnest before any work, mean over a disc's face [um]
  Spread removable_um = {};     ///< what the budget lets go, reserve kept; 0 = nothing [um]
  Spread clear_left_um = {};    ///< where it is thinnest, mean over a disc's face, which rules judge [um]
  Spread clear_left_least_um =
      {};                     ///< thinnest clear anywhere on the panel's area [um]; below 0 = struck through
  Spread rms_um = {};         ///< texture left, in the target's band [um]
  Spread touched_share = {};  ///< area that the first step has touched
  Spread minutes = {};        ///< machine time [min]
  Spread discs = {};          ///< discs used
  /// Least clear that any cutter needs for the same remaining texture, over the clear spent: 0 to 1.
  Spread levelling_efficiency = {};
  std::vector<Spread> step_efficiency = {};  ///< the same for each step alone
  /// The curve of texture against clear; of predict(), else empty.
  std::vector<TextureLeft> texture_left = {};
  double strike_through_probability = 0;    ///< no clear left somewhere on the panel, 0 to 1
  double budget_exceeded_probability = 0;   ///< a rule of the budget is broken, 0 to 1
  double clear_left_short_probability = 0;  ///< of it, that too little clear stays, 0 to 1
  double short_before_probability = 0;      ///< too little clear is there before any work, 0 to 1
  /// The work breaks a rule: of the worlds in which none is broken before, 0 to 1.
  double broken_by_work_probability = 0;
  double target_missed_probability = 0;       ///< something that the target asks for is not reached, 0 to 1
  double target_met_before_probability = 0;   ///< all of it is reached before any work, 0 to 1
  std::optional<Spread> defect_left_um = {};  ///< of the target's defect [um]; none without one
  std::optional<double> defect_left_probability =
      {};  ///< more of it stays than may, 0 to 1; none without one
  /// What makes the clear left uncertain; of predict(), else 0.
  VarianceShares variance_shares = {};
  int samples = 0;      ///< draws that this rests on
  int node_solves = 0;  ///< levelling runs that the draws were interpolated from, for all panels together

  bool operator==(const PanelRisk&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("removed_um", &PanelRisk::removed_um),
                      optional("levelling_um", &PanelRisk::levelling_um),
                      optional("overshoot_um", &PanelRisk::overshoot_um),
                      optional("debt_um", &PanelRisk::debt_um),
                      optional("clear_before_um", &PanelRisk::clear_before_um),
                      optional("removable_um", &PanelRisk::removable_um),
                      optional("clear_left_um", &PanelRisk::clear_left_um),
                      optional("clear_left_least_um", &PanelRisk::clear_left_least_um),
                      optional("rms_um", &PanelRisk::rms_um),
                      optional("touched_share", &PanelRisk::touched_share),
                      optional("minutes", &PanelRisk::minutes),
                      optional("discs", &PanelRisk::discs),
                      optional("levelling_efficiency", &PanelRisk::levelling_efficiency),
                      optional("step_efficiency", &PanelRisk::step_efficiency),
                      optional("texture_left", &PanelRisk::texture_left),
                      optional("strike_through_probability", &PanelRisk::strike_through_probability),
                      optional("budget_exceeded_probability", &PanelRisk::budget_exceeded_probability),
                      optional("clear_left_short_probability", &PanelRisk::clear_left_short_probability),
                      optional("short_before_probability", &PanelRisk::short_before_probability),
                      optional("broken_by_work_probability", &PanelRisk::broken_by_work_probability),
                      optional("target_missed_probability", &PanelRisk::target_missed_probability),
                      optional("target_met_before_probability", &PanelRisk::target_met_before_probability),
                      optional("defect_left_um", &PanelRisk::defect_left_um),
                      optional("defect_left_probability", &PanelRisk::defect_left_probability),
                      optional("variance_shares", &PanelRisk::variance_shares),
                      optional("samples", &PanelRisk::samples),
                      optional("node_solves", &PanelRisk::node_solves)};
  }

  void validate() const;
};

/// Quantiles and probabilities of the draws, which must be equally many of each figure.
PanelRisk risk_of(const RiskDraws& draws, int node_solves);

}  // namespace libtexture
