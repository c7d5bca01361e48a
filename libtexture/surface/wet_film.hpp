#pragma once
// WetFilm: how a wet coat levels over a textured base, and what of the base shows through when it has dried.

#include <array>
#include <tuple>
#include <utility>

#include "libtexture/base/fields.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// A wet coat on a base. Its viscosity rises as viscosity_pa_s exp(t/viscosity_rise_s). Typical figures
/// (memory): 60-100 um, 25-35 mN/m, .05-1 Pa s, volume solids .45-.65. Surface-tension gradients and sag are
/// not modelled.
struct WetFilm {
  double thickness_um = unset;              ///< mean wet thickness [um], > 0 to 5000
  double surface_tension_mn_per_m = unset;  ///< [mN/m], > 0
  double viscosity_pa_s = unset;            ///< at the start [Pa s], > 0
  double viscosity_rise_s = unset;          ///< time in which the viscosity grows e-fold [s], > 0
  double solids_share = unset;              ///< volume that stays when the film dries, > 0 to 1

  void validate() const;
  bool operator==(const WetFilm&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("thickness_um", &WetFilm::thickness_um),
                      required("surface_tension_mn_per_m", &WetFilm::surface_tension_mn_per_m),
                      required("viscosity_pa_s", &WetFilm::viscosity_pa_s),
                      required("viscosity_rise_s", &WetFilm::viscosity_rise_s),
                      required("solids_share", &WetFilm::solids_share)};
  }
};

/// How the levelling rate is computed: for films much thinner than the wave, or for any thickness.
enum class FilmDepth { thin, any };
constexpr std::array<std::pair<FilmDepth, const char*>, 2> names_of(FilmDepth) {
  return {{{FilmDepth::thin, "thin"}, {FilmDepth::any, "any"}}};
}

/// Rate [1/s] at which a wave of a wet film dies: a(t) = a(0) exp(-rate t) while the viscosity stays. With q
/// = 2 pi/ wavelength, X = q h: thin: sigma h^3 q^4/(3 eta), docs/physics.md (56); any: (sigma
/// q/2 eta)(sinh X cosh X - X)/(cosh^2 X + X^2) (flow on a base without slip; tends to the first as X
/// -> 0), docs/physics.md (57). All arguments > 0.
double levelling_rate_per_s(double wavelength_mm, double thickness_um, double surface_tension_mn_per_m,
                            double viscosity_pa_s, FilmDepth depth = FilmDepth::thin);

/// Share of a wave's amplitude left in the wet top after time_s (>= 0; may be infinite):
/// exp(-rate rise (1 - exp(-time/rise))), with the rate of any depth at the starting viscosity,
/// docs/physics.md (58).
double wet_amplitude_share(const WetFilm& film, double wavelength_mm, double time_s);

/// Share of a wave of the base that the dry top shows. The wet top starts parallel to the base (share 1) and
/// levels to w = wet_amplitude_share(infinity); then each column of the film shrinks to its solids, s (h + w
/// b - b) over the base b, so that the top keeps s w + (1 - s): 1 - s where the film had levelled flat, 1
/// where it never moved. docs/physics.md (59).
double dry_amplitude_share(const WetFilm& film, double wavelength_mm);

/// The dry top of a wet film over a base: each wave times its dry_amplitude_share. The mean is kept: heights
/// count from the dry film's own reference plane.
HeightField dry(const HeightField& base, const WetFilm& film);

}  // namespace libtexture
