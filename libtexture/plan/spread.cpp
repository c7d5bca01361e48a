#include "libtexture/plan/spread.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

double at_rank(const std::vector<double>& sorted, double share) {
  const double rank = share * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(rank);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  const double part = rank - static_cast<double>(below);
  return part > 0 ? sorted[below] + part * (sorted[above] - sorted[below]) : sorted[below];
}

}  // namespace

Spread spread_of(std::vector<double> draws) {
  require(!draws.empty(), "Spread", "draws", "must hold at least one", "none");
  std::sort(draws.begin(), draws.end());
  return {at_rank(draws, .05), at_rank(draws, .50), at_rank(draws, .95)};
}

double mean_of(const std::vector<double>& draws) {
  require(!draws.empty(), "Spread", "draws", "must hold at least one", "none");
  return std::accumulate(draws.begin(), draws.end(), 0.0) / static_cast<double>(draws.size());
}

double quantile_of(std::vector<double> draws, double share) {
  require(!draws.empty(), "Spread", "draws", "must hold at least one", "none");
  require_within(share, 0, 1, "Spread", "share");
  std::sort(draws.begin(), draws.end());
  return at_rank(draws, share);
}

}  // namespace libtexture
