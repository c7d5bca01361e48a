#pragma once
// Edge: what a disc takes off near the edge of a panel, and over a body line.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// Where the flat panel ends: in a rounded edge with nothing beyond, or in a rounded line where it turns
/// down.
enum class EdgeShape { edge, body_line };
constexpr std::array<std::pair<EdgeShape, const char*>, 2> names_of(EdgeShape) {
  return {{{EdgeShape::edge, "edge"}, {EdgeShape::body_line, "body_line"}}};
}

/// The user's habit at an edge: how near to it the centre of the innermost lane comes.
enum class Overhang {
  none,      ///< one disc radius: the disc stays on the flat
  straddle,  ///< half a disc radius
};
constexpr std::array<std::pair<Overhang, const char*>, 2> names_of(Overhang) {
  return {{{Overhang::none, "none"}, {Overhang::straddle, "straddle"}}};
}

/// The clear near an edge, which is thinner there, and what must be left of it.
struct EdgeClear {
  double clear_um = unset;            ///< clear before work, away from the edge [um], > 0
  double share_at_edge = 0.8;         ///< of that at the edge itself, > 0 to 1; estimate
  double taper_mm = 25;               ///< distance over which it rises evenly to clear_um [mm], > 0; estimate
  double clear_left_least_um = 35.6;  ///< [um], >= 0; published rule: 1.4 mil
  double removal_factor = 1;          ///< factor on the removal, > 0: a quantile for a chosen confidence

  void validate() const;
  bool operator==(const EdgeClear&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("clear_um", &EdgeClear::clear_um),
                      optional("share_at_edge", &EdgeClear::share_at_edge),
                      optional("taper_mm", &EdgeClear::taper_mm),
                      optional("clear_left_least_um", &EdgeClear::clear_left_least_um),
                      optional("removal_factor", &EdgeClear::removal_factor)};
  }
};

/// More clear than that is on no car [um]: an edge is not followed through it; estimate.
inline constexpr double most_edge_removal_um = 1000;

/// The section, the habit, and how much is taken off the flat.
struct EdgeOptions {
  double removal_um = unset;  ///< mean clear removed far from the edge [um], > 0 to 1000
  int passes = 8;             ///< equal passes that it takes, 1 to 1000; wear is followed pass by pass
  EdgeShape shape = EdgeShape::edge;  ///< what is at distance 0
  double radius_mm = 3;               ///< of the rounded edge or of the body line [mm], > 0; estimate
  double turn_deg = 15;  ///< body line: angle by which the panel turns [degrees], > 0 to 60; estimate
  Overhang overhang = Overhang::none;   ///< edge: the innermost lane; lanes cross a body line anywhere
  bool is_tilting = false;              ///< edge: the disc tilts freely; over a body line it always does
  std::optional<EdgeClear> clear = {};  ///< given: find the margin that keeps it
  std::optional<double> pixel_mm =
      {};                    ///< none = the largest that resolves the edge [mm]; a larger one is refused
  double padding_radii = 2;  ///< half-length of the row that is solved, in disc radii, 2 to 4

  void validate() const;
  bool operator==(const EdgeOptions&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("removal_um", &EdgeOptions::removal_um),
                      optional("passes", &EdgeOptions::passes),
                      optional("shape", &EdgeOptions::shape),
                      optional("radius_mm", &EdgeOptions::radius_mm),
                      optional("turn_deg", &EdgeOptions::turn_deg),
                      optional("overhang", &EdgeOptions::overhang),
                      optional("is_tilting", &EdgeOptions::is_tilting),
                      optional("clear", &EdgeOptions::clear),
                      optional("pixel_mm", &EdgeOptions::pixel_mm),
                      optional("padding_radii", &EdgeOptions::padding_radii)};
  }
};

/// Pressure of a disc at one place over the section before wear, under the disc.
struct EdgePressure {
  std::vector<double> distance_mm;  ///< as in EdgeProfile
  /// One per distance; its peak at an edge grows as pixels shrink: integrate it.
  std::vector<double> pressure_kpa;
  double line_load_n_per_mm = 0;  ///< pressure integrated within 1.5 mm of distance 0
  double plate_slope = 0;         ///< tilt of the plate
};

/// What was removed across the section, one value per distance from where the flat ends (edge; negative on
/// the rounding) or from the middle of the body line, which is worked alike on both sides.
struct EdgeProfile {
  std::vector<double> distance_mm;  ///< rising
  std::vector<double> removal_um;   ///< >= 0
  /// Area of the section removed within 1.5 mm of distance 0 [mm2]: does not depend on the pixel.
  double removed_area_mm2 = 0;
  double peak_removal_um = 0;  ///< greatest of removal_um
  /// Least unsanded margin that keeps the clear asked for, if clear was given: the outermost distance up to
  /// which it would not be kept; 0 = the flat may be sanded to its end (leave the rounding itself); infinite
  /// = the flat does not keep it.
  std::optional<double> margin_mm = {};
  double pixel_mm = 0;      ///< [mm]
  int transform_pairs = 0;  ///< forward + inverse transforms
  double residual = 0;      ///< greatest rms error of a pressure over its rms
  double balance = 0;       ///< greatest error of a force (and moment) over the force
};

/// Pressure of the disc with its centre at centre_mm, >= 0 [mm] (plate parallel to the panel unless tilting).
/// InvalidInput for a half-space or rigid support, which have no mean approach; NotConverged if the contact
/// is not found.
EdgePressure edge_pressure(const Backing& backing, const Motion& motion, const EdgeOptions& options,
                           double centre_mm);

/// Wears the section pass by pass (docs/physics.md, edges): lanes at the innermost place and, spread evenly,
/// beyond; in each the disc's force is balanced over its chords. Foam layers get their tangent modulus at the
/// flat's pressure.
EdgeProfile edge_profile(const Backing& backing, const Motion& motion, const EdgeOptions& options,
                         const Progress& progress = {});

/// The margin of EdgeProfile::margin_mm, for another clear or confidence.
double unsanded_margin_mm(const EdgeProfile& profile, const EdgeClear& clear);

}  // namespace libtexture
