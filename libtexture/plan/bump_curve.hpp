#pragma once
// BumpCurve: how a mark that a disc follows, above the paint or wide, goes with the clear about it.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/defect.hpp"
#include "libtexture/process/step.hpp"
#include "libtexture/tool/sheet.hpp"

namespace libtexture {

/// Width of a groove from which on a disc may dip into it [mm]: narrower ones it bridges (measured on the
/// tools of the catalogue, docs/physics.md, a defect).
inline constexpr double widest_bridged_mm = 0.5;

/// Whether a disc may follow a defect: what stands above the paint, and grooves wider than it bridges.
bool is_followed(const Defect& defect);

/// What a curve is solved for.
struct BumpPlan {
  Defect defect = {};               ///< that is followed
  Step step = {};                   ///< on its nominal force
  std::optional<Crown> crown = {};  ///< of the panel; none = flat
  std::vector<double> factors = {
      1};                  ///< on S/p_mean times the height over the best one, rising; at least one
  double most_um = unset;  ///< as far as it goes: clear about the mark [um], > 0
};

/// A bump or a dip of Gaussian form in flat paint, levelled by contact mechanics at a few nodes and read in
/// between. By (69) of docs/physics.md height and stiffness over pressure count together, as one factor. The
/// patch is so much larger than the bump that its own load does not tell (docs/physics.md, equation 78).
class BumpCurve {
 public:
  explicit BumpCurve(const BumpPlan& plan, const Progress& progress = {});

  /// Height or depth left [um] of a bump of a height [um], under a factor on S/p_mean, once so much clear is
  /// gone about it [um].
  double left_um(double height_um, double stiffness_factor, double removed_um) const;

  /// Clear about the best estimate [um] until no more than so much of it stands [um]; none where more stands
  /// at the curve's end.
  std::optional<double> removal_to_um(double left_um) const;

 private:
  double best_um_;               // height
  double grain_um_;              // height of the grains
  std::vector<double> factors_;  // of the nodes
  // By node, in heights of the bump: clear gone about it, rising from 0, and what is left of it, falling
  // from 1.
  std::vector<std::vector<double>> removed_, left_;
};

}  // namespace libtexture
