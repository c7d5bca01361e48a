#pragma once
// NodePatch: the patch on which plans solve their nodes: as few pixels as its waves bear.

#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// A surface on the fewest pixels that leave eight to its mean wavelength and 64 to a side, in numbers that
/// transform fast. Its mean wavelength and rms height stand within 1 % (docs/physics.md, risk).
HeightField node_patch(const HeightField& surface);

}  // namespace libtexture
