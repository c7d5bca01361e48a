#pragma once
// MarksLook: passes of the next step until the marks of the one before are gone, and what they say of its
// grooves and of the next step's wear rate.

#include <optional>

#include "libtexture/plan/belief.hpp"
#include "libtexture/plan/kinship.hpp"
#include "libtexture/plan/spot_removal.hpp"
#include "libtexture/process/scratches.hpp"

namespace libtexture {

/// A look at marks, and what was believed before it.
struct MarksLook {
  Step marked_by = {};                  ///< the step whose marks are looked for
  double marked_um = 0;                 ///< what it has removed [um]
  SpotRemoval next = {};                ///< of the step that takes them out
  std::optional<int> gone_passes = {};  ///< its passes at which none was left; none = not seen
  std::optional<int> left_passes =
      {};                     ///< its passes at which some were seen; none = one before they were gone
  ScratchLimits limits = {};  ///< what counts as a visible mark
  double log_sd = 0.2;        ///< of the removal at which the last one goes: eyes, places and the hand
  double depth_log_sd = 0;    ///< of the deepest marks, before the look
  double wear_log_sd = 0;     ///< of the next step's wear rate, before the look
};

/// What is believed of both after it, over the figures of the steps.
struct MarksSeen {
  Belief depth = {};  ///< of the marks: groove depth, cap and all, as this hand gets them on this clear
  Belief wear = {};   ///< of the next step's wear rate
};

/// Bayes' rule on a grid of both: marks of depth exp(shift) times the step's owe so much clear, which lies
/// between what the next step had removed at the two looks (docs/physics.md, equation 66e).
MarksSeen judge_marks(const MarksLook& look);

}  // namespace libtexture
