#include "libtexture/plan/seen_target.hpp"

#include "libtexture/plan/spread.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

bool asks_sight(const Target& target) {
  return target.image_clarity_percent || target.letter_mm;
}

SeenTarget::SeenTarget(const Job& job, const Worlds& worlds, const StartSurfaces& ends,
                       const MirroredLight& light)
    : target_(job.target), contrast_(light.contrast()), rms_um_(ends.rms_um()) {
  for (const double share : {.05, .50, .95}) scales_.push_back(quantile_of(worlds.texture_scale, share));
  clarity_percent_.resize(scales_.size());
  for (const HeightField& end : ends.surfaces()) {
    const Waves waves(end);
    if (target_.letter_mm) smear_arcmin_.push_back(seen_smear_arcmin(waves, eye_of(target_)));
    if (!target_.image_clarity_percent) continue;
    // Heights times a scale shift the image as a lens so much further away does, docs/physics.md (51).
    for (std::size_t i = 0; i < scales_.size(); ++i)
      clarity_percent_[i].push_back(
          light.clarity_share() *
          image_clarity_percent(waves, {.distance_mm = scales_[i] * ClarityOptions{}.distance_mm}));
  }
}

bool SeenTarget::is_missed(double rms_um, double texture_scale) const {
  if (target_.letter_mm) {
    // Slopes, and with them the smear, go with the heights.
    const std::optional<double> letter_mm =
        seen_letter_mm(texture_scale * between(rms_um_, smear_arcmin_, rms_um), eye_of(target_), contrast_);
    if (!letter_mm || *letter_mm > *target_.letter_mm) return true;
  }
  if (!target_.image_clarity_percent) return false;
  std::vector<double> by_scale;
  for (const std::vector<double>& row : clarity_percent_) by_scale.push_back(between(rms_um_, row, rms_um));
  return between(scales_, by_scale, texture_scale) < *target_.image_clarity_percent;
}

}  // namespace libtexture
