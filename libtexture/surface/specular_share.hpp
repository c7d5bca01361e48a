#pragma once
// Specular share: how much of the mirrored light the scratches leave in the mirror direction, and where the
// rest goes.

#include <vector>

#include "libtexture/surface/depth_law.hpp"
#include "libtexture/surface/gloss.hpp"

namespace libtexture {

/// Share (0 to 1) of the mirrored light that stays in the mirror direction: |A|^2 with
/// A = 1 - i k int_0^inf exp(-i k z)(1 - exp(-G(z))) dz, k = 4 pi cos(angle)/wavelength, G(z) the sum of
/// coverage exp(-z/depth): the mean phase of the depth law above, shadowing left out. One population of large
/// coverage gives pi x/sinh(pi x), x = k depth; small depths give docs/physics.md (47). docs/physics.md (48).
double specular_share(const std::vector<GroovePopulation>& grooves, double angle_deg,
                      double wavelength_nm = light_wavelength_nm);

/// Share (0 to 1) of the mirrored light that grooves scatter between two angles off the mirror direction,
/// from_deg <= to_deg: our own haze, not that of ISO 13803. The lobe is stated, not computed: a groove
/// scatters across itself, Gaussian in angle with standard deviation wavelength/(pi width), width 2 depth
/// tan(flank_deg), cut at 90 degrees; populations share the scattered light as their coverages. From 0 to 90
/// degrees it is 1 - specular_share. docs/physics.md (49).
double haze_share(const std::vector<GroovePopulation>& grooves, double angle_deg, double from_deg,
                  double to_deg, double flank_deg = 75);

/// How clearly a lamp stands out of the veil of scattered light: share/(share + 2 fill (1 - share)); above
/// about .05 it can be made out (estimate). fill: share of the surroundings as bright as the lamp, .1
/// (estimate). docs/physics.md (50).
double lamp_visibility(double specular_share, double fill = 0.1);

}  // namespace libtexture
