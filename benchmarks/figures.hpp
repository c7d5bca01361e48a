#pragma once
// What a run of the benchmarks measured: printed as it comes, and written as JSON.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace benchmark {

struct Figure {
  std::string name;  ///< "increment.median_pairs": what was measured, and which figure of it
  double value = 0;
  std::optional<double> most;  ///< its gate: the value may not be greater
};

class Figures {
 public:
  /// A figure without a gate. Printing it is the caller's, who knows what stands beside it.
  void add(std::string name, double value);
  /// A figure with a gate, and the line that says whether it is met.
  void gate(std::string name, double value, double most);
  int missed_gates() const;
  /// {"figures": [{"name": ..., "value": ..., "most": ...}, ...], "missed_gates": 0}
  void write(const std::filesystem::path& path) const;

 private:
  std::vector<Figure> figures_;
};

}  // namespace benchmark
