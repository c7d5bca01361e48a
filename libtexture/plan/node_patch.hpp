#pragma once
// NodePatch: the patch on which plans solve their nodes: as few pixels as its waves bear.

#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// A surface on every second pixel of each row and column, and again, while eight are left to its mean
/// wavelength and 64 to a side. Its mean wavelength and rms height stand within 1 % (docs/physics.md, risk).
HeightField node_patch(const HeightField& surface);

}  // namespace libtexture
