#pragma once
// StepCurves: what a step does to a patch against the clear it removes, solved at nodes and read in between.

#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// Levels of the removal map that stand for it in the scratch laws: quantiles (l + 1/2)/32.
inline constexpr int removal_levels = 32;

/// The patch at one removal by a step. Lengths in the units of the nodes: the world's over its texture scale.
struct StepPoint {
  double contact_share = 1;                 ///< share of the patch under pressure
  double touched_share = 0;                 ///< share cut by more than half a mean groove depth
  double valley_ratio = 1;                  ///< valley depth over that at the step's start
  Eigen::ArrayXd band_ratio = {};           ///< rms of each band over that at the step's start
  Eigen::ArrayXd removal_quantile_um = {};  ///< of the removal map, rising
};

/// What the nodes are solved for.
struct CurvePlan {
  Step step = {};
  DiscContact contact = {};   ///< on the nominal force
  double hardness_mpa = 200;  ///< of the clear [MPa]
  std::vector<HeightField> starts =
      {};  ///< surfaces that earlier steps leave, by rising rms height; at least one
  std::vector<double> stiffness_factors =
      {};                          ///< factors on S/p_mean, rising evenly in their logarithm; at least one
  bool is_touch_asked = false;     ///< the share touched is judged, not the rms height alone
  double most_removal_um = unset;  ///< as far as the curves go [um], > 0
  /// Shortest and longest wavelength of each band whose rms is followed [mm]; the first is all waves.
  std::vector<std::array<double, 2>> bands_mm = {};
};

struct SolvedCurves;

/// R is the natural clock: a step's texture depends on wear, speed, dwell and loading only through it.
/// S/p_mean is the second variable: a texture of s times the height under a pressure p wears as the texture
/// itself under p/s. The surface that earlier steps leave is the third, told by its rms height.
class StepCurves {
 public:
  /// Between the nodes: linear in the start's rms height, cubic in the logarithm of S/p_mean, cubic and
  /// monotone in the removal. Beyond them: as at the last.
  StepPoint at(double start_rms_um, double stiffness_factor, double removal_um) const;

  double most_removal_um() const { return at_um_.back(); }

  /// Removal [um] that leaves an rms height [um] of all waves, on the middle factor; that
  /// which leaves 1 % more than the least where so little is not reached.
  double removal_to_um(double start_rms_um, double rms_um) const;

 private:
  friend SolvedCurves solve_curves(const std::vector<CurvePlan>& plans, const Progress& progress);

  std::vector<double> starts_um_, factors_, at_um_;
  std::vector<Eigen::ArrayXXd> values_, slopes_;  // a node each: (figures, removals)
};

/// Curves, one per plan, and the levelling runs that they took.
struct SolvedCurves {
  std::vector<StepCurves> curves = {};
  int solves = 0;
};

/// Solves the nodes of all plans, a levelling run each, on all threads. A node that several plans share
/// (equal contact, grains, start, factor and first removals) is solved once, as far as the plan that goes
/// furthest: the wear rate moves nothing on it. A plan's curves are the same bytes alone and among others.
SolvedCurves solve_curves(const std::vector<CurvePlan>& plans, const Progress& progress = {});

/// The surfaces that the plan's step leaves of a start after mean removals [um], none falling, on the middle
/// factor: one levelling run.
std::vector<HeightField> surfaces_after(const CurvePlan& plan, const HeightField& start,
                                        const std::vector<double>& removals_um,
                                        const Progress& progress = {});

/// Rms heights [um] of the bands of a surface, as StepPoint counts them.
Eigen::ArrayXd band_rms_of(const HeightField& surface, const std::vector<std::array<double, 2>>& bands_mm);

}  // namespace libtexture
