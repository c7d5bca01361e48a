#pragma once
// Form: the tilt and the curvature of a measured map, which are not texture, and whether the map repeats.

#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// A map without its form.
struct FormRemoved {
  HeightField surface;       ///< what is left; its mean is the map's
  double tilt_um = 0;        ///< the plane that was taken out, highest less lowest [um]
  double form_um = 0;        ///< what was taken out of second order, highest less lowest [um]
  double rms_before_um = 0;  ///< of the map as it was measured [um]
};

/// Takes out the plane and then the form of second order, both by least squares (ISO 25178-3, F-operator;
/// terms x, y, x^2, x y and y^2; of a profile x and x^2). Waves longer than about half of the map go with
/// them in part.
FormRemoved without_form(const HeightField& map);

/// How a map fits on to itself, as the model repeats it.
struct EdgeJump {
  double edge_um = 0;       ///< rms difference of opposite edges [um]; the worse pair of edges
  double neighbour_um = 0;  ///< rms difference of neighbouring points in that direction [um]
  /// Times as much; 1 of a map that repeats, 0 of one that is flat in that direction.
  double times() const { return neighbour_um > 0 ? edge_um / neighbour_um : 0; }
};
EdgeJump edge_jump(const HeightField& map);

/// Opposite edges that differ by so many times as much as neighbouring points do not fit together; estimate.
inline constexpr double unfitting_edges = 3;

/// What there is to say of a map: its form, where it was taken out, and edges that do not fit.
std::vector<Statement> statements_of(const FormRemoved& removed);
std::vector<Statement> statements_of(const EdgeJump& jump);

}  // namespace libtexture
