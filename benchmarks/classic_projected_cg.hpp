#pragma once
// The classic solver to compare with: conjugate gradients projected onto p >= 0, the pressure rescaled to its
// mean in every iteration (docs/decisions/02-conjugate-gradients.md names its source); transforms in place of
// summation.

#include "libtexture/numerics/fft.hpp"

namespace benchmark {

struct ClassicReport {
  int transform_pairs = 0;
  double error = 0;  ///< the greater of sum(p |gap|)/sum(p) and greatest penetration, over rms height
  bool is_solved = false;
};

/// Static contact of mean pressure 1 under a compliance [length] on the half spectrum. A levelling increment
/// is the same with the compliance 1/S + removal. Stops when the error is within the tolerance, or the pairs
/// are used up.
ClassicReport solve_classic(const libtexture::Grid& grid, const libtexture::AlignedVector<double>& height,
                            const libtexture::AlignedVector<double>& compliance, double tolerance,
                            int most_pairs, libtexture::AlignedVector<double>& pressure);

}  // namespace benchmark
