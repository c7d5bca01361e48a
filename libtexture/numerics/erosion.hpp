#pragma once
// Erosion: a surface worn from its initial state to given mean removals, with an error that is known.

#include <vector>

#include "libtexture/numerics/increment.hpp"

namespace libtexture {

/// The worn surface at one removal.
struct ErosionState {
  double removal = 0;            ///< mean removal R
  AlignedVector<double> height;  ///< heights; their mean has fallen by R
  double contact_share = 0;      ///< share of the surface under pressure
};

/// The surface at each removal asked for, and the work done.
struct Erosion {
  std::vector<ErosionState> states;  ///< one per entry of `at`
  double amplitude_error = 0;        ///< greatest change of a state's amplitudes by halving all increments
  double residual = 0;               ///< largest rms(S u + p_mean - p)/p_mean of any increment
  int increments = 0;                ///< increments solved, trials included; one exact stretch counts as one
  int transform_pairs = 0;           ///< transform pairs spent, trials included
};

struct ErosionOptions {
  double amplitude_tolerance = 1e-3;  ///< accuracy of rms, peak-to-valley and valley depth of each state, > 0
  int most_increments = 1000;  ///< chosen at first; NotConverged beyond: a tolerance near rounding would ask
                               ///< for ever more (a usual run takes under 100)
  int most_halvings = 6;       ///< of them all; NotConverged beyond, or as soon as those left cannot do
  IncrementOptions increment = {};  ///< accuracy of each increment; is_continued is always on
};

/// Wears `height` (any unit of length) under the stiffness S/p_mean [1/length] of the half spectrum to the
/// mean removals `at` (> 0, rising, the same unit): dh/dR = -p/p_mean with unilateral contact
/// (docs/physics.md, levelling).
///
/// Increments are of second order (two implicit stages, L-stable, docs/physics.md (19a)); in full
/// contact each mode falls by exactly exp(-S R/p_mean). Increments are chosen by an estimate of their own
/// error, then all are halved until no amplitude of any state moves by more than the tolerance; where that
/// fails they are chosen again, warily. progress is called once a solver iteration, with the share
/// of the removal that is worn.
Erosion erode(const Grid& grid, const AlignedVector<double>& height, const AlignedVector<double>& stiffness,
              const std::vector<double>& at, const ErosionOptions& options = {},
              const Progress& progress = {});

/// The limit of an infinitely stiff face: a plane that cuts all above it, at each removal of `at`.
Erosion truncate(const AlignedVector<double>& height, const std::vector<double>& at);

}  // namespace libtexture
