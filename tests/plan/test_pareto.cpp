#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/plan/pareto.hpp"

using namespace libtexture;

namespace {

// The definition, pair by pair (Pareto dominance, as in any text on multi-objective optimisation).
bool dominates(const std::vector<double>& a, const std::vector<double>& b) {
  bool is_better_once = false;
  for (std::size_t k = 0; k < a.size(); ++k) {
    if (a[k] > b[k]) return false;
    if (a[k] < b[k]) is_better_once = true;
  }
  return is_better_once;
}

}  // namespace

TEST_CASE("the front is what no other alternative dominates, on random tables with ties") {
  for (std::uint64_t table = 0; table < 200; ++table) {
    const std::size_t alternatives = 1 + table % 17, costs = 1 + table % 5;
    std::vector<std::vector<double>> values(alternatives);
    for (std::size_t i = 0; i < alternatives; ++i)
      for (std::size_t k = 0; k < costs; ++k) values[i].push_back(std::floor(6 * uniform_at({table, i, k})));
    const std::vector<bool> front = pareto_front(values);
    for (std::size_t i = 0; i < alternatives; ++i) {
      bool is_dominated = false;
      for (const std::vector<double>& other : values) is_dominated |= dominates(other, values[i]);
      CHECK(front[i] == !is_dominated);
    }
  }
}

TEST_CASE("equal alternatives stay on the front together, and rows of unlike length are refused") {
  CHECK(pareto_front({{1, 2}, {1, 2}}) == std::vector<bool>{true, true});
  CHECK(pareto_front({}).empty());
  CHECK_THROWS_AS(pareto_front({{1, 2}, {1}}), InvalidInput);
}
