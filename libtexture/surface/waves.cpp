#include "libtexture/surface/waves.hpp"

#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <complex>
#include <numbers>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

constexpr double slope_unit = metre_per_um / metre_per_mm;  // heights are in um, lengths in mm

// In double: by long double the Bessel function took a tenth of a simulation, for digits that nobody reads.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

double spot_factor(double x) {
  return x < 1e-4 ? 1 : 2 * boost::math::cyl_bessel_j(1, x, InDouble()) / x;
}

// Wave numbers [1/mm] of a grid along x and y; 0 at the Nyquist frequency, where a real wave's slope at the
// pixels is 0.
struct WaveNumbers {
  explicit WaveNumbers(const Grid& grid) {
    const auto numbers = [](int size, int count, double length_mm) {
      std::vector<double> q(static_cast<std::size_t>(size));
      for (int i = 0; i < size; ++i)
        q[static_cast<std::size_t>(i)] =
            2 * i == count ? 0 : 2 * std::numbers::pi * signed_mode(i, count) / length_mm;
      return q;
    };
    x = numbers(grid.half_cols(), grid.cols, grid.width_mm());
    y = numbers(grid.rows, grid.rows, grid.height_mm());
  }
  std::vector<double> x, y;
};

// The modes of a row of the half spectrum, from the first on, whose wavelength is at least an edge: along a
// row wavelengths fall.
int modes_above(double edge_mm, const Grid& grid, int row) {
  const double along_y = signed_mode(row, grid.rows) / grid.height_mm();
  int low = 0, high = grid.half_cols();
  while (low < high) {
    const int middle = (low + high) / 2;
    if (1 / std::hypot(along_y, middle / grid.width_mm()) >= edge_mm)
      low = middle + 1;
    else
      high = middle;
  }
  return low;
}

}  // namespace

SpotMean::SpotMean(const Grid& grid, double diameter_mm) {
  grid.validate();
  require_not_negative(diameter_mm, "SpotMean", "diameter_mm");
  if (diameter_mm == 0) return;
  const WaveNumbers q(grid);
  kept_.resize(q.y.size() * q.x.size());
  for (std::size_t i = 0; i < q.y.size(); ++i)
    for (std::size_t j = 0; j < q.x.size(); ++j)
      kept_[i * q.x.size() + j] = spot_factor(std::hypot(q.x[j], q.y[i]) * diameter_mm / 2);
}

Waves::Waves(const HeightField& field)
    : grid_(field.grid()), half_(spectrum_of(field.height_um(), field.pixel_mm())) {}

std::vector<double> Waves::band_rms_um(const std::vector<double>& edges_mm) const {
  const auto count = static_cast<double>(edges_mm.size());
  require(edges_mm.size() >= 2, "band_rms_um", "edges_mm", "must hold at least two wavelengths", count);
  for (std::size_t i = 0; i < edges_mm.size(); ++i) {
    require(edges_mm[i] > 0, "band_rms_um", "edges_mm", "must be > 0", edges_mm[i]);
    require(i == 0 || edges_mm[i] > edges_mm[i - 1], "band_rms_um", "edges_mm", "must increase", edges_mm[i]);
  }
  std::vector<double> power(edges_mm.size() - 1);
  for (int row = 0; row < grid_.rows; ++row) {
    const std::complex<double>* modes = &half_[static_cast<std::size_t>(row) * grid_.half_cols()];
    int above = modes_above(edges_mm.front(), grid_, row);
    for (std::size_t band = 0; band < power.size(); ++band) {
      const int end = std::exchange(above, modes_above(edges_mm[band + 1], grid_, row));
      double sum = 0;
      for (int col = row == 0 ? std::max(1, above) : above; col < end; ++col)  // the mean is no wave
        sum += modes_of_column(grid_, col) * std::norm(modes[col]);
      power[band] += sum;
    }
  }
  for (double& value : power) value = std::sqrt(value) / grid_.size();
  return power;
}

Array2d Waves::slope(Direction direction, const SpotMean& spot) const {
  const WaveNumbers q(grid_);
  Spectrum half(half_.size());
  for (std::size_t i = 0, mode = 0; i < q.y.size(); ++i)
    for (std::size_t j = 0; j < q.x.size(); ++j, ++mode) {
      const double steepness =
          (direction == Direction::rows ? q.x[j] : q.y[i]) * spot.kept(mode) * slope_unit;
      half[mode] = {-half_[mode].imag() * steepness, half_[mode].real() * steepness};
    }
  return values_of(std::move(half), grid_);
}

double Waves::rms_slope(Direction direction, const SpotMean& spot) const {
  const WaveNumbers q(grid_);
  double power = 0;
  for (std::size_t i = 0, mode = 0; i < q.y.size(); ++i) {
    double row = 0;
    for (std::size_t j = 0; j < q.x.size(); ++j, ++mode) {
      const double steepness = (direction == Direction::rows ? q.x[j] : q.y[i]) * spot.kept(mode);
      row += modes_of_column(grid_, static_cast<int>(j)) * steepness * steepness * std::norm(half_[mode]);
    }
    power += row;
  }
  return std::sqrt(power) / grid_.size() * slope_unit;
}

}  // namespace libtexture
