#pragma once
// LaneDose: how evenly a pass of lanes covers a panel, and how far the clear removed spreads from place to
// place.

#include "libtexture/tool/crown_contact.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// What one pass does across its lanes, over its mean; the hand is not in it.
struct LaneDose {
  double least = 0;            ///< where it does least
  double most = 0;             ///< where it does most
  double cv = 0;               ///< coefficient of variation
  double untouched_share = 0;  ///< share of the area that the contact never reaches

  bool operator==(const LaneDose&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("least", &LaneDose::least), optional("most", &LaneDose::most),
                      optional("cv", &LaneDose::cv), optional("untouched_share", &LaneDose::untouched_share)};
  }
};

/// Lanes of the motion's step-over by a contact: at a place, the sum over lanes of the pressure along the
/// line on which the disc passes it: its chords where the whole face touches evenly (docs/physics.md,
/// equation 24a).
LaneDose lane_dose(const Motion& motion, const CrownContact& contact);

/// Coefficient of variation of what one pass removes from place to place, from its lanes and from the lean of
/// the hand, lane by lane (docs/physics.md, equation 24b).
double pass_cv(const Motion& motion, const CrownContact& contact);

/// Coefficient of variation of what a step removes from place to place: the hand's own dwell_cv, which stays,
/// and pass_cv >= 0 of `passes` >= 1 whose lanes fall elsewhere each time (docs/physics.md, equation 24c).
double dose_cv(const Motion& motion, double pass_cv, int passes);

}  // namespace libtexture
