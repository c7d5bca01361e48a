#pragma once
// Scene: what stands opposite the panel, to be seen mirrored in it.

#include "libtexture/numerics/array.hpp"

namespace libtexture {

/// A flat picture as it looks in a perfect mirror: row 0 is its top, column 0 its left.
struct Scene {
  Array2d luminance;  ///< (rows, cols), 0 to 1 = a lamp
  double width_mm;    ///< across all columns [mm], > 0; pixels are square

  void validate() const;
};

/// Where the parts of shelf_scene() are, counted from its middle, to the right and up [mm].
namespace shelf {
inline constexpr double width_mm = 1500;
inline constexpr double wall_luminance = 0.03;
inline constexpr double lamp_diameter_mm = 120;
inline constexpr double lamp_up_mm = 330;       ///< centres of the lamps, on a shelf
inline constexpr double lamp_spacing_mm = 240;  ///< five lamps, the third in the middle
inline constexpr double line_right_mm = -560;   ///< the plumb line, from above the shelf to its bob
inline constexpr double line_width_mm = 14;
inline constexpr double line_top_mm = 240;
inline constexpr double line_bottom_mm = -560;
inline constexpr double rings_up_mm = -280;  ///< centres of the rings
}  // namespace shelf

/// Our own scene, 1.5 m square: a shelf of five round lamps before a dark wall, a bright plumb line, and a
/// row of Landolt rings (ISO 8596: stroke and gap a fifth of the diameter) of 150, 106, 75, 53, 37 and 26 mm
/// on a light board. Its mean luminance is .1: the fill that lamp_visibility() takes.
Scene shelf_scene();

}  // namespace libtexture
