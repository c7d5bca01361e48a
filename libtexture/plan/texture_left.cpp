#include "libtexture/plan/texture_left.hpp"

#include <algorithm>
#include <cmath>

namespace libtexture {

namespace {

constexpr int most_points = 41;  // smooth to the eye

double rms_at_um(const TexturePath& path, double removed_um) {
  const std::vector<double>&x = path.removed_um, &y = path.rms_um;
  const auto above = static_cast<std::size_t>(std::upper_bound(x.begin(), x.end(), removed_um) - x.begin());
  if (above == 0) return y.front();
  if (above == x.size()) return y.back();
  const double share = (removed_um - x[above - 1]) / (x[above] - x[above - 1]);
  const double from = y[above - 1], to = y[above];
  return from > 0 && to > 0 ? from * std::pow(to / from, share) : std::lerp(from, to, share);
}

}  // namespace

std::vector<TextureLeft> texture_left(const std::vector<TexturePath>& paths) {
  std::vector<double> ends;
  for (const TexturePath& path : paths) ends.push_back(path.removed_um.back());
  const double most_um = quantile_of(ends, .95);
  const int points = most_um > 0 ? most_points : 1;
  std::vector<TextureLeft> left;
  for (int point = 0; point < points; ++point) {
    const double removed_um = point * most_um / (most_points - 1);
    std::vector<double> rms_um;
    for (const TexturePath& path : paths) rms_um.push_back(rms_at_um(path, removed_um));
    left.push_back({removed_um, spread_of(std::move(rms_um))});
  }
  return left;
}

}  // namespace libtexture
