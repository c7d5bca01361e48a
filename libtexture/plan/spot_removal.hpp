#pragma once
// SpotRemoval: what passes on a test spot remove.

#include "libtexture/process/step.hpp"

namespace libtexture {

/// Passes that a spot may be given, and at which a search for them ends.
inline constexpr int most_spot_passes = 1000;

/// Mean clear [um] that passes of a step remove from a spot, discs loading and being changed, where the wear
/// rate is exp(shift) times the step's.
struct SpotRemoval {
  Step step = {};
  double area_m2 = 0.04;      ///< of the spot [m2]
  double hardness_mpa = 200;  ///< of its clear [MPa]

  double removed_um(int passes, double shift = 0) const;

  /// Fewest passes that remove so much [um], 1 to most_spot_passes, which it is where none do.
  int passes_to(double removed_um, double shift = 0) const;
};

}  // namespace libtexture
