#include "libtexture/surface/viewer.hpp"

#include <algorithm>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {

namespace {

constexpr double radian_per_arcmin = std::numbers::pi / 180 / 60;
constexpr double eye_share = 1.0 / 3;  // of the whole path, from the eye to the paint

double beyond_share(const Viewer& viewer) {
  return viewer.scene_m / (viewer.viewer_m + viewer.scene_m);
}

}  // namespace

void Viewer::validate() const {
  require_not_negative(viewer_m, "Viewer", "viewer_m");
  require_positive(scene_m, "Viewer", "scene_m");
  require_not_negative(pupil_mm, "Viewer", "pupil_mm");
}

Viewer viewer_along(double distance_m, std::optional<double> eye_to_paint_m) {
  require_positive(distance_m, "viewer_along", "distance_m");
  const double viewer_m = eye_to_paint_m.value_or(eye_share * distance_m);
  const Viewer viewer{.viewer_m = viewer_m, .scene_m = distance_m - viewer_m};
  viewer.validate();
  return viewer;
}

double seen_wander_arcmin(const HeightField& field, const Viewer& viewer) {
  return seen_wander_arcmin(Waves(field), viewer, pupil_spot(viewer, field.grid()));
}

double seen_wander_arcmin(const Waves& waves, const Viewer& viewer, const SpotMean& spot) {
  viewer.validate();
  return beyond_share(viewer) * std::max(image_wander_arcmin(waves, Direction::rows, spot),
                                         image_wander_arcmin(waves, Direction::columns, spot));
}

double seen_shift_arcmin(double slope, const Viewer& viewer) {
  viewer.validate();
  return beyond_share(viewer) * 2 * slope / radian_per_arcmin;
}

double hidden_slope(const Viewer& viewer) {
  return resolved_arcmin / seen_shift_arcmin(1, viewer);
}

double resolved_mm(double distance_m) {
  return distance_m * resolved_arcmin * radian_per_arcmin / metre_per_mm;
}

SpotMean pupil_spot(const Viewer& viewer, const Grid& grid) {
  viewer.validate();
  return {grid, viewer.pupil_mm * beyond_share(viewer)};
}

double seen_smear_arcmin(const HeightField& field, const Viewer& viewer) {
  return seen_smear_arcmin(Waves(field), viewer);
}

double seen_smear_arcmin(const Waves& waves, const Viewer& viewer) {
  return seen_wander_arcmin(waves, viewer, {});
}

std::optional<double> seen_letter_mm(double wander_arcmin, const Viewer& viewer, double contrast) {
  viewer.validate();
  return smallest_letter_mm(wander_arcmin, viewer.viewer_m + viewer.scene_m, contrast);
}

}  // namespace libtexture
