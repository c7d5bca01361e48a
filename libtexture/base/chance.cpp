#include "libtexture/base/chance.hpp"

#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

// Small chances need a finer count.
double scale_of(double probability) {
  return std::round(1000 * probability) < 100 ? 1000 : 100;
}

}  // namespace

double as_counted(double probability) {
  require_within(probability, 0, 1, "Chance", "probability");
  const double scale = scale_of(probability);
  return std::round(scale * probability) / scale;
}

std::string chance_text(double probability, int samples) {
  const double counted = as_counted(probability);
  if (probability == 0) return "none of " + std::to_string(samples) + " cases";
  if (probability == 1) return "all cases";
  // What happens at times is not "none", and what fails at times is not "all".
  if (counted == 0) return "under 1 of 1000 cases";
  if (counted == 1) return "over 99 of 100 cases";
  const int scale = static_cast<int>(scale_of(probability));
  return std::to_string(std::lround(scale * probability)) + " of " + std::to_string(scale) + " cases";
}

}  // namespace libtexture
