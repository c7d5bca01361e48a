#pragma once
// Slope: the surface's tilt at every pixel, from its spectrum.

#include "libtexture/surface/waves.hpp"

namespace libtexture {

/// Slope of the surface (rows, cols), as a ratio (um/um): the derivative of its waves, exact for each of
/// them. footprint_mm >= 0: mean over a round spot of this diameter, which passes a wave by 2 J1(x)/x, x = pi
/// footprint/ wavelength; 0 = the point itself. A profile has no slope along its column.
Array2d slope(const HeightField& field, Direction direction, double footprint_mm = 0);

/// Root mean square of slope(...).
double rms_slope(const HeightField& field, Direction direction, double footprint_mm = 0);

}  // namespace libtexture
