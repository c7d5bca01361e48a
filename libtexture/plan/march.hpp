#pragma once
// March: a possible world goes through a step, look by look, along curves that are solved.

#include <array>
#include <vector>

#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/start_surfaces.hpp"
#include "libtexture/plan/step_curves.hpp"
#include "libtexture/plan/texture_left.hpp"
#include "libtexture/plan/world_steps.hpp"
#include "libtexture/process/scratches.hpp"

namespace libtexture {

/// How a world stands on a panel. Texture in units of the patch as it is given: the world's over its texture
/// scale.
struct WorldState {
  Eigen::ArrayXd band_um = {};  ///< rms heights of the bands, the first of all waves [um]
  double valley_um = 0;         ///< depth of the deepest valley [um]
  double touched_share = 0;     ///< by the first step
  Scratches scratches = {};     ///< maps of removal_levels pixels that stand for the patch's
  double removed_um = 0, levelling_um = 0, overshoot_um = 0, debt_um = 0;  ///< mean clear [um]
  double removed_sd_um = 0;  ///< from place to place: uneven dwell, lanes, lean [um]
  double minutes = 0, discs = 0;
  double defect_left_um = 0;  ///< of the target's defect; < 0 = the paint beside it lies that much below it
  double defect_removed_um = 0;         ///< clear removed beside the defect [um]
  TexturePath path = {};                ///< from the start on
  std::vector<double> efficiency = {};  ///< of each step
};

/// What every world is marched by. All that is referred to must outlive it.
struct March {
  const Job& job;
  const Worlds& worlds;
  const std::vector<std::array<double, 2>>& bands_mm;  ///< as the states' bands
  double start_rms_um;                                 ///< of the patch [um]
  double defect_waves = 1;          ///< waves of the texture that the target's defect lies across, >= 1
  double may_stay_um = 0;           ///< what of it may stay [um]
  const BumpCurve* bump = nullptr;  ///< how the first step takes out a defect that it follows

  double hardness_mpa(std::size_t world) const;
  /// The band's place among bands_mm; 0, all waves, where there is none.
  Eigen::Index band_of(const std::optional<std::array<double, 2>>& band_mm) const;
  /// Where on the texture the part of the defect lies that is gone last, as Worlds::defect_rank: the lowest
  /// of so many independent places (docs/physics.md, equation 77).
  double defect_rank(std::size_t world) const;
  /// By how much the state keeps the target's rms height and touch, and its defect is gone; >= 0 = met.
  double target_margin(const WorldState& state, std::size_t world) const;

  /// The step at a place of the sequence, from 0, on a panel: removal of every pass by the closed law of
  /// loading discs, texture from the curves, clear owed by the scratch laws; until a look meets the step's
  /// rule, or its passes are made. Then the parts: levelling until the rule (or the target, where there is
  /// none) was met, overshoot from that moment to the look; all that a step cuts which is not the first and
  /// has no rule of texture is scratch debt. A defect that is bridged loses its depth with the clear beside
  /// it; one that is followed goes with the first step, and later ones leave what stays.
  void step(std::size_t world, const Panel& panel, const WorldStep& step, const StepCurves& curves,
            const StartSurfaces& starts, int place, WorldState& state) const;
};

}  // namespace libtexture
