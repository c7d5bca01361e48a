#pragma once
// An independent round plate on springs, by finite volumes in rings: the outside check of the closed forms.

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace round_plate {

/// Rings of equal width [m] about a middle; the plate is held at the outermost, far from the load.
struct Rings {
  int count;
  double width;
  double radius(int i) const { return (i + 0.5) * width; }
};

/// Laplacian of an axially symmetric field: what flows over the rings' borders.
inline Eigen::MatrixXd laplacian(const Rings& rings) {
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(rings.count, rings.count);
  for (int i = 0; i < rings.count; ++i) {
    const double area = rings.radius(i) * rings.width * rings.width;
    const double inner = i * rings.width / area, outer = (i + 1) * rings.width / area;
    matrix(i, i) = -inner - outer;
    if (i > 0) matrix(i, i - 1) = inner;
    if (i + 1 < rings.count) matrix(i, i + 1) = outer;
  }
  return matrix;
}

/// Pressure per deflection of a plate of bending stiffness D on springs k.
inline Eigen::MatrixXd stiffness(const Rings& rings, double bending, double springs) {
  const Eigen::MatrixXd once = laplacian(rings);
  return bending * once * once + springs * Eigen::MatrixXd::Identity(rings.count, rings.count);
}

/// A flat disc on springs (its backing) pressed on a crowned panel that is such a plate.
struct Contact {
  double radius;  ///< where the pressure ends [m]
  double middle;  ///< pressure in the innermost ring [Pa]
};

/// Contact under a force [N] of a disc of `disc_rings` rings. The disc's approach is halved until its force
/// agrees; for each, rings that would pull are let go until none does.
inline Contact press(const Rings& rings, int disc_rings, const Eigen::MatrixXd& plate_stiffness,
                     double backing, double crown, double force) {
  const Eigen::MatrixXd give = plate_stiffness.inverse().topLeftCorner(disc_rings, disc_rings);
  Eigen::VectorXd pressure;
  const auto force_at = [&](double approach) {
    int touching = disc_rings;  // rings touch from the middle outwards
    for (;;) {
      Eigen::MatrixXd matrix = give.topLeftCorner(touching, touching);
      Eigen::VectorXd free(touching);
      for (int i = 0; i < touching; ++i) {
        matrix(i, i) += 1 / backing;
        free[i] = approach - rings.radius(i) * rings.radius(i) / (2 * crown);
      }
      pressure = matrix.partialPivLu().solve(free);
      int kept = touching;
      while (kept > 1 && pressure[kept - 1] <= 0) --kept;
      if (kept == touching) break;
      touching = std::max(kept, touching - 1);
    }
    double sum = 0;
    for (int i = 0; i < touching; ++i)
      sum += pressure[i] * 2 * std::numbers::pi * rings.radius(i) * rings.width;
    return sum;
  };
  double low = 0, high = 5e-3;
  for (int halving = 0; halving < 40; ++halving)
    (force_at((low + high) / 2) < force ? low : high) = (low + high) / 2;
  const auto last = pressure.size() - 1;
  const double fall = pressure[last - 1] - pressure[last];
  return {rings.radius(static_cast<int>(last)) + pressure[last] / fall * rings.width, pressure[0]};
}

}  // namespace round_plate
