#pragma once
// Ranks: where the truth falls under what is believed of it, which is even where the belief is right (Talts,
// Betancourt, Simpson, Vehtari and Gelman 2018): for tests of beliefs.

#include <array>

#include "libtexture/plan/belief.hpp"

namespace ranks {

/// How often the truth fell into each part of a belief: below its least, below its median, below its most,
/// above: 2.5, 47.5, 47.5 and 2.5 of 100.
class Parts {
 public:
  void add(const libtexture::Belief& belief, double truth) {
    ++counts_[static_cast<std::size_t>((truth > belief.least) + (truth > belief.median) +
                                       (truth > belief.most))];
  }

  /// Pearson's chi-square, of 3 degrees of freedom: exceeds 16.27 once in 1000 where the belief is right.
  double chi_square() const {
    constexpr std::array<double, 4> shares{.025, .475, .475, .025};
    double all = 0, sum = 0;
    for (const double count : counts_) all += count;
    for (std::size_t k = 0; k < shares.size(); ++k) {
      const double off = counts_[k] - shares[k] * all;
      sum += off * off / (shares[k] * all);
    }
    return sum;
  }

  const std::array<double, 4>& counts() const { return counts_; }

 private:
  std::array<double, 4> counts_{};
};

constexpr double once_in_1000 = 16.27;

}  // namespace ranks
