#pragma once
// Wearing: a surface on its way, worn increment by increment, and read anywhere within the last one.

#include "libtexture/numerics/increment.hpp"

namespace libtexture {

/// Wears one surface under one stiffness: dh/dR = -p/p_mean with unilateral contact (docs/physics.md,
/// levelling). How large the increments are is the caller's choice.
class Wearing {
 public:
  using Values = AlignedVector<double>;

  /// `height` in any unit of length; stiffness S/p_mean [1/length] on the half spectrum. progress is called
  /// once a solver iteration, with the share that tell() named last.
  Wearing(const Grid& grid, const Values& height, const Values& stiffness, IncrementOptions options,
          Progress progress);

  /// One increment of second order: two implicit stages, L-stable (docs/physics.md (19a)). companion() then
  /// holds a solution of third order from the same stages; of first order where `start_is_unknown` and no
  /// increment was taken before.
  void wear(double removal, bool start_is_unknown = false);
  /// Undoes the last increment; not twice, and not after wear_exactly().
  void take_back();

  /// In full contact each mode falls by exp(-S R). Taken, and true, only if the pressure 1 + S h is nowhere
  /// negative at the start, at the end and at two places between, or cannot be (sum of |S h| <= 1): a plate
  /// may leave full contact again.
  bool wear_exactly(double removal);

  const Values& height() const { return height_; }         ///< now
  const Values& companion() const { return companion_; }   ///< after wear(): see there
  double contact_share() const { return contact_share_; }  ///< 1 before the first increment
  /// Greatest distance of the face above the surface after the first stage of the last wear(), which ends at
  /// first_stage of the increment, and at its end.
  double first_clearance() const { return first_clearance_; }
  double clearance() const { return clearance_; }
  static const double first_stage;

  /// The heights at a share of the last wear(), 0 to 1: each point by a monotone cubic through its heights
  /// and pressures at the ends, the mean exactly. Exact stretches are read at their ends.
  void read(double share, Values& height) const;
  /// Contact share there.
  double contact_share_at(double share) const;

  void tell(double share_done);
  double residual() const { return residual_; }             ///< largest of any increment
  int increments() const { return increments_; }            ///< those taken back included
  int transform_pairs() const { return transform_pairs_; }  ///< likewise

 private:
  void solve(const Values& height, double removal, Values& pressure);
  template <class Factor>
  void each_mode(const Factor& factor, Spectrum& modes) const;
  double sum_of_amplitudes() const;
  double least_pressure(double removal);

  Increment increment_;
  Values height_, worn_;  // now, and before the last increment
  Values before_;         // pressure now
  Values second_;         // pressure before the last increment
  Values first_;          // of its first stage
  Values companion_;
  Spectrum spectrum_, worn_spectrum_;
  bool has_spectrum_ = false, cannot_leave_ = false;
  bool is_pressed_ = false;  // found in full contact now, by an exact stretch that ends here
  IncrementOptions options_;
  const Progress progress_;
  double share_done_ = 0;
  double removal_ = 0;  // of the last increment
  bool has_before_ = false, had_before_ = false;
  double contact_share_ = 1;  // not known at the start: ask wear_exactly
  double contact_share_before_ = 1;
  double first_clearance_ = 0, clearance_ = 0;
  double residual_ = 0;
  int increments_ = 0;
  int transform_pairs_ = 0;
};

}  // namespace libtexture
