#pragma once
// Defect: a mark in the paint that a job is to be rid of: how deep or how high, how wide, and how it is
// worked.

#include <optional>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// Standard uncertainty of a defect's depth or height where none is stated, as a share of it (estimate: a
/// mark is judged by a fingernail or a lens, not measured).
inline constexpr double defect_sd_share = 0.25;

/// A scratch or an etch mark (depth_um), or a nib or a run (height_um); each panel of the job has one such.
struct Defect {
  /// how deep its bottom lies below the paint beside it [um], > 0; this or height_um
  std::optional<double> depth_um = {};
  /// how high it stands above the paint about it [um], > 0; this or depth_um
  std::optional<double> height_um = {};
  /// standard uncertainty of that figure [um], >= 0; none = 25 % of it, an estimate. What is drawn is > 0.
  std::optional<double> sd_um = {};
  /// across it [mm], > 0: a groove from rim to rim, what stands above at half its height, which needs it
  std::optional<double> width_mm = {};
  /// along it [mm], >= width_mm; none = as long as wide, and short against the waves of the texture
  std::optional<double> length_mm = {};
  /// diameter of the patch that is worked [mm], > 0; none = the whole panel is
  std::optional<double> patch_mm = {};
  /// width of the ring about the patch over which the work fades to nothing [mm], > 0; none = the radius of
  /// the first step's disc
  std::optional<double> feather_mm = {};
  std::optional<double> x_mm = {};  ///< place on the panel, as of its readings [mm]; both or neither
  std::optional<double> y_mm = {};  ///< [mm]
  /// what may still stand above the paint where it counts as level [um], > 0; estimate
  double level_within_um = 0.5;

  void validate() const;
  bool operator==(const Defect&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("depth_um", &Defect::depth_um),
                      optional("height_um", &Defect::height_um),
                      optional("sd_um", &Defect::sd_um),
                      optional("width_mm", &Defect::width_mm),
                      optional("length_mm", &Defect::length_mm),
                      optional("patch_mm", &Defect::patch_mm),
                      optional("feather_mm", &Defect::feather_mm),
                      optional("x_mm", &Defect::x_mm),
                      optional("y_mm", &Defect::y_mm),
                      optional("level_within_um", &Defect::level_within_um)};
  }
};

/// Whether it stands above the paint.
bool is_above(const Defect& defect);

/// Its depth or height, best estimate [um].
double size_um(const Defect& defect);

/// Its standard uncertainty [um]: the stated one, or defect_sd_share of the size.
double size_sd_um(const Defect& defect);

/// What may be left where it counts as gone [um]: level_within_um of a height, 0.1 of a wide groove, else 0.
double may_stay_um(const Defect& defect);

/// The size [um] that a share 0 to 1 of the possible ones stay below: a normal distribution of size_um() and
/// size_sd_um(), cut off at 0 (docs/physics.md, equation 76).
double size_at(const Defect& defect, double share);

}  // namespace libtexture
