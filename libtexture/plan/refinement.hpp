#pragma once
// Refinement: the steps that take out what the first step's grains leave, chosen from the tools at hand.

#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/tool/abrasive.hpp"
#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// Tools to choose from, and the machine that drives each kind.
struct Tools {
  std::vector<Abrasive> abrasives;  ///< discs, compounds and polishes
  std::vector<Backing> backings;    ///< what carries them: carrier_of() says which
  Motion disc;                      ///< how discs are driven
  Motion compound;                  ///< how a compound is driven
  Motion polish;                    ///< how the last polish is driven
};

/// What a backing carries, by its skin, which is the disc's own film: none = a pad for compound; a bending
/// stiffness of 2e-5 N m or more = a film disc; less = a foam-backed disc. Foam-backed discs have 1e-6 to
/// 1e-5, film of 50 um and its coats 5e-5 or more (estimates).
Carrier carrier_of(const Backing& backing);

/// How far steps may go before discs load uselessly, by best estimates, and how often one looks.
struct WorkLimits {
  int passes_most = 30;             ///< of the first step on any panel, 1 to 300; estimate
  double discs_per_m2_most = 10;    ///< discs used by it, > 0 [1/m2]; estimate
  double minutes_per_m2_most = 75;  ///< its machine time, > 0 [min/m2]; estimate
  int look_every_passes = 2;        ///< levelling is wiped and judged every so many passes; estimate
  int refine_passes_most = 4;  ///< passes of a refining step: more heat the paint and load the pad; estimate
  double owed_left_um = 0.05;  ///< clear that grooves of before may still ask for when a refining step ends
                               ///< and another follows, which takes that as well [um], >= 0; estimate
  /// the next step's grain is at most so many times finer, >= 1; estimate: no compound straight after P1200
  double grain_ratio_most = 3.5;

  void validate() const;
  static constexpr auto fields() {
    return FieldTable{optional("passes_most", &WorkLimits::passes_most),
                      optional("discs_per_m2_most", &WorkLimits::discs_per_m2_most),
                      optional("minutes_per_m2_most", &WorkLimits::minutes_per_m2_most),
                      optional("look_every_passes", &WorkLimits::look_every_passes),
                      optional("refine_passes_most", &WorkLimits::refine_passes_most),
                      optional("owed_left_um", &WorkLimits::owed_left_um),
                      optional("grain_ratio_most", &WorkLimits::grain_ratio_most)};
  }
};

/// Clear [um] that the finished grooves of a step ask of later steps, on the job's crowns the most.
double finished_owed_um(const Job& job, const Step& step);

/// Whether the finished grooves of a step dull the clear, on any of the job's crowns: more than 2.5 % of the
/// light mirrored at 20 degrees is lost, 2 of the 82 GU of a perfect clear (a finished panel has its gloss
/// back to 2 GU: common practice, no source).
bool dulls(const Job& job, const Step& step);

/// Whether a step's grooves are within reach of an abrasive: its grain is finer, by limits.grain_ratio_most
/// at most (common practice, the figure an estimate: compound takes out P1500 and finer); a polish reaches
/// what any compound leaves.
bool reaches_grooves(const Abrasive& next, const Abrasive& last, const WorkLimits& limits);

/// Passes that a step needs to remove so much clear [um], > 0, from a panel [m2], at most 1000.
int passes_to_remove(const Job& job, const Step& step, double area_m2, double removal_um);

/// The steps that follow `first` until nothing visible is owed and the gloss is back: each takes the finest
/// abrasive that reaches the last one's grooves and takes out what is owed, or what dulls, within the limit,
/// or the quickest where none does. Discs go on the softest backing that carries them, compound on the
/// stiffest and the last polish on the softest, as they follow what is level by then. Three times the
/// expected passes are allowed, a wear rate's lower 5 % being a third of its median (log-sd 0.7); a last
/// polish that takes out haze alone makes all of them, as nobody sees when fine haze is gone.
std::vector<Step> refinement(const Job& job, const Tools& tools, const Step& first,
                             const WorkLimits& limits = {});

}  // namespace libtexture
