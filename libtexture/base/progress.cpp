#include "libtexture/base/progress.hpp"

#include <cmath>

namespace libtexture {

Progress part_of(const Progress& whole, double from, double to) {
  if (!whole) return {};
  return [&whole, from, to](double done) { whole(std::lerp(from, to, done)); };  // exact at its ends
}

Progress nth_part(const Progress& whole, std::size_t index, std::size_t count) {
  const auto share = [&](std::size_t parts) {
    return static_cast<double>(parts) / static_cast<double>(count);
  };
  return part_of(whole, share(index), share(index + 1));
}

}  // namespace libtexture
