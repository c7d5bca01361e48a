#pragma once
// Contact: an elastic face pressed on a rough surface, at rest. It knows no paint: heights are in any unit of
// length, pressures in any unit that goes with it.

#include "libtexture/base/progress.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

/// How a static contact was solved.
struct ContactReport {
  int transform_pairs = 0;   ///< forward + inverse transforms spent, two to a pair
  int iterations = 0;        ///< steps taken
  double residual = 0;       ///< duality gap sum p (gap - least gap), over sum p times the rms height
                             ///< (and what rounding leaves of a flat surface)
  double contact_share = 0;  ///< share of the surface under pressure
  double mean_gap = 0;       ///< mean distance between face and surface
};

/// Accuracy asked of a static contact.
struct ContactOptions {
  double tolerance = 1e-6;  ///< of the residual, > 0
  int most_pairs = 5000;    ///< NotConverged beyond; a half-space needs under 100
};

/// Solves static contacts on one grid with one stiffness; keeps its work space, so that the iteration
/// allocates nothing.
///
/// Find the pressure p >= 0 of a given mean whose face touches where p > 0 and lies above the surface
/// elsewhere: gap >= 0, p gap = 0 (docs/physics.md, 14 and 15). p minimises 1/2 <p, p/S> - <h, p> under
/// p >= 0 and its mean: conjugate gradients projected onto that set (docs/physics.md, levelling, names the
/// source), with the stiffness itself as preconditioner. The residual bounds the error from outside the
/// iteration.
///
/// A bending skin (S ~ q^4) at rest carries its load on a few lines and points: many more iterations, and
/// NotConverged when it is stiff. Wear blunts them: an Increment has no such trouble.
class Contact {
 public:
  /// stiffness: S(q) [pressure/length] on the half spectrum, > 0 but for q = 0, which is ignored (force
  /// control).
  Contact(const Grid& grid, const AlignedVector<double>& stiffness);

  /// Writes the pressure (its mean is mean_pressure > 0) and the gap under `height`, both of rows x cols.
  /// progress is called once an iteration (it may throw). NotConverged when the pairs are used up.
  ContactReport solve(const AlignedVector<double>& height, double mean_pressure,
                      AlignedVector<double>& pressure, AlignedVector<double>& gap,
                      const ContactOptions& options = {}, const Progress& progress = {});

 private:
  struct Place;
  void start(const AlignedVector<double>& height, double mean_pressure, AlignedVector<double>& pressure);
  void press_face(const AlignedVector<double>& height, const AlignedVector<double>& pressure,
                  AlignedVector<double>& gap);
  void mask_residual(const AlignedVector<double>& pressure, const AlignedVector<double>& gap, double level);
  void precondition(const AlignedVector<double>& pressure);
  double turn(const AlignedVector<double>& pressure, double beta);
  double compliance_along();

  Grid grid_;
  Fft fft_;
  AlignedVector<double> stiffness_;       // S, [0] = 0
  AlignedVector<double> compliance_;      // 1/S over rows cols, [0] = 0
  AlignedVector<double> preconditioner_;  // over rows cols
  Spectrum half_;
  AlignedVector<double>
      residual_;  // gap - its mean over the contact, there and where the face would cut in; else 0
  AlignedVector<double> residual_old_;  // at the place before
  AlignedVector<double> z_;             // preconditioned residual
  AlignedVector<double> direction_;     // d
  int transforms_ = 0;
};

}  // namespace libtexture
