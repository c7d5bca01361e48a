#pragma once
// Viewer: who looks at what is mirrored in the panel, and from where.

#include <tuple>

#include "libtexture/base/fields.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// An eye before the panel, and the thing that it sees mirrored, as in ReflectionView.
struct Viewer {
  double viewer_m = 1;  ///< eye to surface [m], > 0
  double scene_m = 2;   ///< surface to the mirrored thing [m], > 0
  double pupil_mm = 3;  ///< the eye's pupil [mm], >= 0; 2-4 in daylight (from memory)

  void validate() const;
  bool operator==(const Viewer&) const = default;
  static constexpr auto fields() {
    return std::tuple{optional("viewer_m", &Viewer::viewer_m), optional("scene_m", &Viewer::scene_m),
                      optional("pupil_mm", &Viewer::pupil_mm)};
  }
};

/// Rms wander [arcmin] of a mirrored point as this viewer's eye moves over the surface, in the worse of the
/// two directions: twice the slope, less the share of the path before the panel; waves below the spot that
/// the pupil sees blur and do not count, docs/physics.md (53a).
double seen_wander_arcmin(const HeightField& field, const Viewer& viewer);

/// Height [mm] of the smallest mirrored letter that this viewer can read where the image wanders and blurs by
/// so much together [arcmin, rms], which is seen_wander_arcmin() through a pinhole; docs/physics.md (53).
/// Scratches are left out.
double seen_letter_mm(double wander_arcmin, const Viewer& viewer);

}  // namespace libtexture
