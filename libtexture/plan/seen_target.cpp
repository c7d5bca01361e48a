#include "libtexture/plan/seen_target.hpp"

#include <algorithm>

#include "libtexture/plan/spread.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {

bool asks_sight(const Target& target) {
  return target.image_clarity_percent || target.letter_mm;
}

SeenTarget::SeenTarget(const Job& job, const Worlds& worlds, const StartSurfaces& ends, double clarity_light)
    : target_(job.target), rms_um_(ends.rms_um()) {
  if (target_.letter_mm)
    for (const HeightField& end : ends.surfaces())
      wander_arcmin_.push_back(
          std::max(image_wander_arcmin(end, Direction::rows), image_wander_arcmin(end, Direction::columns)));
  if (!target_.image_clarity_percent) return;
  for (const double share : {.05, .50, .95}) {
    scales_.push_back(quantile_of(worlds.texture_scale, share));
    std::vector<double> row;
    for (const HeightField& end : ends.surfaces())
      row.push_back(clarity_light *
                    image_clarity_percent(HeightField(end.height_um() * scales_.back(), end.pixel_mm())));
    clarity_percent_.push_back(std::move(row));
  }
}

bool SeenTarget::is_missed(double rms_um, double texture_scale) const {
  // Slopes, and with them the wander, go with the heights.
  if (target_.letter_mm && smallest_letter_mm(texture_scale * between(rms_um_, wander_arcmin_, rms_um),
                                              *target_.distance_m) > *target_.letter_mm)
    return true;
  if (!target_.image_clarity_percent) return false;
  std::vector<double> by_scale;
  for (const std::vector<double>& row : clarity_percent_) by_scale.push_back(between(rms_um_, row, rms_um));
  return between(scales_, by_scale, texture_scale) < *target_.image_clarity_percent;
}

}  // namespace libtexture
