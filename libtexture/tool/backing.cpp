#include "libtexture/tool/backing.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/layer_stack.hpp"

namespace libtexture {

namespace {

constexpr double pascal_per_m_per_kpa_per_um = pascal_per_kpa / metre_per_um;

ElasticLayer elastic(const Layer& layer) {
  return {layer.modulus_mpa * pascal_per_mpa, layer.poisson, layer.thickness_mm * metre_per_mm};
}

void require_poisson(double value, std::string_view owner, std::string_view field) {
  require(value >= 0 && value < 0.5, owner, field, "must be 0 to < 0.5", value);
}

void require_not_collapsed(const Layer& layer, double pressure_kpa) {
  if (!layer.plateau_kpa || pressure_kpa < collapse_share * *layer.plateau_kpa) return;
  const double limit = collapse_share * *layer.plateau_kpa;
  require(false, "Backing", "pressure_kpa",
          "must be < " + to_text(limit) + ", .9 of the plateau of the " + to_text(layer.modulus_mpa) +
              " MPa layer: the layer collapses; densification is not modelled",
          pressure_kpa);
}

// Plate and membrane of the skin: D q^4 + T q^2.
double skin_stiffness(const Skin& skin, double q) {
  return (bending_stiffness_n_m(skin) * q * q + skin.tension_n_per_m) * q * q;
}

// E* q/2, docs/physics.md (8); under a glued skin 4 mu (1-nu) q/(3-4 nu), the
// limit of a very thick layer.
double half_space_stiffness(double modulus_pa, double nu, TopFace top, double q) {
  if (top == TopFace::shear_free) return modulus_pa / (1 - nu * nu) * q / 2;
  return 2 * modulus_pa / (1 + nu) * (1 - nu) * q / (3 - 4 * nu);
}

double support_stiffness(const Backing& backing, double q) {
  const TopFace top = backing.skin ? TopFace::inextensible : TopFace::shear_free;
  switch (backing.support) {
    case Support::springs:
      return *backing.spring_stiffness_kpa_per_um * pascal_per_m_per_kpa_per_um;
    case Support::half_space:
      return half_space_stiffness(*backing.half_space_modulus_mpa * pascal_per_mpa,
                                  backing.half_space_poisson, top, q);
    case Support::rigid:
      return std::numeric_limits<double>::infinity();
    default:
      break;
  }
  std::vector<ElasticLayer> layers;
  for (const Layer& layer : backing.layers) layers.push_back(elastic(layer));
  return 1 / surface_compliance_m_per_pa(layers, top, q);
}

}  // namespace

void Skin::validate() const {
  require_positive(modulus_gpa, "Skin", "modulus_gpa");
  require_positive(thickness_um, "Skin", "thickness_um");
  // From soft rubber to diamond, and from less than any film to a plate: a slip of the unit (estimates).
  require_within(modulus_gpa, 1e-4, 1500, "Skin", "modulus_gpa");
  require_within(thickness_um, 1e-3, 1e5, "Skin", "thickness_um");
  require_poisson(poisson, "Skin", "poisson");
  require_within(coats_factor, 1, 100, "Skin", "coats_factor");
  require_within(tension_n_per_m, 0, 1e5, "Skin", "tension_n_per_m");
}

void Layer::validate() const {
  require_positive(modulus_mpa, "Layer", "modulus_mpa");
  require_positive(thickness_mm, "Layer", "thickness_mm");
  // From a jelly to diamond, and from a coat of size to more than a machine holds (estimates).
  require_within(modulus_mpa, 1e-5, 1.5e6, "Layer", "modulus_mpa");
  require_within(thickness_mm, 1e-3, 1000, "Layer", "thickness_mm");
  require_poisson(poisson, "Layer", "poisson");
  if (plateau_kpa) {
    require_positive(*plateau_kpa, "Layer", "plateau_kpa");
    require_within(*plateau_kpa, 1e-3, 1e6, "Layer", "plateau_kpa");
  }
}

// Sampling validates a backing a million times: messages are made only where they are needed.
void Backing::validate() const {
  if (skin) skin->validate();
  for (const Layer& layer : layers) layer.validate();
  if (support == Support::layers)
    require(!layers.empty(), "Backing", "layers", "must hold at least one layer", "none");
  else if (!layers.empty())
    require(false, "Backing", "layers", "must be left out unless support is layers",
            std::to_string(layers.size()) + " layers");
  if (support == Support::springs)
    require_positive(spring_stiffness_kpa_per_um.value_or(unset), "Backing", "spring_stiffness_kpa_per_um");
  else
    require(!spring_stiffness_kpa_per_um, "Backing", "spring_stiffness_kpa_per_um",
            "must be left out unless support is springs", spring_stiffness_kpa_per_um.value_or(0));
  if (support == Support::half_space)
    require_positive(half_space_modulus_mpa.value_or(unset), "Backing", "half_space_modulus_mpa");
  else
    require(!half_space_modulus_mpa, "Backing", "half_space_modulus_mpa",
            "must be left out unless support is half_space", half_space_modulus_mpa.value_or(0));
  require_poisson(half_space_poisson, "Backing", "half_space_poisson");
  require_positive(stiffness_factor, "Backing", "stiffness_factor");
  require_within(stiffness_log_sd, 0, 5, "Backing", "stiffness_log_sd");
}

Backing Backing::on_springs(double stiffness_kpa_per_um) {
  Backing backing;
  backing.support = Support::springs;
  backing.spring_stiffness_kpa_per_um = stiffness_kpa_per_um;
  backing.validate();
  return backing;
}

Backing Backing::on_half_space(double modulus_mpa, double poisson) {
  Backing backing;
  backing.support = Support::half_space;
  backing.half_space_modulus_mpa = modulus_mpa;
  backing.half_space_poisson = poisson;
  backing.validate();
  return backing;
}

Backing Backing::rigid() {
  Backing backing;
  backing.support = Support::rigid;
  return backing;
}

double bending_stiffness_n_m(const Skin& skin) {
  const double thickness = skin.thickness_um * metre_per_um;
  return skin.coats_factor * skin.modulus_gpa * pascal_per_gpa * thickness * thickness * thickness /
         (12 * (1 - skin.poisson * skin.poisson));
}

double stiffness_pa_per_m(const Backing& backing, double q_per_m) {
  backing.validate();
  require_not_negative(q_per_m, "Backing", "q_per_m");
  const double skin = backing.skin ? skin_stiffness(*backing.skin, q_per_m) : 0;
  return backing.stiffness_factor * (skin + support_stiffness(backing, q_per_m));
}

double stiffness_kpa_per_um(const Backing& backing, double wavelength_mm) {
  require_positive(wavelength_mm, "Backing", "wavelength_mm");
  const double q_per_m = 2 * std::numbers::pi / (wavelength_mm * metre_per_mm);
  return stiffness_pa_per_m(backing, q_per_m) / pascal_per_m_per_kpa_per_um;
}

Backing at_working_pressure(const Backing& backing, double pressure_kpa) {
  backing.validate();
  require_not_negative(pressure_kpa, "Backing", "pressure_kpa");
  Backing tangent = backing;
  for (Layer& layer : tangent.layers) {
    if (!layer.plateau_kpa) continue;
    require_not_collapsed(layer, pressure_kpa);
    layer.modulus_mpa *= 1 - pressure_kpa / *layer.plateau_kpa;
    layer.plateau_kpa.reset();
  }
  return tangent;
}

Approach approach_at(const Backing& backing, double pressure_kpa) {
  const double pressure = pressure_kpa * pascal_per_kpa;
  if (backing.support != Support::layers) {
    const double compliance = 1 / stiffness_pa_per_m(backing, 0);
    return {pressure * compliance, pressure * pressure * compliance / 2, compliance};
  }
  Approach sum{0, 0, 0};
  for (const Layer& layer : backing.layers) {
    const double thickness_m = layer.thickness_mm * metre_per_mm;
    const double modulus = confined_modulus_pa(elastic(layer));
    if (layer.plateau_kpa) {
      const double plateau = *layer.plateau_kpa * pascal_per_kpa;
      const double folds = -std::log1p(-pressure / plateau);
      sum.depth_m += thickness_m * plateau / modulus * folds;
      sum.work_j_per_m2 += thickness_m * plateau * plateau / modulus * (folds - pressure / plateau);
      sum.compliance_m_per_pa += thickness_m / (modulus * (1 - pressure / plateau));
    } else {
      sum.depth_m += thickness_m * pressure / modulus;
      sum.work_j_per_m2 += thickness_m * pressure * pressure / modulus / 2;
      sum.compliance_m_per_pa += thickness_m / modulus;
    }
  }
  const double factor = backing.stiffness_factor;
  return {sum.depth_m / factor, sum.work_j_per_m2 / factor, sum.compliance_m_per_pa / factor};
}

double mean_approach_um(const Backing& backing, double pressure_kpa) {
  backing.validate();
  require_not_negative(pressure_kpa, "Backing", "pressure_kpa");
  require(backing.support != Support::half_space, "Backing", "support", "must have a finite mean approach",
          "half_space");
  for (const Layer& layer : backing.layers) require_not_collapsed(layer, pressure_kpa);
  return approach_at(backing, pressure_kpa).depth_m / metre_per_um;
}

}  // namespace libtexture
