#pragma once
// Compression: modulus and plateau of a foam from a curve of force and deflection.

#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/estimate.hpp"

namespace libtexture {

/// A sample pressed between flat plates, free to bulge.
struct CompressionCurve {
  double thickness_mm = unset;       ///< of the sample [mm], > 0
  double area_cm2 = unset;           ///< [cm2], > 0
  std::vector<double> force_n = {};  ///< [N], four or more
  std::vector<double> deflection_mm =
      {};  ///< as many [mm], 0 to .6 x thickness: densification is not modelled

  void validate() const;
  bool operator==(const CompressionCurve&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("thickness_mm", &CompressionCurve::thickness_mm),
                      required("area_cm2", &CompressionCurve::area_cm2),
                      required("force_n", &CompressionCurve::force_n),
                      required("deflection_mm", &CompressionCurve::deflection_mm)};
  }
};

/// What the curve says.
struct CompressionResult {
  Estimate modulus_mpa = {};  ///< Young's modulus at small strain
  Estimate plateau_kpa = {};  ///< unset where no plateau is seen
  bool is_plateau_seen =
      false;             ///< F test against a straight line: p < .05, and the plateau is fixed by the curve
  double plateau_p = 1;  ///< p value of that test
  double residual_sd_kpa = 0;  ///< spread about the curve [kPa]

  bool operator==(const CompressionResult&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("modulus_mpa", &CompressionResult::modulus_mpa),
                      optional("plateau_kpa", &CompressionResult::plateau_kpa),
                      optional("is_plateau_seen", &CompressionResult::is_plateau_seen),
                      optional("plateau_p", &CompressionResult::plateau_p),
                      optional("residual_sd_kpa", &CompressionResult::residual_sd_kpa)};
  }
};

/// Fits stress = plateau (1 - exp(-E strain/plateau)), as a Layer with a plateau behaves, or E strain.
CompressionResult judge_compression(const CompressionCurve& curve);

}  // namespace libtexture
