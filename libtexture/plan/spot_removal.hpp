#pragma once
// SpotRemoval: what passes on a test spot remove, and what readings of it say of the wear rate.

#include <array>

#include "libtexture/plan/belief.hpp"
#include "libtexture/plan/paint.hpp"
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

/// A removal as a gauge read it.
struct SpotReadings {
  int passes = 0;
  double removed_um = 0;      ///< mean before - mean after [um]
  int before = 1, after = 1;  ///< readings
  Gauge gauge = {};
  double spot_cv = 0.15;  ///< how much spots worked alike differ
};

/// ln of the chance of such readings where the wear rate is exp(shift) times the step's, up to a constant:
/// normal about what the passes remove (docs/physics.md (66)).
double log_likelihood(const SpotRemoval& removal, const SpotReadings& readings, double shift);

/// Density of ln(wear rate over the step's) by the readings and a normal prior: on the prior's whole width,
/// then on what the readings leave of it, twice, as an exact gauge leaves little.
Density wear_density(const SpotRemoval& removal, const SpotReadings& readings, double prior_sd,
                     std::array<int, 3> points = {49, 33, 129});

}  // namespace libtexture
