#pragma once
// Levelling: a patch worn peaks first by an abrasive face on a backing.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/surface/height_field.hpp"
#include "libtexture/tool/backing.hpp"

namespace libtexture {

/// Least mean removal that is solved [um]: a molecule or two (estimate). Below it the first contact is a few
/// points, and an increment costs thousands of transform pairs.
inline constexpr double least_removal_um = 1e-3;

/// What is asked of level().
struct LevelOptions {
  double removal_um = unset;              ///< mean clear to remove [um], at least least_removal_um
  std::vector<double> report_at_um = {};  ///< mean removals to report at [um], rising by least_removal_um and
                                          ///< more, to removal_um; none = the end
  double amplitude_tolerance_um = 1e-3;   ///< accuracy of rms, peak-to-valley and valley depth [um], > 0
  double touched_beyond_um = 0;  ///< a point counts as touched when it lost more than this [um], >= 0
  std::optional<double> disc_diameter_mm =
      {};  ///< given: waves longer than about half a disc are followed, not levelled [mm], > 0
  /// scale of the grains' heights [um], >= 0: they give as springs of p_mean/grain_um before the face, so
  /// that every wave costs so much more clear per e-fold; not on a rigid backing, the ideal cut
  double grain_um = 0;

  void validate() const;
  static constexpr auto fields() {
    return FieldTable{required("removal_um", &LevelOptions::removal_um),
                      optional("report_at_um", &LevelOptions::report_at_um),
                      optional("amplitude_tolerance_um", &LevelOptions::amplitude_tolerance_um),
                      optional("touched_beyond_um", &LevelOptions::touched_beyond_um),
                      optional("disc_diameter_mm", &LevelOptions::disc_diameter_mm),
                      optional("grain_um", &LevelOptions::grain_um)};
  }
};

/// The worn patch, and how it got there: one value per report.
struct Levelled {
  HeightField surface;                         ///< after removal_um; its mean has fallen by that
  Array2d removal_map_um;                      ///< (rows, cols) clear removed [um], >= 0
  std::vector<HeightField> surfaces = {};      ///< the surface at each report
  std::vector<double> removed_um = {};         ///< mean removal of each report [um]
  std::vector<double> rms_um = {};             ///< [um]
  std::vector<double> peak_to_valley_um = {};  ///< [um]
  std::vector<double> valley_depth_um = {};    ///< [um]
  std::vector<double> contact_share = {};      ///< share of the patch under pressure
  std::vector<double> touched_share = {};      ///< share that lost more than touched_beyond_um
  int increments = 0;                          ///< increments solved, trials included
  int transform_pairs = 0;                     ///< forward + inverse transforms, trials included
  double residual = 0;                         ///< largest rms(S u + p_mean - p)/p_mean of any increment
  double amplitude_error_um = 0;  ///< what halving all increments still changed [um], at most the tolerance
};

/// Levels a patch at a mean pressure [kPa], > 0: dh/dR = -p/p_mean under unilateral contact with the backing
/// as it is given: no foam plateau, crown, footprint or grains unless the options say so (docs/physics.md,
/// levelling). A rigid backing cuts all above a plane. NotConverged where the tolerance is not met.
Levelled level(const HeightField& field, const Backing& backing, double pressure_kpa,
               const LevelOptions& options, const Progress& progress = {});

/// Stiffness over mean pressure S(q)/p [1/um] on the half spectrum of a grid; [0] = 0 (force control). With a
/// footprint and grains as in LevelOptions (docs/physics.md, equations 12 and 19c).
AlignedVector<double> relative_stiffness_per_um(const Grid& grid, const Backing& backing, double pressure_kpa,
                                                std::optional<double> disc_diameter_mm = {},
                                                double grain_um = 0);

/// A stiffness over mean pressure [1/um] with grains that give by grain_um, >= 0, under it (docs/physics.md,
/// equation 19c).
AlignedVector<double> with_grains(AlignedVector<double> stiffness_per_um, double grain_um);

}  // namespace libtexture
