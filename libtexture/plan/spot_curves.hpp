#pragma once
// SpotCurves: what a test spot's texture would be, for any scale of the texture and stiffness of the backing.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/process/step.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// Levelling curves of one step on one surface over a range of stiffness. A surface c times as high on the
/// backing S levels as the surface itself does on c S, with all heights and removals times c (dh/dR = -p/p0,
/// docs/physics.md): so one family of curves serves every scale and stiffness.
struct SpotCurves {
  double rms_um = 0;                    ///< of the surface at scale 1 [um]
  double valley_um = 0;                 ///< its valley depth, as deep as the spot's area makes it [um]
  double least_log_ratio = 0;           ///< ln(scale x stiffness ratio) of the first curve
  double log_spacing = 0;               ///< between curves
  std::vector<double> removal_um = {};  ///< points of a curve, from 0 rising [um]
  /// Bare springs: working deflection, pressure/stiffness [um], at ratio 1; none on other backings.
  std::optional<double> spring_deflection_um = {};
  /// Removal at which the last glossy valley disappears at scale 1 [um], one value per curve.
  std::vector<double> gloss_gone_um = {};
  /// ln(rms left/rms) at each of removal_um, by curve.
  std::vector<std::vector<double>> log_rms_left = {};

  /// Removal at which the last glossy valley disappears [um].
  double gloss_gone_at_um(double scale, double stiffness_ratio) const;
  /// Rms left after a removal [um]; beyond the curves' end it falls on as it fell last.
  double rms_left_um(double scale, double stiffness_ratio, double removed_um) const;
};

/// The curves of a step on a flat spot of area_m2, for scale x stiffness within exp(+-log_reach), > 0 to 5.
/// On springs the last glossy valley goes at valley depth - pressure/stiffness exactly (R4 of the physics);
/// else where the simulated curve touches the deepest valley. A spot larger than the patch has deeper
/// valleys: by the expected exceedances of a Gaussian surface.
SpotCurves spot_curves(const Step& step, const HeightField& surface, double area_m2, double log_reach,
                       const Progress& progress = {});

}  // namespace libtexture
