#pragma once
// Press: a backing pressed on a textured patch, at rest.

#include "libtexture/base/progress.hpp"
#include "libtexture/surface/height_field.hpp"
#include "libtexture/tool/backing.hpp"

namespace libtexture {

/// Where a backing at rest touches, and how hard.
struct Pressed {
  Array2d pressure_kpa;      ///< (rows, cols), >= 0 [kPa]; its mean is the pressure asked for
  double contact_share = 0;  ///< share of the patch under pressure
  double mean_gap_um = 0;    ///< mean distance between face and surface [um]
  int iterations = 0;        ///< of the solver
  int transform_pairs = 0;   ///< forward + inverse transforms spent
  double residual = 0;       ///< duality gap over pressure times rms height
};

/// Static contact of a backing with a patch under a mean pressure [kPa], > 0: no wear, pressure >= 0, gap >=
/// 0, never both (docs/physics.md, 14 and 15). The backing is taken as it is given. InvalidInput for a rigid
/// one, which touches in a point. NotConverged for a skin so stiff that it rests on a few lines: levelling it
/// has no such trouble.
Pressed press(const HeightField& field, const Backing& backing, double pressure_kpa,
              const Progress& progress = {});

}  // namespace libtexture
