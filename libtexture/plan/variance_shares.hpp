#pragma once
// VarianceShares: what makes the clear that stays uncertain, part by part.

#include <cstdint>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/paint.hpp"
#include "libtexture/plan/panel.hpp"

namespace libtexture {

/// Shares of the variance of the clear left at the thinnest place; they sum to 1.
struct VarianceShares {
  double clear_share = 0;  ///< how much of the film is clear, 0 to 1
  double map = 0;          ///< the film between the readings, 0 to 1
  double gauge = 0;        ///< what the gauge reads: its scatter and its scale, 0 to 1
  double removal = 0;      ///< what the work takes there, 0 to 1

  bool operator==(const VarianceShares&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("clear_share", &VarianceShares::clear_share),
                      optional("map", &VarianceShares::map), optional("gauge", &VarianceShares::gauge),
                      optional("removal", &VarianceShares::removal)};
  }
};

/// Variance of the clear at a panel's thinnest place before any work [um2], part by part.
struct FilmVariance {
  double clear_share_um2 = 0;  ///< how much of the film is clear
  double map_um2 = 0;          ///< the film between the readings
  double gauge_um2 = 0;        ///< what the gauge reads
};

/// From draws of the film map (60) to (63): what is left of the variance once the share is known is that of
/// map and gauge, what is left with a gauge that is exact as well that of the map.
FilmVariance film_variance(const Panel& panel, const Paint& paint, std::uint64_t seed);

/// With what the work takes at the thinnest place, one value per world [um].
VarianceShares variance_shares(const FilmVariance& film, const std::vector<double>& taken_um);

}  // namespace libtexture
