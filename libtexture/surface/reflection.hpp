#pragma once
// Reflection: what an eye sees mirrored in a surface.

#include <tuple>

#include "libtexture/base/fields.hpp"
#include "libtexture/base/progress.hpp"
#include "libtexture/surface/height_field.hpp"
#include "libtexture/surface/scene.hpp"

namespace libtexture {

/// Where the eye and the scene are, and how the picture is taken. The eye looks along +x onto the surface;
/// the scene stands upright across the mirrored line of sight.
struct ReflectionView {
  double angle_deg = 45;  ///< line of sight from the surface's normal, 0 to 80
  double viewer_m = 1;    ///< eye to surface [m], > 0
  double scene_m = 2;     ///< surface to scene [m], > 0
  double pupil_mm = 3;    ///< the eye's pupil, focused on the mirrored scene [mm], >= 0
  double width_mm = 500;  ///< of surface across the picture [mm], > 0: half a metre mirrors 1.5 m of scene
  int rows = 512;         ///< of the picture, 1 to 8192
  int cols = 512;         ///< of the picture, 1 to 8192
  double refractive_index = 1.5;  ///< of the clear
  double body_luminance = 0.002;  ///< of the paint under the clear, a lamp being 1: dark paint; estimate

  void validate() const;
  bool operator==(const ReflectionView&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("angle_deg", &ReflectionView::angle_deg),
                      optional("viewer_m", &ReflectionView::viewer_m),
                      optional("scene_m", &ReflectionView::scene_m),
                      optional("pupil_mm", &ReflectionView::pupil_mm),
                      optional("width_mm", &ReflectionView::width_mm),
                      optional("rows", &ReflectionView::rows),
                      optional("cols", &ReflectionView::cols),
                      optional("refractive_index", &ReflectionView::refractive_index),
                      optional("body_luminance", &ReflectionView::body_luminance)};
  }
};

/// The picture (view.rows, view.cols) of a scene mirrored in the surface; linear luminance, 0 to 1 (clipped),
/// row 0 on top (far side). Exposure is fixed: 1 is a lamp in a perfect mirror of this index at
/// view.angle_deg, so pictures of one view compare. Each pixel is the mean of 16 rays over the pixel and the
/// pupil, reflected by the local slope: F [share L_scene + (1 - share) L_mean] + body, docs/physics.md (54);
/// waves shorter than the spot the pupil sees blur, longer ones bend, docs/physics.md (55). A 51 mm patch
/// would mirror 150 mm of scene: the periodic patch is repeated over the whole view, and its repeats show.
/// specular_share: 0 to 1, one value per pixel of the surface (matt and shiny spots mix by area), or (1, 1)
/// for all. progress is called once a row.
Array2d render_reflection(const HeightField& field, const Array2d& specular_share,
                          const ReflectionView& view = {}, const Scene& scene = shelf_scene(),
                          const Progress& progress = {});

}  // namespace libtexture
