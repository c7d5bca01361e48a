#pragma once
// Spread: a figure that is not known for sure, by three of its quantiles.

#include <vector>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// 90 % of the possible cases lie between p05 and p95. In the unit of the field that it is.
struct Spread {
  double p05 = 0;  ///< 5 % of the cases lie below
  double p50 = 0;  ///< half of them do
  double p95 = 0;  ///< 95 % do

  bool operator==(const Spread&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("p05", &Spread::p05), optional("p50", &Spread::p50),
                      optional("p95", &Spread::p95)};
  }
};

/// Quantiles of equally likely draws, at least one: linear between the ordered ones, rank share x (n - 1).
Spread spread_of(std::vector<double> draws);

/// Mean of such draws; of draws that are 1 where something is so and 0 else, its probability.
double mean_of(const std::vector<double>& draws);

/// The quantile of a share 0 to 1 of such draws.
double quantile_of(std::vector<double> draws, double share);

}  // namespace libtexture
