#pragma once
// IdealCut: the least clear that any process can spend on levelling a surface.

#include <vector>

#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// A plane that takes off all above it. No process reaches the same remaining rms height, or the same
/// remaining peak-to-valley height, for less mean removal (docs/physics.md, risk): the bound is read off the
/// material-ratio curve, the sorted heights.
class IdealCut {
 public:
  explicit IdealCut(const HeightField& field);

  /// Mean removal [um] that leaves an rms height [um], >= 0; 0 where the surface has no more than that.
  double removal_um(double rms_um) const;

 private:
  double n_;
  std::vector<double> height_;   // from the top down
  std::vector<double> sum_;      // of the highest k
  std::vector<double> squares_;  // likewise

  double rms_under(std::size_t count, double plane) const;
};

}  // namespace libtexture
