#pragma once
// LineTransform: the complex Fourier transform of several lines of one length at a time.

#include <cstddef>
#include <memory>
#include <vector>

#include "libtexture/numerics/array.hpp"

namespace libtexture {

/// exp(-2 pi i numerator / denominator), 0 <= numerator < denominator.
struct Turn {
  double re = 1;
  double im = 0;
};
Turn turn_of(long long numerator, long long denominator);

/// Where the complex numbers of a block of lines lie: re and im side by side, on boundaries of 16 bytes.
/// Distances are counted in complex numbers.
struct Lines {
  double* first = nullptr;
  std::ptrdiff_t step = 1;   ///< from a place of a line to the next
  std::ptrdiff_t apart = 1;  ///< from a line to the next
};

/// The transform of one length: fast where that is a product of 2, 3 and 5, while the time of any other prime
/// factor grows with its square. It holds tables only, so that threads may share it.
class LineTransform {
 public:
  enum class Direction { forward, inverse };

  explicit LineTransform(int length);

  /// The transform of `length`, from among those made lately.
  static std::shared_ptr<const LineTransform> of(int length);

  int length() const { return length_; }

  /// Numbers that a call needs to work in.
  std::size_t work_size(int lines) const { return 4 * static_cast<std::size_t>(length_) * lines; }

  /// Z_k = sum z_j exp(-+ 2 pi i j k / length), not scaled, for `lines` lines; `from` and `to` may be the
  /// same.
  void transform(const Lines& from, const Lines& to, int lines, Direction direction,
                 AlignedVector<double>& work) const;

  /// A pass takes the transforms of `radix` shorter lines together: Stockham's ordering.
  struct Pass {
    int radix = 1;
    int groups = 1;           ///< groups of `radix` numbers, each with turns of its own
    std::vector<Turn> turns;  ///< exp(-2 pi i p j / (radix groups)), j = 1..radix-1 for each p = 1..groups-1
    std::vector<Turn> roots;  ///< exp(-2 pi i j / radix), where the radix has no sums of its own
  };

 private:
  int length_;
  std::vector<Pass> passes_;
};

}  // namespace libtexture
