#pragma once
// LevellingCurve: a patch levelled once, to the accuracy of a plan, and read at as many removals as wished.

#include <optional>

#include "libtexture/numerics/wear_curve.hpp"
#include "libtexture/process/levelling.hpp"

namespace libtexture {

/// Accuracy of rms heights that plans ask for, a share of the start's.
inline constexpr double plan_tolerance_share = 0.01;

/// A share of a start's rms height [um], and 5 nm at least: what is flatter is judged by no one.
double rms_tolerance_um(const HeightField& start, double share = plan_tolerance_share);

/// What is asked of a LevellingCurve.
struct CurveOptions {
  double rms_tolerance_um = unset;  ///< accuracy of the rms height [um], > 0
  bool is_shape_asked = false;      ///< the share touched or a single place is judged too: twice the work
  std::optional<double> disc_diameter_mm = {};  ///< as in LevelOptions [mm]
  double grain_um = 0;                          ///< as in LevelOptions [um]
};

/// The patch at one removal.
struct CurvePoint {
  HeightField surface;
  double contact_share = 1;  ///< share of the patch under pressure
};

/// Levels a patch as level() does, to an accuracy of its rms height alone: in a third of the pairs where many
/// removals are read.
class LevellingCurve {
 public:
  LevellingCurve(const HeightField& field, const Backing& backing, double pressure_kpa,
                 const CurveOptions& options, const Progress& progress = {});

  /// The same under a stiffness over mean pressure [1/um] on the half spectrum of the field's grid, as
  /// relative_stiffness_per_um() gives it: what many curves have in common is computed once.
  LevellingCurve(const HeightField& field, const AlignedVector<double>& stiffness_per_um,
                 double rms_tolerance_um, bool is_shape_asked, const Progress& progress = {});

  /// The patch at a mean removal [um] that is >= least_removal_um and does not fall from call to call.
  CurvePoint at(double removal_um);

  /// Mean removal at which the last place is touched [um]; none where the curve has not gone that far.
  std::optional<double> touched_at_um() const;

  int transform_pairs() const;

 private:
  Grid grid_;
  AlignedVector<double> height_;
  std::optional<WearCurve> curve_;  // none = rigid: the ideal cut
};

}  // namespace libtexture
