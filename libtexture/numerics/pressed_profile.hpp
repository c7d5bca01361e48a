#pragma once
// Pressed profile: a plate with an elastic face, pressed on a section of given heights by a given force.

#include "libtexture/numerics/fft.hpp"

namespace libtexture {

/// Where the plate stands: the unloaded face is at height + slope x, x from the middle of the row.
struct PlateLine {
  double height = 0;  ///< [length]
  double slope = 0;   ///< [1]
};

/// What presses the plate down, and how it may move.
struct PlateLoad {
  double force = 0;  ///< sum of weight x pressure x pixel, > 0
  bool is_tilting =
      false;  ///< the plate turns until sum of weight x pressure x x is 0; else its slope is kept
};

/// How a pressed profile was solved.
struct PressedReport {
  int transform_pairs = 0;  ///< forward + inverse transforms spent
  int plates = 0;           ///< plate lines tried
  double residual = 0;      ///< rms error of the pressure over its rms
  double balance = 0;       ///< error of the force over it, and of the moment over force x quarter row, added
};

/// Accuracy asked of a pressed profile.
struct PressedOptions {
  double residual_tolerance = 1e-7;  ///< of the pressure, > 0
  double balance_tolerance = 1e-6;   ///< of the force, over it, > 0
  double moment_tolerance = 1e-4;    ///< of the moment, over force x quarter row, > 0
  int most_pairs = 20000;            ///< NotConverged beyond
};

/// Solves unilateral contact on one periodic row under displacement control, the plate's own line being found
/// from the force: p >= 0, w = C p + tau p + plate line - h >= 0, p w = 0, with C = 1/S(q), S(0) > 0 kept
/// (docs/physics.md, edges).
///
/// p minimises 1/2 <p, (C + tau) p> - <p, h - plate>, which is convex: conjugate gradients on the points in
/// contact, preconditioned by 1/(C + tau), steps projected on p >= 0 (two-metric projection,
/// docs/physics.md, edges). Around it bracketed secants find the plate's height and, where it tilts, its
/// slope. Any consistent units.
class PressedProfile {
 public:
  /// stiffness: S(q) of the half spectrum of a row of `cols` pixels, > 0 and finite, q = 0 included.
  PressedProfile(int cols, double pixel, const AlignedVector<double>& stiffness);

  /// height: one per pixel, -infinity where nothing can be touched; weight: what a pixel's pressure counts in
  /// the force,
  /// >= 0; compliance tau > 0 [length/pressure]: local give. `plate` is the start (its height is ignored) and
  /// the answer.
  PressedReport solve(const AlignedVector<double>& height, const AlignedVector<double>& weight,
                      double compliance, const PlateLoad& load, PlateLine& plate,
                      AlignedVector<double>& pressure, const PressedOptions& options = {});

 private:
  struct Balance;
  double x_of(std::size_t i) const {
    return (static_cast<double>(i) + 0.5 - 0.5 * static_cast<double>(pressure_.size())) * pixel_;
  }
  double arm() const { return 0.25 * static_cast<double>(pressure_.size()) * pixel_; }
  void set_compliance(double compliance);
  void set_plate(const AlignedVector<double>& height, const PlateLine& plate);
  void start_pressure();
  double height_on_springs(const AlignedVector<double>& height, const AlignedVector<double>& weight,
                           const PlateLoad& load, double slope);
  Balance balance(const AlignedVector<double>& weight, double force) const;
  void find_misfit();
  void find_pressure(const PressedOptions& options, PressedReport& report);
  bool step_along(double step);

  Fft fft_;
  double pixel_;
  double compliance_ = 0;
  AlignedVector<double> face_compliance_;   // C(q)
  AlignedVector<double> total_compliance_;  // C + tau
  AlignedVector<double> inverse_;           // 1/(C + tau)
  AlignedVector<double> depth_;             // h - plate line; very negative where nothing can be touched
  AlignedVector<double> pressure_;
  AlignedVector<double> misfit_;  // r = depth - (C + tau) p: 0 in contact, < 0 beside it
  AlignedVector<double> active_misfit_, correction_, direction_, response_, trial_;
};

}  // namespace libtexture
