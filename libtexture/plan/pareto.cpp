#include "libtexture/plan/pareto.hpp"

#include <algorithm>
#include <numeric>

#include "libtexture/base/error.hpp"

namespace libtexture {

std::vector<bool> pareto_front(const std::vector<std::vector<double>>& costs) {
  for (const std::vector<double>& one : costs)
    require(one.size() == costs.front().size(), "pareto_front", "costs", "must be equally many",
            static_cast<double>(one.size()));
  std::vector<std::size_t> order(costs.size());
  std::iota(order.begin(), order.end(), 0);
  // What beats another comes before it in dictionary order, and so does one on the front that beats it too.
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return costs[a] < costs[b]; });
  std::vector<std::size_t> front;
  for (const std::size_t candidate : order) {
    const auto beats = [&](std::size_t other) {
      return costs[other] != costs[candidate] && std::equal(costs[other].begin(), costs[other].end(),
                                                            costs[candidate].begin(), std::less_equal<>());
    };
    if (std::none_of(front.begin(), front.end(), beats)) front.push_back(candidate);
  }
  std::vector<bool> is_on_front(costs.size());
  for (const std::size_t one : front) is_on_front[one] = true;
  return is_on_front;
}

}  // namespace libtexture
