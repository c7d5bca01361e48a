#pragma once
// HeightField: the top of the clear coat on a grid.

#include "libtexture/numerics/array.hpp"
#include "libtexture/numerics/grid.hpp"

namespace libtexture {

/// Heights of the paint's top surface on a periodic grid of square pixels; one row is a profile. Immutable.
class HeightField {
 public:
  /// height_um: (rows, cols), finite [um]; pixel_mm > 0. periodic = false is refused for now: mirror or
  /// detrend first.
  HeightField(Array2d height_um, double pixel_mm);

  const Array2d& height_um() const { return height_um_; }  ///< (rows, cols) [um]
  double pixel_mm() const { return grid_.pixel_mm; }       ///< [mm]
  const Grid& grid() const { return grid_; }               ///< its grid

  double mean_um() const;            ///< mean height [um]
  double rms_um() const;             ///< root mean square about the mean, ISO 25178-2 Sq [um]
  double peak_to_valley_um() const;  ///< highest less lowest point, ISO 25178-2 Sz [um]
  double valley_depth_um() const;    ///< mean less lowest point, ISO 25178-2 Sv [um]

  bool operator==(const HeightField& other) const;

 private:
  Array2d height_um_;
  Grid grid_;
};

}  // namespace libtexture
