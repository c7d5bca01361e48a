#pragma once
// Resample: a periodic surface on another grid over the same area.

#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The surface on rows x cols pixels over the same area, which are square again: each wave that both grids
/// hold stays as it is, those of two pixels of either grid and shorter are left out (sampling theorem).
/// InvalidInput where the pixels would not be square.
HeightField resampled(const HeightField& surface, int rows, int cols);

}  // namespace libtexture
