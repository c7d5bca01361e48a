#pragma once
// Reached: what a worn surface makes of a target, part by part.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/process/history.hpp"

namespace libtexture {

/// TargetPreset::full: this share touched; the rest are valleys that nobody finds.
inline constexpr double full_touched_share = 0.995;
/// TargetPreset::full asks for texture as well, which a disc that follows the waves leaves: at most this
/// share of the starting rms height stays. Estimate: a film disc that has touched all leaves 0.3.
inline constexpr double full_rms_share = 0.35;
/// TargetPreset::partial: this share of the starting rms height is left.
inline constexpr double partial_rms_share = 0.5;

/// One thing that a target asks for, on one surface. In the unit that the name of its field ends in.
struct Reached {
  /// field of Target: rms_um, preset, image_clarity_percent, letter_mm or defect; preset_rms for the texture
  /// of full
  std::string asks = {};
  /// what is asked; preset full: touched share; partial, preset_rms: rms height [um]; defect: what of it may
  /// stay [um]
  double wanted = 0;
  /// what the surface has; none = no letter can be read; defect: what is left of it [um], below 0 where the
  /// paint beside it lies deeper than its bottom
  std::optional<double> found = {};
  bool is_met = false;  ///< whether that will do

  bool operator==(const Reached&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("asks", &Reached::asks), optional("wanted", &Reached::wanted),
                      optional("found", &Reached::found), optional("is_met", &Reached::is_met)};
  }
};

/// Judges a target on a surface that was worn from `before`; a defect by how far the mean height has fallen.
/// InvalidInput for a defect that a disc follows, which is not on the surfaces. touched_share: what the
/// levelling step has touched; of what the scratches leave, clarity_light: share of the texture's image
/// clarity, contrast: that of letters. Letters are read in the worse of the two directions.
std::vector<Reached> judge_target(const Target& target, const HeightField& before, const HeightField& now,
                                  double touched_share, double clarity_light = 1, double contrast = 1);

/// A defect of which so much is left [um]; of a Target that asks for one.
Reached judge_defect(const Target& target, double left_um);

/// What a target asks for besides a defect; none where it asks for nothing else.
std::optional<Target> without_defect(Target target);

/// Whether a target asks for an rms height or a touch.
bool asks_height(const Target& target);

/// The figures that targets of height and touch are judged by.
struct HeightFigures {
  double start_rms_um = 0;   ///< of all waves, before [um]
  double rms_um = 0;         ///< of all waves [um]
  double band_rms_um = 0;    ///< of the target's band, all waves where it has none [um]
  double touched_share = 0;  ///< of the levelling step
};

/// The parts of a target that ask for height or touch: rms_um and preset.
std::vector<Reached> judge_heights(const Target& target, const HeightFigures& figures);

/// The least margin by which those parts are met, in the unit of the part; >= 0 = met. No such part: never.
double height_margin(const Target& target, const HeightFigures& figures);

/// The same at the end of a sequence, scratches included.
std::vector<Reached> judge_target(const Target& target, const History& history);

/// Whether everything is met.
bool is_reached(const std::vector<Reached>& parts);

}  // namespace libtexture
