#pragma once
// LevelCost: how much clear a backing needs to level a texture to its target, or which waves stop it.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/process/step.hpp"
#include "libtexture/tool/sheet.hpp"

namespace libtexture {

/// Waves that a backing leaves where others are gone.
struct Obstacle {
  double wavelength_mm = 0;        ///< their wavelength [mm]
  double rms_um = 0;               ///< what is left of them [um]
  double clear_per_e_fold_um = 0;  ///< clear that a fold of e costs in full contact, grains included [um]
  bool is_followed = false;        ///< longer than half a disc: it tilts along, whatever the backing
};

/// What levelling costs with one backing. It depends on the backing, its pressure and the crown, and a little
/// on the grain: by the give of its grains, and by the touched share, which counts from half a groove depth.
struct LevelCost {
  bool is_reached = false;   ///< before the clear was gone
  double defect_um = 0;      ///< clear that takes out the target's defect; 0 without one [um]
  double removal_um = 0;     ///< clear until the target is first met; else all that was there to go [um]
  double rms_um = 0;         ///< texture left at the reading after it, all waves [um]
  double touched_share = 0;  ///< there
  std::vector<Reached> target = {};  ///< there, scratches left out
  Obstacle obstacle = {};            ///< the waves with most of what is judged left
};

/// What is levelled.
struct LevelConditions {
  std::optional<Crown> crown = {};  ///< of the panel; none = flat
  double hardness_mpa = 200;        ///< of the clear [MPa], > 0
  double most_um = unset;           ///< clear that is there to go [um], > 0
};

/// Levels a surface with the step's backing, motion and abrasive until a target is met, or the clear is gone.
/// Read every twentieth of the valley depth, and where it is met by a straight line in between. InvalidInput
/// where a foam collapses under the pressure.
LevelCost level_cost(const HeightField& surface, const Target& target, const Step& step,
                     const LevelConditions& conditions, const Progress& progress = {});

/// The stop rule that ends levelling where a target is met: target_stop(), and where the target asks for
/// sight the rms height that is left where all parts were met, with the clear that takes out its defect.
Stop stop_at(const Target& target, const LevelCost& cost);

/// Pixels of the patch on which levelling is tried.
inline constexpr int curve_pixels = 65536;

}  // namespace libtexture
