#pragma once
// FirstStep: which discs could level the texture, on which backing, and which not, and why.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/level_cost.hpp"
#include "libtexture/plan/refinement.hpp"

namespace libtexture {

/// A first step that was weighed; best estimates.
struct FirstStep {
  std::string abrasive = {};  ///< its name
  double grain_um = 0;        ///< median grain [um]
  std::string backing = {};   ///< what it goes on
  /// clear until the target is met, mean over the panels, with the coarsest grain at hand; else all there was
  /// [um]
  double levelling_um = 0;
  int passes = 0;                       ///< on the panel that needs most
  double discs = 0;                     ///< on all panels
  double minutes = 0;                   ///< on all panels [min]
  bool is_reaching = false;             ///< reaches the target within the limits
  std::vector<Statement> reasons = {};  ///< why not; none where it does

  bool operator==(const FirstStep&) const = default;
  static constexpr auto fields() {
    return FieldTable{
        optional("abrasive", &FirstStep::abrasive), optional("grain_um", &FirstStep::grain_um),
        optional("backing", &FirstStep::backing),   optional("levelling_um", &FirstStep::levelling_um),
        optional("passes", &FirstStep::passes),     optional("discs", &FirstStep::discs),
        optional("minutes", &FirstStep::minutes),   optional("is_reaching", &FirstStep::is_reaching),
        optional("reasons", &FirstStep::reasons)};
  }
};

/// A first step, and where it reaches the target the sequence that it begins.
struct Weighed {
  FirstStep first;
  std::optional<Sequence> sequence;
};

/// Weighs every disc of the tools as the first step of a job on a starting surface; finest first. Each goes
/// on the softest backing that spends at most a tenth more clear than the best one (soft backings are kinder
/// to edges), and is followed by its refinement(). Levelling is tried until all the clear is gone.
std::vector<Weighed> weigh_first_steps(const Job& job, const HeightField& surface, const Tools& tools,
                                       const WorkLimits& limits = {}, const Progress& progress = {});

}  // namespace libtexture
