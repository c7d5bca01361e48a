#pragma once
// LineTransform: the complex Fourier transform of several lines of one length at a time.

#include <cstddef>
#include <memory>
#include <vector>

#include "libtexture/numerics/array.hpp"

namespace libtexture {

/// Transforms lines of `length` complex numbers side by side, so that vector units work on several lines.
/// Fast where the length is a product of 2, 3 and 5; any other prime factor costs its square.
/// Holds tables only: threads may share it, each with buffers of its own.
class LineTransform {
 public:
  explicit LineTransform(int length);

  /// The transform of this length, with its tables kept for the next caller.
  static std::shared_ptr<const LineTransform> of(int length);

  int length() const { return length_; }

  /// Z = sum z exp(-2 pi i j k / length), not scaled. Both buffers hold 2 * length * lines numbers on a
  /// boundary of 16 bytes and are overwritten; returns the one that holds the result.
  /// `from`: for each place, the real parts of all lines and then their imaginary parts.
  /// Result: the real parts of all places, each with all lines, and then the imaginary parts.
  /// The inverse is the same transform with real and imaginary parts swapped before and after.
  double* transform(double* from, double* to, int lines) const;

 private:
  /// One pass: `groups` groups of `radix` numbers each, whose sums are turned by `turns`.
  struct Pass {
    int radix = 0;
    int groups = 0;
    std::vector<double> turns;  ///< re, im of exp(-2 pi i p j / (radix groups)), p = 1..groups-1, j = 1..radix-1
    std::vector<double> roots;  ///< re, im of exp(-2 pi i j / radix), of a radix without a butterfly of its own
  };
  template <class Lanes>
  static void run(const Pass& pass, const double* from, double* to, std::size_t run_length);

  int length_;
  std::vector<Pass> passes_;
};

/// exp(-2 pi i numerator / denominator), 0 <= numerator < denominator: re and im rounded once from a longer
/// format, so that no machine's library of double functions shows in the last digit.
struct Turn {
  double re = 1;
  double im = 0;
};
Turn turn_of(long long numerator, long long denominator);

}  // namespace libtexture
