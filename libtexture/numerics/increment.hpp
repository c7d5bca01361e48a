#pragma once
// Increment: one implicit step of levelling, the heart of the library. It knows no paint: heights are in any
// unit of length, pressures in units of the mean pressure.

#include <string_view>

#include "libtexture/base/progress.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

/// How an increment was solved.
struct IncrementReport {
  int transform_pairs = 0;   ///< forward + inverse transforms spent
  double residual = 0;       ///< rms(S u + p_mean - p) / p_mean of the solution
  double gap = 0;            ///< estimate of the greatest misplacement of the face, over rms height
  double contact_share = 0;  ///< share of the surface under pressure
  double clearance = 0;      ///< greatest distance of the face above the surface; 0 in full contact
};

/// Accuracy asked of one increment.
struct IncrementOptions {
  double residual_tolerance = 1e-4;  ///< rms(S u + p_mean - p)/p_mean
  double gap_tolerance =
      1e-4;               ///< misplacement of the face over rms height; 1e-4 of a 1.5 um texture is .15 nm
  int most_pairs = 5000;  ///< NotConverged beyond; hard cases need under 100, but
                          ///< pairs grow as removal^-0.4: thousands where the texture is 1000 removals high
  bool is_continued =
      false;  ///< start from the face of the solve before: for a surface worn a little further
};

/// Solves increments on one grid with one stiffness; keeps its work space, so that solve() allocates nothing.
///
/// Find the face height u with p = max(0, h - u)/removal and S u = p - 1 (S(0) = 0, pressures over p_mean),
/// then remove `removal` x p: the implicit Euler step of dh/dR = -p/p_mean under unilateral contact
/// (docs/physics.md, levelling). u minimises 1/2 <u, S u> + |(h-u)+|^2/(2 removal) + sum(u), which is convex:
/// nonlinear conjugate gradients with the preconditioner S + theta/removal, theta = contact
/// share, one transform pair an iteration.
class Increment {
 public:
  /// stiffness: S(q)/p_mean [1/length] on the half spectrum, > 0 but for q = 0, which is ignored (force
  /// control).
  Increment(const Grid& grid, const AlignedVector<double>& stiffness);

  /// Solves for `height` and a mean removal > 0 (same unit); writes the pressure over its mean (mean exactly
  /// 1). progress is called once an iteration (it may throw). NotConverged when the pairs are used up.
  IncrementReport solve(const AlignedVector<double>& height, double removal, AlignedVector<double>& pressure,
                        const IncrementOptions& options = {}, const Progress& progress = {});

  /// The transform of the grid, for callers that work on the same one.
  Fft& fft() { return fft_; }
  const AlignedVector<double>& stiffness() const { return stiffness_; }

 private:
  struct Along;
  void start(const AlignedVector<double>& height);
  void resume(const AlignedVector<double>& height);
  void set_preconditioner(double theta);
  double precondition();
  double misplacement() const;
  Along turn(double beta);
  Along advance(double step);
  Along search_line(const Along& start);
  void write_pressure(AlignedVector<double>& pressure) const;

  Fft fft_;
  AlignedVector<double> stiffness_;  // S/p_mean, [0] = 0
  AlignedVector<double> inverse_m_;  // 1/(S + theta/removal)/(rows cols)
  Spectrum half_;
  AlignedVector<double> gap_;            // h - u: positive in contact
  AlignedVector<double> face_pressure_;  // A = S u + 1
  AlignedVector<double> residual_;       // r = A - (gap)+/removal
  AlignedVector<double> z_;              // M^-1 r
  AlignedVector<double> direction_;      // d
  AlignedVector<double> m_direction_;    // M d
  AlignedVector<double> face_;           // u of the solve before; S u + 1 is still in face_pressure_
  Grid grid_;
  double removal_ = 0;
  double theta_over_removal_ = 0;
  double last_share_ = 1;  // contact share of the solve before; 1 = nothing to resume
};

}  // namespace libtexture
