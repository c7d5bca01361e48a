#pragma once
// Pareto front: the alternatives that no other beats in everything that counts.

#include <vector>

namespace libtexture {

/// Whether each alternative is on the front: no other is at least as good in every cost and better in one.
/// costs[i] holds the costs of alternative i, less being better; all equally many. Equals stay together.
std::vector<bool> pareto_front(const std::vector<std::vector<double>>& costs);

}  // namespace libtexture
