#include "libtexture/plan/reached.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

namespace {

Reached at_most(const char* asks, double wanted, std::optional<double> found) {
  return {asks, wanted, found, found && *found <= wanted};
}

Reached at_least(const char* asks, double wanted, double found) {
  return {asks, wanted, found, found >= wanted};
}

}  // namespace

std::vector<Reached> judge_heights(const Target& target, const HeightFigures& figures) {
  std::vector<Reached> parts;
  if (target.rms_um) parts.push_back(at_most("rms_um", *target.rms_um, figures.band_rms_um));
  if (target.preset == TargetPreset::full) {
    parts.push_back(at_least("preset", full_touched_share, figures.touched_share));
    parts.push_back(at_most("preset_rms", full_rms_share * figures.start_rms_um, figures.rms_um));
  }
  if (target.preset == TargetPreset::partial)
    parts.push_back(at_most("preset", partial_rms_share * figures.start_rms_um, figures.rms_um));
  return parts;
}

double height_margin(const Target& target, const HeightFigures& figures) {
  const bool is_full = target.preset == TargetPreset::full;
  double least = HUGE_VAL;
  for (const Reached& part : judge_heights(target, figures)) {
    const bool is_at_least = is_full && part.asks == "preset";
    least = std::min(least, is_at_least ? *part.found - part.wanted : part.wanted - *part.found);
  }
  return std::isinf(least) ? -HUGE_VAL : least;
}

bool asks_height(const Target& target) {
  return target.rms_um || target.preset;
}

Reached judge_defect(const Target& target, double left_um) {
  return at_most("defect", may_stay_um(target.defect.value()), left_um);
}

std::optional<Target> without_defect(Target target) {
  target.defect.reset();
  const bool asks_more = asks_height(target) || target.image_clarity_percent || target.letter_mm;
  return asks_more ? std::optional(target) : std::nullopt;
}

std::vector<Reached> judge_target(const Target& target, const HeightField& before, const HeightField& now,
                                  double touched_share, double clarity_light, double contrast) {
  target.validate();
  require_within(touched_share, 0, 1, "judge_target", "touched_share");
  const auto& band = target.band_mm;
  const bool is_seen = target.image_clarity_percent || target.letter_mm;
  std::optional<Waves> waves;
  if (band || is_seen) waves.emplace(now);
  std::vector<Reached> parts = judge_heights(
      target, {.start_rms_um = before.rms_um(),
               .rms_um = now.rms_um(),
               .band_rms_um = band ? waves->band_rms_um({band->begin(), band->end()}).front() : now.rms_um(),
               .touched_share = touched_share});
  if (target.image_clarity_percent)
    parts.push_back(at_least("image_clarity_percent", *target.image_clarity_percent,
                             clarity_light * image_clarity_percent(*waves)));
  if (target.letter_mm) {
    const Viewer viewer = eye_of(target);
    parts.push_back(at_most("letter_mm", *target.letter_mm,
                            seen_letter_mm(seen_smear_arcmin(*waves, viewer), viewer, contrast)));
  }
  if (target.defect) {
    require(!is_followed(*target.defect), "judge_target", "target.defect",
            "must be a groove that the disc bridges: others are not on the surfaces",
            "a nib, a run, a wide mark");
    parts.push_back(judge_defect(target, size_um(*target.defect) - (before.mean_um() - now.mean_um())));
  }
  return parts;
}

std::vector<Reached> judge_target(const Target& target, const History& history) {
  require(!history.steps.empty(), "judge_target", "history", "must hold at least one step", "none");
  const bool is_seen = target.image_clarity_percent || target.letter_mm;
  const MirroredLight light =
      is_seen ? mirrored_light(depth_laws(history.scratches.back())) : MirroredLight{};
  return judge_target(target, history.before, history.surfaces.back(), history.steps.front().touched_share,
                      light.clarity_share(), light.contrast());
}

bool is_reached(const std::vector<Reached>& parts) {
  return std::all_of(parts.begin(), parts.end(), [](const Reached& part) { return part.is_met; });
}

}  // namespace libtexture
