#pragma once
// Viewer: who looks at what is mirrored in the panel, and from where.

#include <optional>
#include <tuple>

#include "libtexture/base/fields.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

/// An eye before the panel, and the thing that it sees mirrored, as in ReflectionView.
struct Viewer {
  double viewer_m = 1;  ///< eye to surface [m], >= 0
  double scene_m = 2;   ///< surface to the mirrored thing [m], > 0
  double pupil_mm = 3;  ///< the eye's pupil [mm], >= 0; 2-4 in daylight (from memory)

  void validate() const;
  bool operator==(const Viewer&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("viewer_m", &Viewer::viewer_m), optional("scene_m", &Viewer::scene_m),
                      optional("pupil_mm", &Viewer::pupil_mm)};
  }
};

/// The eye that looks along a path of distance_m [m], > 0, over the paint to what it reads, eye_to_paint_m of
/// it before the paint [m], >= 0 and less than distance_m; none = a third of it, as Viewer has it.
Viewer viewer_along(double distance_m, std::optional<double> eye_to_paint_m = {});

/// Rms wander [arcmin] of a mirrored point as this viewer's eye moves over the surface, in the worse of the
/// two directions: twice the slope, less the share of the path before the panel; waves below the spot that
/// the pupil sees blur and do not count, docs/physics.md (53a).
double seen_wander_arcmin(const HeightField& field, const Viewer& viewer);
// Of a surface whose waves are at hand; the spot is pupil_spot() on its grid.
double seen_wander_arcmin(const Waves& waves, const Viewer& viewer, const SpotMean& spot);

/// How far a slope of the surface, a ratio, shifts a mirrored point to this viewer [arcmin]: twice the slope,
/// less the share of the path before the panel (docs/physics.md, equation 80).
double seen_shift_arcmin(double slope, const Viewer& viewer);

/// Shift of a mirrored point that normal sight just resolves [arcmin] (ISO 8596).
inline constexpr double resolved_arcmin = 1;

/// The slope whose shift normal sight just resolves.
double hidden_slope(const Viewer& viewer);

/// Length [mm] that normal sight just resolves at a distance [m].
double resolved_mm(double distance_m);

/// The spot of a surface that the viewer's pupil takes in as it looks at a mirrored point, docs/physics.md
/// (55).
SpotMean pupil_spot(const Viewer& viewer, const Grid& grid);

/// Rms [arcmin] by which the surface moves and blurs a letter together: seen_wander_arcmin() as through a
/// pinhole, which every wave moves.
double seen_smear_arcmin(const HeightField& field, const Viewer& viewer);
// Of a surface whose waves are at hand.
double seen_smear_arcmin(const Waves& waves, const Viewer& viewer);

/// Height [mm] of the smallest mirrored letter that this viewer can read where the image wanders and blurs by
/// so much together [arcmin, rms], which is seen_smear_arcmin(), behind a veil that leaves so much contrast;
/// none where no letter is read. As smallest_letter_mm(), docs/physics.md (53).
std::optional<double> seen_letter_mm(double wander_arcmin, const Viewer& viewer, double contrast = 1);

}  // namespace libtexture
