#include "libtexture/plan/belief.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/interpolators/cardinal_cubic_b_spline.hpp>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {

Belief lognormal_belief(double median, double log_sd) {
  require_positive(median, "Belief", "median");
  require_not_negative(log_sd, "Belief", "log_sd");
  const double reach = boost::math::quantile(boost::math::normal(), .975) * log_sd;
  return {median, median * std::exp(-reach), median * std::exp(reach), log_sd};
}

Density tabulate(const std::function<double(double)>& log_density, double least, double most, int points) {
  Density table{least, (most - least) / (points - 1), {}};
  for (int i = 0; i < points; ++i) table.log_density.push_back(log_density(least + table.spacing * i));
  const double peak = *std::max_element(table.log_density.begin(), table.log_density.end());
  for (double& value : table.log_density) value -= peak;
  return table;
}

Density refined(const Density& table, int times) {
  const boost::math::interpolators::cardinal_cubic_b_spline<double> spline(
      table.log_density.begin(), table.log_density.end(), table.least, table.spacing);
  const int points = static_cast<int>(table.log_density.size() - 1) * times + 1;
  const double most = table.at(table.log_density.size() - 1);
  return tabulate([&](double shift) { return spline(std::min(shift, most)); }, table.least, most, points);
}

std::array<double, 2> support_of(const Density& table) {
  const auto is_dense = [](double log_density) { return log_density > -32; };
  const auto& values = table.log_density;
  const auto first = std::find_if(values.begin(), values.end(), is_dense) - values.begin();
  const auto last = values.rend() - std::find_if(values.rbegin(), values.rend(), is_dense) - 1;
  return {table.least + table.spacing * static_cast<double>(first - 1),
          table.least + table.spacing * static_cast<double>(last + 1)};
}

Belief belief_of(const Density& table, double centre) {
  double weight = 0, mean = 0, square = 0;
  std::vector<double> cumulative{0};
  for (std::size_t i = 0; i < table.log_density.size(); ++i) {
    const double p = std::exp(table.log_density[i]);
    const double before = i == 0 ? 0 : std::exp(table.log_density[i - 1]);
    if (i > 0) cumulative.push_back(cumulative.back() + (p + before) / 2);
    weight += p;
    mean += p * table.at(i);
    square += p * table.at(i) * table.at(i);
  }
  mean /= weight;
  const auto quantile = [&](double share) {
    const double target = share * cumulative.back();
    const auto above = std::lower_bound(cumulative.begin() + 1, cumulative.end(), target);
    const auto i = static_cast<std::size_t>(above - cumulative.begin());
    const double part = (target - cumulative[i - 1]) / (cumulative[i] - cumulative[i - 1]);
    return centre * std::exp(table.at(i - 1) + part * table.spacing);
  };
  return {quantile(.5), quantile(.025), quantile(.975), std::sqrt(square / weight - mean * mean)};
}

}  // namespace libtexture
