#include "classic_projected_cg.hpp"

#include <algorithm>
#include <cmath>

namespace benchmark {

using namespace libtexture;
using Values = AlignedVector<double>;

namespace {

double rms_of(const Values& values) {
  double sum = 0, square = 0;
  for (const double value : values) sum += value;
  const double mean = sum / static_cast<double>(values.size());
  for (const double value : values) square += (value - mean) * (value - mean);
  return std::sqrt(square / static_cast<double>(values.size()));
}

double error_of(const Values& pressure, const Values& gap) {
  double load = 0, work = 0, off = 0, least = HUGE_VAL;
  for (std::size_t i = 0; i < gap.size(); ++i) {
    load += pressure[i];
    work += pressure[i] * gap[i];
    least = std::min(least, gap[i]);
  }
  const double lift = work / load;
  for (std::size_t i = 0; i < gap.size(); ++i) off += pressure[i] * std::abs(gap[i] - lift);
  return std::max(off / load, lift - least);
}

// Takes the mean over the contact out of all values.
void centre(Values& values, const Values& pressure) {
  double sum = 0, count = 0;
  for (std::size_t i = 0; i < values.size(); ++i)
    if (pressure[i] > 0) sum += values[i], ++count;
  for (double& value : values) value -= sum / count;
}

}  // namespace

ClassicReport solve_classic(const Grid& grid, const Values& height, const Values& compliance,
                            double tolerance, int most_pairs, Values& pressure) {
  const std::size_t n = height.size();
  Fft fft(grid);
  Values gap(n), direction(n, 0.0), along(n);
  pressure.assign(n, 1.0);
  const double height_rms = rms_of(height);
  ClassicReport report;
  double square_old = 1;
  bool keeps_direction = false;
  for (;;) {
    fft.filter(pressure, compliance, gap);
    ++report.transform_pairs;
    for (std::size_t i = 0; i < n; ++i) gap[i] -= height[i];
    report.error = error_of(pressure, gap) / height_rms;
    report.is_solved = report.error <= tolerance;
    if (report.is_solved || report.transform_pairs >= most_pairs) return report;

    centre(gap, pressure);
    double square = 0;
    for (std::size_t i = 0; i < n; ++i)
      if (pressure[i] > 0) square += gap[i] * gap[i];
    for (std::size_t i = 0; i < n; ++i)
      direction[i] =
          pressure[i] > 0 ? gap[i] + (keeps_direction ? square / square_old : 0) * direction[i] : 0;
    square_old = square;
    fft.filter(direction, compliance, along);
    ++report.transform_pairs;
    centre(along, pressure);
    double down = 0, curve = 0;
    for (std::size_t i = 0; i < n; ++i)
      if (pressure[i] > 0) down += gap[i] * direction[i], curve += along[i] * direction[i];
    const double step = down / curve;

    keeps_direction = true;
    double load = 0;
    for (std::size_t i = 0; i < n; ++i) {
      if (pressure[i] > 0) pressure[i] = std::max(0.0, pressure[i] - step * direction[i]);
      if (pressure[i] == 0 && gap[i] < 0) {
        pressure[i] = -step * gap[i];
        keeps_direction = false;
      }
      load += pressure[i];
    }
    for (double& p : pressure) p *= static_cast<double>(n) / load;
  }
}

}  // namespace benchmark
