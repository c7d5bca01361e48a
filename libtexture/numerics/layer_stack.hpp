#pragma once
// Layer stack: how far the top of bonded elastic layers on a rigid base gives under a wave of pressure.
// Plane strain, static, SI units.

#include <vector>

namespace libtexture {

/// One isotropic elastic layer.
struct ElasticLayer {
  double modulus_pa;   ///< Young's modulus [Pa], > 0
  double poisson;      ///< Poisson's ratio, 0 to < .5
  double thickness_m;  ///< [m], > 0
};

/// What holds the loaded face sideways.
enum class TopFace {
  shear_free,    ///< nothing: no shear traction
  inextensible,  ///< a thin stiff skin glued on: no sideways displacement
};

/// Modulus of a thin bonded layer [Pa], squeezed with no room to the sides: E (1-nu)/((1+nu)(1-2nu)).
double confined_modulus_pa(const ElasticLayer& layer);

/// Surface compliance C(q) [m/Pa]: displacement per pressure of a wave of number q_per_m [1/m], q >= 0, on
/// the top of `layers` (from the top down, at least one), each bonded to the next and the last to a rigid
/// base. q = 0 gives sum t/M. Exact for any number of layers and any q t (docs/physics.md, elastic layers).
/// InvalidInput for an empty stack, a layer out of range, or q < 0.
double surface_compliance_m_per_pa(const std::vector<ElasticLayer>& layers, TopFace top, double q_per_m);

}  // namespace libtexture
