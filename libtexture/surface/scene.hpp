#pragma once
// Scene: what stands opposite the panel, to be seen mirrored in it.

#include <array>
#include <string_view>

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

/// A row of the sign, in block letters.
struct SignRow {
  /// of the letters
  double height_mm;
  /// of their lower edge
  double up_mm;
  std::string_view words;
};
/// left edge of the rows
inline constexpr double sign_right_mm = -400;
inline constexpr double sign_luminance = 0.7;
inline constexpr double board_luminance = 0.08;
/// What an invented shop has to say. Heights are preferred numbers (ISO 3, series R5).
inline constexpr std::array<SignRow, 5> sign_rows{
    {{125, -250, "TALLOW"},
     {80, -370, "LAMPS AND TIN"},
     {50, -452, "MENDED WHILE YOU WAIT"},
     {31.5, -510, "OPEN TEN TO FIVE NOT ON FRIDAYS"},
     {20, -550, "PLEASE KNOCK TWICE AND WIPE YOUR BOOTS IN WET WEATHER"}}};
}  // namespace shelf

/// Our own scene, 1.5 m square: a shelf of five round lamps before a dark wall, a bright plumb line, and the
/// sign of an invented shop, rows of light block letters on a dark board. Its mean luminance is 0.1: the fill
/// that lamp_visibility() takes.
Scene shelf_scene();

}  // namespace libtexture
