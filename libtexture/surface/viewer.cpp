#include "libtexture/surface/viewer.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {

void Viewer::validate() const {
  require_positive(viewer_m, "Viewer", "viewer_m");
  require_positive(scene_m, "Viewer", "scene_m");
  require_not_negative(pupil_mm, "Viewer", "pupil_mm");
}

double seen_wander_arcmin(const HeightField& field, const Viewer& viewer) {
  viewer.validate();
  const double beyond_share = viewer.scene_m / (viewer.viewer_m + viewer.scene_m);
  const double footprint_mm = viewer.pupil_mm * beyond_share;
  return beyond_share * std::max(image_wander_arcmin(field, Direction::rows, footprint_mm),
                                 image_wander_arcmin(field, Direction::columns, footprint_mm));
}

double seen_letter_mm(double wander_arcmin, const Viewer& viewer) {
  viewer.validate();
  return smallest_letter_mm(wander_arcmin, viewer.viewer_m + viewer.scene_m);
}

}  // namespace libtexture
