#pragma once
// Estimate: a fitted figure and how sure it is.

#include <cmath>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// A figure and the interval that holds the truth in 95 % of cases (Student's t).
struct Estimate {
  double value = unset;  ///< the figure
  double least = unset;  ///< 2.5 % lie below
  double most = unset;   ///< 2.5 % lie above

  bool operator==(const Estimate&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("value", &Estimate::value), optional("least", &Estimate::least),
                      optional("most", &Estimate::most)};
  }
};

/// The estimate of scale x exp(log_value), where log_value +- reach is its interval.
inline Estimate estimate_of_log(double log_value, double reach, double scale = 1) {
  return {scale * std::exp(log_value), scale * std::exp(log_value - reach),
          scale * std::exp(log_value + reach)};
}

}  // namespace libtexture
