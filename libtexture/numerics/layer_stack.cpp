#include "libtexture/numerics/layer_stack.hpp"

#include <Eigen/Core>
#include <Eigen/LU>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

using Eigen::Matrix2d;

// Tractions of the two faces of a layer per displacements of its faces, each (sideways, normal). With the
// stiffness of its motions symmetric and antisymmetric about its middle, K_s and K_a, and J = diag(1, -1):
//   top-top (K_s + K_a)/2, top-bottom (K_s - K_a)/2 J, bottom-bottom J (K_s + K_a)/2 J.
struct LayerStiffness {
  Matrix2d top_top;
  Matrix2d top_bottom;
  Matrix2d bottom_bottom;
};

// From an Airy function cos(qx) (A cosh qz + B qz sinh qz) and its antisymmetric twin. Hyperbolic functions
// of the thickness enter only as tanh(a/2) and a/sinh(a), a = q t, which neither overflow nor cancel.
LayerStiffness stiffness_of(const ElasticLayer& layer, double q_per_m) {
  const double a = q_per_m * layer.thickness_m;
  const double tanh_half = std::tanh(0.5 * a);
  const double decay = a / std::sinh(a);
  const double f = 3 - 4 * layer.poisson;
  const double c = 2 * (1 - layer.poisson);
  const double d = 1 - 2 * layer.poisson;
  const double scale = q_per_m * layer.modulus_pa / (1 + layer.poisson);  // 2 mu q
  Matrix2d symmetric, antisymmetric;
  symmetric << c * tanh_half, decay - d, decay - d, c / tanh_half;
  antisymmetric << c / tanh_half, -decay - d, -decay - d, c * tanh_half;
  symmetric *= scale / (f - decay);
  antisymmetric *= scale / (f + decay);

  const Matrix2d flip = Eigen::Vector2d(1, -1).asDiagonal();
  const Matrix2d own = 0.5 * (symmetric + antisymmetric);
  return {own, 0.5 * (symmetric - antisymmetric) * flip, flip * own * flip};
}

// Traction per displacement on top of the stack: each layer in turn from the base upwards.
Matrix2d impedance_of(const std::vector<ElasticLayer>& layers, double q_per_m) {
  auto layer = layers.rbegin();
  Matrix2d impedance = stiffness_of(*layer, q_per_m).top_top;  // the base does not move
  while (++layer != layers.rend()) {
    const LayerStiffness k = stiffness_of(*layer, q_per_m);
    const Matrix2d interface = k.bottom_bottom + impedance;
    impedance = k.top_top - k.top_bottom * interface.inverse() * k.top_bottom.transpose();
  }
  return impedance;
}

void validate(const ElasticLayer& layer) {
  require_positive(layer.modulus_pa, "ElasticLayer", "modulus_pa");
  require_positive(layer.thickness_m, "ElasticLayer", "thickness_m");
  require(layer.poisson >= 0 && layer.poisson < 0.5, "ElasticLayer", "poisson", "must be 0 to < 0.5",
          layer.poisson);
}

}  // namespace

double confined_modulus_pa(const ElasticLayer& layer) {
  const double nu = layer.poisson;
  return layer.modulus_pa * (1 - nu) / ((1 + nu) * (1 - 2 * nu));
}

double surface_compliance_m_per_pa(const std::vector<ElasticLayer>& layers, TopFace top, double q_per_m) {
  require(!layers.empty(), "layer stack", "layers", "must hold at least one layer", "none");
  require_not_negative(q_per_m, "layer stack", "q_per_m");
  double thin_limit = 0;
  double thickness = 0;
  for (const ElasticLayer& layer : layers) {
    validate(layer);
    thin_limit += layer.thickness_m / confined_modulus_pa(layer);
    thickness += layer.thickness_m;
  }
  // C differs from sum t/M by the order of (q t)^2: below this the difference is under rounding.
  if (q_per_m * thickness < 1e-9) return thin_limit;
  const Matrix2d impedance = impedance_of(layers, q_per_m);
  if (top == TopFace::inextensible) return 1 / impedance(1, 1);
  return impedance(0, 0) / impedance.determinant();
}

}  // namespace libtexture
