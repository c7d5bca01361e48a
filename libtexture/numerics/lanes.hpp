#pragma once
// Lanes: passes over long arrays in packs of eight, with sums kept in eight fixed lanes: as fast as the
// machine's vector units allow without -ffast-math, and the same bytes on each run.

#include <Eigen/Core>
#include <cmath>
#include <cstddef>

namespace libtexture {

inline constexpr int lane_count = 8;

/// `Width` consecutive numbers of an array, from `first`.
template <int Width>
Eigen::Map<Eigen::Array<double, Width, 1>> pack(double* first) {
  return Eigen::Map<Eigen::Array<double, Width, 1>>(first);
}
template <int Width>
Eigen::Map<const Eigen::Array<double, Width, 1>> pack(const double* first) {
  return Eigen::Map<const Eigen::Array<double, Width, 1>>(first);
}

/// Calls body.operator()<Width>(i) for packs of eight from 0 to n, then one by one for the rest.
template <class Body>
void over_packs(std::size_t n, Body&& body) {
  std::size_t i = 0;
  for (; i + lane_count <= n; i += lane_count) body.template operator()<lane_count>(i);
  for (; i < n; ++i) body.template operator()<1>(i);
}

/// A sum in fixed lanes.
class LaneSum {
 public:
  template <class Pack>
  void add(const Pack& values) {
    sums_.head<Pack::RowsAtCompileTime>() += values;
  }
  double total() const {
    return ((sums_[0] + sums_[1]) + (sums_[2] + sums_[3])) + ((sums_[4] + sums_[5]) + (sums_[6] + sums_[7]));
  }

 private:
  Eigen::Array<double, lane_count, 1> sums_ = Eigen::Array<double, lane_count, 1>::Zero();
};

/// Root mean square of n > 0 values about their mean.
inline double rms_about_mean(const double* values, std::size_t n) {
  LaneSum sum, squares;
  over_packs(n, [&]<int W>(std::size_t i) { sum.add(pack<W>(values + i)); });
  const double mean = sum.total() / static_cast<double>(n);
  over_packs(n, [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> deviation = pack<W>(values + i) - mean;
    squares.add(deviation * deviation);
  });
  return std::sqrt(squares.total() / static_cast<double>(n));
}

}  // namespace libtexture
