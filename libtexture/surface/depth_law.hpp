#pragma once
// DepthLaw: what many overlapping random grooves make of the surface: how much of it lies deeper than z.
//
// Limits: grooves are triangles placed at random, with exponential depths and no cap (docs/physics.md,
// scratches); depths are measured from the local unmarked top, far below a pixel of the height field.

#include <vector>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// Grooves of one kind. At a point the deepest of them is less deep than z with probability exp(-coverage
/// exp(-z/depth)).
struct GroovePopulation {
  double depth_um = unset;  ///< mean depth of a groove [um], > 0
  double coverage = unset;  ///< mean number of grooves over a point, >= 0

  void validate() const;
  bool operator==(const GroovePopulation&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("depth_um", &GroovePopulation::depth_um),
                      required("coverage", &GroovePopulation::coverage)};
  }
};

/// The grooves of one part of an area. A list of them describes an area of unlike parts: they mix by area,
/// never by pooled roughness. One part of share 1 is a uniform surface.
struct DepthLaw {
  std::vector<GroovePopulation> grooves;  ///< populations that lie over each other; none = unmarked
  double area_share = 1;                  ///< share of the area, 0 to 1
};

/// InvalidInput unless all figures are in range and the shares sum to 1 within 1e-9.
void validate(const std::vector<DepthLaw>& parts);

/// Share of the area deeper than depth_um [um], >= 0: 1 - exp(-sum K exp(-z/delta)), docs/physics.md (33).
double deeper_share(const std::vector<DepthLaw>& parts, double depth_um);

/// Share of the area without a groove: exp(-sum K), docs/physics.md (34).
double unmarked_share(const std::vector<DepthLaw>& parts);

/// Mean depth of the surface below the unmarked top [um], docs/physics.md (35); quadrature, 1e-9 relative.
double mean_depth_um(const std::vector<DepthLaw>& parts);

/// Root mean square roughness of the grooves about their mean [nm], docs/physics.md (35); unlike parts
/// included.
double depth_rms_nm(const std::vector<DepthLaw>& parts);

}  // namespace libtexture
