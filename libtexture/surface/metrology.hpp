#pragma once
// Metrology: what an instrument would report of a surface.

#include <vector>

#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// Rms height [um] of the waves between neighbouring edges, from the spectrum (Parseval): one value per pair
/// edges_mm[i] <= wavelength < edges_mm[i + 1], so that the squares of neighbouring bands add up.
/// edges_mm: at least two, > 0, increasing [mm]; the last may be infinite.
std::vector<double> band_rms_um(const HeightField& field, const std::vector<double>& edges_mm);

}  // namespace libtexture
