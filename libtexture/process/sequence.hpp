#pragma once
// Sequence: steps in order on one patch, with looks between passes; no uncertainty.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/process/history.hpp"
#include "libtexture/process/step.hpp"
#include "libtexture/surface/coating.hpp"
#include "libtexture/surface/viewer.hpp"
#include "libtexture/tool/sheet.hpp"

namespace libtexture {

/// What a simulation assumes besides the steps.
struct SimulateOptions {
  double area_m2 = 0.25;  ///< area worked in one go, which sets how discs load [m2], > 0; estimate
  std::optional<double> crown_radius_m = {};  ///< crown of the panel [m], > 0; none = flat
  Sheet sheet = {};                           ///< what the panel is made of
  /// edges of the reported wavelength bands [mm], rising
  std::vector<double> band_edges_mm = {0.5, 1, 2, 4, 8, 16};
  double amplitude_tolerance_um = 5e-3;  ///< accuracy of texture amplitudes between looks [um], > 0
  /// given: only the rms height is accurate, to this share of what a step starts from, in about a third of
  /// the time, and amplitude_tolerance_um is not used; plans take 0.01
  std::optional<double> rms_tolerance_share = {};
  double refractive_index = 1.5;      ///< of the clear, for gloss, > 1 to 4; as Paint has it
  ScratchLimits scratch_limits = {};  ///< what counts as a visible scratch
  Viewer viewer = {};                 ///< who reads the mirrored letters

  void validate() const;
  static constexpr auto fields() {
    return FieldTable{optional("area_m2", &SimulateOptions::area_m2),
                      optional("crown_radius_m", &SimulateOptions::crown_radius_m),
                      optional("sheet", &SimulateOptions::sheet),
                      optional("band_edges_mm", &SimulateOptions::band_edges_mm),
                      optional("amplitude_tolerance_um", &SimulateOptions::amplitude_tolerance_um),
                      optional("rms_tolerance_share", &SimulateOptions::rms_tolerance_share),
                      optional("refractive_index", &SimulateOptions::refractive_index),
                      optional("scratch_limits", &SimulateOptions::scratch_limits),
                      optional("viewer", &SimulateOptions::viewer)};
  }
};

/// Works a patch through the steps. A step takes the pressure that its motion gives on the crown, the foam's
/// tangent modulus at that pressure, and the disc's footprint where the patch is larger than the disc. It
/// stops at the first look that meets its stop rule, or after its passes. A struck-through clear is an
/// answer, with clear left below zero.
History simulate(const HeightField& surface, const Coating& coating, const std::vector<Step>& steps,
                 const SimulateOptions& options = {}, const Progress& progress = {});

}  // namespace libtexture
