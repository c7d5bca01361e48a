#include "libtexture/surface/gloss.hpp"

#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

constexpr double standard_index = 1.567;  // ISO 2813: the standard's glass

double cosine(double angle_deg) {
  return std::cos(angle_deg * std::numbers::pi / 180);
}

double rms_phase(double angle_deg, double roughness_nm) {
  return 4 * std::numbers::pi * roughness_nm * cosine(angle_deg) / light_wavelength_nm;
}

void require_angle(double angle_deg, const char* owner) {
  require(angle_deg >= 0 && angle_deg < 90, owner, "angle_deg", "must be >= 0 and < 90 degrees", angle_deg);
}

}  // namespace

double fresnel(double angle_deg, double refractive_index) {
  require_angle(angle_deg, "fresnel");
  require(refractive_index > 1 && refractive_index <= 4, "fresnel", "refractive_index",
          "must be > 1 and <= 4", refractive_index);
  return fresnel_of_cosine(cosine(angle_deg), refractive_index);
}

double fresnel_of_cosine(double outside, double refractive_index) {
  const double inside =
      std::sqrt(refractive_index * refractive_index - 1 + outside * outside) / refractive_index;
  const double across = (outside - refractive_index * inside) / (outside + refractive_index * inside);
  const double along = (inside - refractive_index * outside) / (inside + refractive_index * outside);
  return (across * across + along * along) / 2;
}

double gloss_of_share_gu(double angle_deg, double refractive_index, double specular_share) {
  require_within(specular_share, 0, 1, "gloss_of_share_gu", "specular_share");
  return 100 * specular_share * fresnel(angle_deg, refractive_index) / fresnel(angle_deg, standard_index);
}

double gloss_gu(double angle_deg, double refractive_index, double roughness_nm) {
  require_angle(angle_deg, "gloss_gu");
  require_not_negative(roughness_nm, "gloss_gu", "roughness_nm");
  const double phase = rms_phase(angle_deg, roughness_nm);
  return gloss_of_share_gu(angle_deg, refractive_index, std::exp(-phase * phase));
}

bool gloss_knows_roughness(double angle_deg, double roughness_nm) {
  require_angle(angle_deg, "gloss_knows_roughness");
  require_not_negative(roughness_nm, "gloss_knows_roughness", "roughness_nm");
  return rms_phase(angle_deg, roughness_nm) < 2;
}

}  // namespace libtexture
