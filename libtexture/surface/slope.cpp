#include "libtexture/surface/slope.hpp"

#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <complex>
#include <numbers>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

namespace {

// In double: by long double the Bessel function took a tenth of a simulation, for digits that nobody reads.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

/// How much of a wave the mean over a round spot keeps, x = pi diameter/wavelength.
double spot_factor(double x) {
  return x < 1e-4 ? 1 : 2 * boost::math::cyl_bessel_j(1, x, InDouble()) / x;
}

/// Wave number [1/mm] of a mode; 0 at the Nyquist frequency, where a real wave's slope at the pixels is 0.
double wave_number_per_mm(int index, int count, double length_mm) {
  return 2 * index == count ? 0 : 2 * std::numbers::pi * signed_mode(index, count) / length_mm;
}

}  // namespace

Array2d slope(const HeightField& field, Direction direction, double footprint_mm) {
  require_not_negative(footprint_mm, "slope", "footprint_mm");
  const Grid& grid = field.grid();
  Spectrum half = spectrum_of(field.height_um(), field.pixel_mm());
  for (int i = 0; i < grid.rows; ++i) {
    const double qy = wave_number_per_mm(i, grid.rows, grid.height_mm());
    for (int j = 0; j < grid.half_cols(); ++j) {
      const double qx = wave_number_per_mm(j, grid.cols, grid.width_mm());
      const double q = direction == Direction::rows ? qx : qy;
      const double keep = footprint_mm == 0 ? 1 : spot_factor(std::hypot(qx, qy) * footprint_mm / 2);
      half[static_cast<std::size_t>(i) * grid.half_cols() + j] *= std::complex<double>(0, q * keep);
    }
  }
  return values_of(std::move(half), grid) * (metre_per_um / metre_per_mm);
}

double rms_slope(const HeightField& field, Direction direction, double footprint_mm) {
  return std::sqrt(slope(field, direction, footprint_mm).square().mean());
}

}  // namespace libtexture
