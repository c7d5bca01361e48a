#pragma once
// The battery: forty random levelling increments, and a checker that knows nothing of the solver. Shared by
// the tests and the benchmark.

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "libtexture/base/random.hpp"
#include "libtexture/numerics/increment.hpp"

namespace battery {

using namespace libtexture;

struct Case {
  Grid grid;
  AlignedVector<double> height_m;
  AlignedVector<double> stiffness;  // S/p_mean [1/m] on the half spectrum
  double removal_m;
};

inline double log_uniform(double least, double most, double share) {
  return least * std::pow(most / least, share);
}

/// S/p_mean of a plate with tension on springs.
inline AlignedVector<double> plate_on_springs(const Grid& grid, double bending_n_m, double tension_n_per_m,
                                              double springs_pa_per_m, double pressure_pa) {
  AlignedVector<double> stiffness;
  for (const double q : wave_numbers_per_m(grid))
    stiffness.push_back((bending_n_m * q * q * q * q + tension_n_per_m * q * q + springs_pa_per_m) /
                        pressure_pa);
  return stiffness;
}

/// Random phases on a flat band of wavelengths, scaled to an rms height.
inline AlignedVector<double> flat_band(const Grid& grid, double shortest_mm, double longest_mm, double rms_m,
                                       std::uint64_t seed) {
  const auto q = wave_numbers_per_m(grid);
  const double least = 2e3 * std::numbers::pi / longest_mm, most = 2e3 * std::numbers::pi / shortest_mm;
  Fft fft(grid);
  Spectrum half(fft.half_size());
  for (std::size_t k = 0; k < half.size(); ++k)
    if (q[k] >= least && q[k] <= most)
      half[k] = std::polar(1.0, 2 * std::numbers::pi * uniform_at({seed, k}));
  AlignedVector<double> height(fft.real_size());
  fft.inverse(half, height);
  double square = 0;
  for (const double h : height) square += h * h;
  const double scale = rms_m / std::sqrt(square / static_cast<double>(height.size()));
  for (double& h : height) h *= scale;
  return height;
}

/// Case `index` of the battery on n x n pixels: log-uniform D 1e-7..1e-2 N m, k 3e6..3e9 Pa/m, pressure
/// 300..2e4 Pa, removal .02..1 um, pixel .05..0.2 mm, rms .3..5 um; tension 0 in half of the cases, else
/// .1..1000 N/m.
inline Case make_case(int index, int n = 256) {
  int draw = 0;
  const auto share = [&] {
    return uniform_at({20250101, static_cast<std::uint64_t>(index), static_cast<std::uint64_t>(draw++)});
  };
  const double bending = log_uniform(1e-7, 1e-2, share()), springs = log_uniform(3e6, 3e9, share());
  const double pressure = log_uniform(300, 2e4, share()), removal = log_uniform(.02e-6, 1e-6, share());
  const double pixel = log_uniform(.05, .2, share()), rms = log_uniform(.3e-6, 5e-6, share());
  const double tension = index % 2 == 0 ? 0 : log_uniform(.1, 1000, share());
  const double shortest = log_uniform(6 * pixel, 2, share()), longest = log_uniform(4, 12, share());
  const Grid grid{n, n, pixel};
  return {grid, flat_band(grid, shortest, longest, rms, 1000 + index),
          plate_on_springs(grid, bending, tension, springs, pressure), removal};
}

/// How far a pressure is from the answer, told from outside: with u = S^-1(p - 1) + the constant that puts
/// the face on the worn surface under pressure, the greater of sum(p |gap|)/(sum(p) rms h) and greatest
/// penetration/rms h.
inline double error_of(const Case& c, const AlignedVector<double>& pressure) {
  const std::size_t n = pressure.size();
  Fft fft(c.grid);
  AlignedVector<double> compliance(fft.half_size()), face(n);
  for (std::size_t k = 1; k < compliance.size(); ++k) compliance[k] = 1 / c.stiffness[k];
  fft.filter(pressure, compliance, face);
  double square = 0, p_gap = 0, p_sum = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double gap = face[i] - (c.height_m[i] - c.removal_m * pressure[i]);
    square += c.height_m[i] * c.height_m[i];
    p_gap += pressure[i] * gap;
    p_sum += pressure[i];
  }
  const double rms = std::sqrt(square / static_cast<double>(n)), lift = p_gap / p_sum;
  double complementarity = 0, penetration = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double gap = face[i] - (c.height_m[i] - c.removal_m * pressure[i]) - lift;
    complementarity += pressure[i] * std::abs(gap);
    penetration = std::max(penetration, -gap);
  }
  return std::max(complementarity / p_sum, penetration) / rms;
}

}  // namespace battery
