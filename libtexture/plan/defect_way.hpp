#pragma once
// DefectWay: ways to deal with a defect, side by side: all over, on a patch, rounded, left.

#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/defect.hpp"
#include "libtexture/plan/spread.hpp"
#include "libtexture/surface/viewer.hpp"

namespace libtexture {

/// all over: the whole panel is worked until the defect is gone; patch: only a patch, feathered into the
/// panel; round: worked like the job, until what is left of a groove is too shallow to be seen; leave:
/// nothing is done.
enum class DefectWayKind { all_over, patch, round, leave };
constexpr std::array<std::pair<DefectWayKind, const char*>, 4> names_of(DefectWayKind) {
  return {{{DefectWayKind::all_over, "all over"},
           {DefectWayKind::patch, "patch"},
           {DefectWayKind::round, "round"},
           {DefectWayKind::leave, "leave"}}};
}

/// What a way costs and gives, on one panel.
struct DefectWay {
  DefectWayKind way = DefectWayKind::leave;  ///< which one
  Spread clear_um = {};                      ///< clear spent beside the defect, all steps [um]
  Spread left_um = {};                       ///< what is left of the defect [um]
  Spread minutes = {};                       ///< machine time [min]
  Spread discs = {};                         ///< discs used
  double gone_probability = 0;               ///< no more of it stays than may, 0 to 1
  /// What stays is too shallow to be seen by its slope, 0 to 1; none where hidden_depth_um() has no answer.
  std::optional<double> hidden_probability = {};
  /// Less clear stays than must, at the defect on a patch, anywhere on the panel all over, 0 to 1.
  double short_probability = 0;

  bool operator==(const DefectWay&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("way", &DefectWay::way),
                      optional("clear_um", &DefectWay::clear_um),
                      optional("left_um", &DefectWay::left_um),
                      optional("minutes", &DefectWay::minutes),
                      optional("discs", &DefectWay::discs),
                      optional("gone_probability", &DefectWay::gone_probability),
                      optional("hidden_probability", &DefectWay::hidden_probability),
                      optional("short_probability", &DefectWay::short_probability)};
  }
};

/// Depth [um] below which a groove's flanks shift what is mirrored in them by less than this viewer resolves:
/// hidden_slope() times half the width (docs/physics.md, equation 81). None for what stands above the paint,
/// for a groove without a stated width, and for one so narrow that the eye sees a line and not its flanks.
std::optional<double> hidden_depth_um(const Defect& defect, const Viewer& viewer);

/// The ways that are sampled for a defect, the job's own first: patch where it states one, else all over.
std::vector<DefectWayKind> sampled_ways(const Defect& defect, const Viewer& viewer);

/// What may be left of the defect [um] where the way is done; 0 or more.
double done_at_um(DefectWayKind way, const Defect& defect, const Viewer& viewer);

/// The defect as a way works it: without its patch where it is all over.
Defect worked_as(DefectWayKind way, const Defect& defect);

}  // namespace libtexture
