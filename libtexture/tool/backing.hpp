#pragma once
// Backing: everything behind the grains: a skin on bonded elastic layers, and its limits for tests.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// The carrier film, as a plate: D = E t^3 / (12 (1 - nu^2)) x coats_factor.
struct Skin {
  double modulus_gpa = unset;   ///< Young's modulus [GPa], 10^-4 to 1500
  double thickness_um = unset;  ///< [um], .001 to 10^5
  double poisson = unset;       ///< Poisson's ratio, 0 to < .5
  double coats_factor = 1;      ///< stiffening by grain and size coats, 1 to 100; estimate 1.5 (1-2)
  double tension_n_per_m = 0;   ///< membrane tension [N/m], 0 to 10^5

  void validate() const;
  bool operator==(const Skin&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("modulus_gpa", &Skin::modulus_gpa),
                      required("thickness_um", &Skin::thickness_um), required("poisson", &Skin::poisson),
                      optional("coats_factor", &Skin::coats_factor),
                      optional("tension_n_per_m", &Skin::tension_n_per_m)};
  }
};

/// One elastic layer, bonded to its neighbours.
struct Layer {
  double modulus_mpa = unset;   ///< Young's modulus [MPa] (dynamic, small strain), 10^-5 to 1.5 10^6
  double thickness_mm = unset;  ///< [mm], 10^-3 to 1000
  double poisson = unset;       ///< Poisson's ratio, 0 to < .5
  /// Stress plateau of a foam [kPa], 10^-3 to 10^6; none = linear. About 0.05 E, docs/physics.md (10).
  std::optional<double> plateau_kpa = {};

  void validate() const;
  bool operator==(const Layer&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("modulus_mpa", &Layer::modulus_mpa),
                      required("thickness_mm", &Layer::thickness_mm), required("poisson", &Layer::poisson),
                      optional("plateau_kpa", &Layer::plateau_kpa)};
  }
};

/// What carries the skin.
enum class Support { layers, springs, half_space, rigid };
constexpr std::array<std::pair<Support, const char*>, 4> names_of(Support) {
  return {{{Support::layers, "layers"},
           {Support::springs, "springs"},
           {Support::half_space, "half_space"},
           {Support::rigid, "rigid"}}};
}

/// Skin (or none) on its support, bonded to a rigid plate that stays parallel to the mean plane.
struct Backing {
  std::string name = {};                                   ///< as in the catalogue; may be empty
  std::optional<Skin> skin = {};                           ///< none = bare layers, shear-free top
  std::vector<Layer> layers = {};                          ///< from the skin inwards (support = layers)
  Support support = Support::layers;                       ///< what carries the skin
  std::optional<double> spring_stiffness_kpa_per_um = {};  ///< support = springs: [kPa/um], > 0
  std::optional<double> half_space_modulus_mpa = {};  ///< support = half_space: Young's modulus [MPa], > 0
  double half_space_poisson = 0;                      ///< support = half_space: 0 to < .5
  double stiffness_factor = 1;      ///< on the stiffness to any wave: a test spot sets it, > 0
  double stiffness_log_sd = 0.5;    ///< standard deviation of ln(stiffness) before a test spot; estimate
  std::string source = "estimate";  ///< where the figures come from

  /// Independent springs: every wave meets the same stiffness [kPa/um], > 0.
  static Backing on_springs(double stiffness_kpa_per_um);
  /// A deep elastic body of modulus [MPa], > 0, and Poisson's ratio, 0 to < .5.
  static Backing on_half_space(double modulus_mpa, double poisson);
  /// An infinitely stiff face: it cuts the highest points only.
  static Backing rigid();

  void validate() const;
  bool operator==(const Backing&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("name", &Backing::name),
                      optional("skin", &Backing::skin),
                      optional("layers", &Backing::layers),
                      optional("support", &Backing::support),
                      optional("spring_stiffness_kpa_per_um", &Backing::spring_stiffness_kpa_per_um),
                      optional("half_space_modulus_mpa", &Backing::half_space_modulus_mpa),
                      optional("half_space_poisson", &Backing::half_space_poisson),
                      optional("stiffness_factor", &Backing::stiffness_factor),
                      optional("stiffness_log_sd", &Backing::stiffness_log_sd),
                      optional("source", &Backing::source)};
  }
};

/// Bending stiffness D of a skin [N m]: coats_factor E t^3 / (12 (1 - nu^2)) (docs/physics.md, equation 4).
double bending_stiffness_n_m(const Skin& skin);

/// Stiffness S(q) [Pa/m]: pressure per displacement of a wave of number q_per_m [1/m], q >= 0:
/// stiffness_factor x (D q^4 + T q^2 + 1/C(q)) (docs/physics.md). q = 0 is the true stiffness against uniform
/// approach. Layers and a half-space have an inextensible top under a skin (it is bonded on), a shear-free
/// one without. Infinite for a rigid support; zero at q = 0 on a half-space. Plateaus play no part: see
/// at_working_pressure.
double stiffness_pa_per_m(const Backing& backing, double q_per_m);

/// Stiffness [kPa/um] by wavelength [mm], > 0: pressure per displacement of a wave.
double stiffness_kpa_per_um(const Backing& backing, double wavelength_mm);

/// Share of its plateau from which a foam counts as collapsed; densification is not modelled.
inline constexpr double collapse_share = 0.9;

/// The backing as texture feels it at a mean pressure [kPa], >= 0: foams with a plateau become linear layers
/// of their tangent modulus E (1 - p/plateau). InvalidInput from collapse_share of a plateau on: the layer
/// collapses.
Backing at_working_pressure(const Backing& backing, double pressure_kpa);

/// What pressing a backing in evenly takes: mean approach, and the work done on the way.
struct Approach {
  double depth_m;              ///< mean approach [m]
  double work_j_per_m2;        ///< integral of the pressure over the approach [J/m2]
  double compliance_m_per_pa;  ///< further approach per further pressure [m/Pa]
};
/// Approach under a pressure [kPa], >= 0 and less than every plateau, along each foam's own curve
/// (docs/physics.md, equation 9), however near to its plateau; not for a half-space, which has none.
Approach approach_at(const Backing& backing, double pressure_kpa);

/// Mean approach [um] under a mean pressure [kPa], >= 0, along each foam's own curve
/// p = plateau (1 - exp(-M e/plateau)), M the modulus of a thin bonded layer, so that its slope is 1/S(0) of
/// at_working_pressure. InvalidInput where a layer collapses, and on a half-space, which has no mean
/// approach.
double mean_approach_um(const Backing& backing, double pressure_kpa);

}  // namespace libtexture
