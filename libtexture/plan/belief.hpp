#pragma once
// Belief: what a positive figure is believed to be, and how a tabulated density becomes one.

#include <array>
#include <functional>
#include <vector>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// A figure in the unit of the field that it is: half as likely above its median as below.
struct Belief {
  double median = 0;  ///< half as likely above as below
  double least = 0;   ///< 2.5 % lie below
  double most = 0;    ///< 2.5 % lie above
  double log_sd = 0;  ///< standard deviation of the figure's logarithm

  bool operator==(const Belief&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("median", &Belief::median), optional("least", &Belief::least),
                      optional("most", &Belief::most), optional("log_sd", &Belief::log_sd)};
  }
};

/// A log-normal belief.
Belief lognormal_belief(double median, double log_sd);

/// Logarithm of a density of ln(figure/centre), peak 0, on a uniform grid.
struct Density {
  double least;
  double spacing;
  std::vector<double> log_density;

  double at(std::size_t i) const { return least + spacing * static_cast<double>(i); }
};

/// Tabulates the logarithm of a density, known up to a constant, at so many points.
Density tabulate(const std::function<double(double)>& log_density, double least, double most, int points);

/// The same density on a grid so many times finer, its logarithm by a cubic spline.
Density refined(const Density& table, int times);

/// Where the density is more than exp(-32), 8 standard deviations of a normal one, of its peak; a point more
/// each side.
std::array<double, 2> support_of(const Density& table);

/// The belief of a tabulated density, which vanishes at both ends: there the trapezoid rule is exact but for
/// terms that fall exponentially with the spacing. centre: the figure at 0.
Belief belief_of(const Density& table, double centre);

}  // namespace libtexture
