#include "libtexture/base/units.hpp"

#include <array>
#include <cstdio>
#include <utility>

namespace libtexture {

std::string unit_of(std::string_view field) {
  // Longest endings first: "_mm_per_s" ends in "_s" too.
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 27> endings{{
      {"_mm3_per_n_m", "mm3/(N m)"},
      {"_kpa_per_um", "kPa/um"},
      {"_mn_per_m", "mN/m"},
      {"_mm_per_s", "mm/s"},
      {"_m_per_s", "m/s"},
      {"_n_per_m", "N/m"},
      {"_per_cm2", "1/cm2"},
      {"_per_dm2", "1/dm2"},
      {"_per_s", "1/s"},
      {"_pa_s", "Pa s"},
      {"_octaves", "octaves"},
      {"_percent", "%"},
      {"_minutes", "min"},
      {"_deg", "degrees"},
      {"_rpm", "1/min"},
      {"_kpa", "kPa"},
      {"_mpa", "MPa"},
      {"_gpa", "GPa"},
      {"_mil", "mil"},
      {"_um", "um"},
      {"_nm", "nm"},
      {"_mm", "mm"},
      {"_m2", "m2"},
      {"_m", "m"},
      {"_n", "N"},
      {"_s", "s"},
      {"_gu", "GU"},
  }};
  for (const auto& [ending, unit] : endings)
    if (field.ends_with(ending)) return std::string(unit);
  return "";
}

std::string to_text(double value) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.6g", value);
  return text.data();
}

std::string to_text(double value, int decimals) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
  return text.data();
}

std::string um_and_mil(double length_um) {
  return to_text(length_um, 1) + " um (" + to_text(length_um / um_per_mil, 2) + " mil)";
}

}  // namespace libtexture
