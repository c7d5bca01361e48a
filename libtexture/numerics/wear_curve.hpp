#pragma once
// WearCurve: a surface worn on along one curve, to an accuracy of its shape, and read on the way.

#include <array>
#include <optional>

#include "libtexture/numerics/erosion.hpp"
#include "libtexture/numerics/wearing.hpp"

namespace libtexture {

/// Wears a surface as far as it is read. Increments are chosen by an estimate of their own error alone, so
/// that what is read at one removal does not depend on how far the curve goes on; between their ends it is
/// read by cubics. The exact flow brings any two surfaces nearer to each other (it descends a convex energy),
/// so errors of shape do not grow on the way (docs/physics.md (19d)).
class WearCurve {
 public:
  /// `shape_tolerance`: rms of what the heights may err by in one increment, in their unit, > 0; stiffness
  /// and progress as in Wearing.
  WearCurve(const Grid& grid, const AlignedVector<double>& height, const AlignedVector<double>& stiffness,
            double shape_tolerance, Progress progress);

  /// The state at a mean removal > 0 that is not under the last one read. NotConverged where the tolerance
  /// asks for increments without end.
  const ErosionState& at(double removal);

  /// Mean removal at which the last place came into contact; none where the curve has not gone that far. The
  /// face nears that place as the rest wears: its clearance is read on to nothing along a straight line.
  const std::optional<double>& touched_at() const { return touched_at_; }

  /// Sum of the increments' estimated errors, rms of the heights: no error of a state is larger.
  double shape_error() const { return shape_error_; }
  const Wearing& wearing() const { return wearing_; }

 private:
  void step_on(double target);
  void see(double removal, double clearance);

  Wearing wearing_;
  double shape_tolerance_;
  double from_ = 0, place_ = 0;  // ends of the last increment
  double next_ = 0;              // removal of the next one, as wished
  double shape_error_ = 0;
  std::array<double, 2> seen_at_{};         // removals of the last two stages that were not in full contact
  std::array<double, 2> seen_clearance_{};  // and the face's greatest clearance there
  int seen_ = 0;                            // so many of them are known
  std::optional<double> touched_at_;
  ErosionState state_;
};

}  // namespace libtexture
