#include "libtexture/base/units.hpp"

#include <array>
#include <cstdio>
#include <utility>

namespace libtexture {

std::string unit_of(std::string_view field) {
  // Longest endings first: "_mm_per_s" ends in "_s" too.
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 28> endings{{
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
      {"_arcmin", "arcmin"},
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
  const std::string number = text.data();
  return number.find_first_of("123456789in") == std::string::npos && number.front() == '-' ? number.substr(1)
                                                                                           : number;
}

std::string in_symbols(const std::string& unit, Symbols symbols) {
  if (symbols == Symbols::ascii) return unit;
  std::string text;
  for (std::size_t i = 0; i < unit.size(); ++i) {
    // The u of a micrometre is a mu.
    if (unit.compare(i, 2, "um") == 0)
      text += "\u00b5";
    else if (unit[i] == '2')
      text += "\u00b2";
    else if (unit[i] == '3')
      text += "\u00b3";
    else
      text += unit[i];
  }
  return text;
}

std::string um_and_mil(double length_um, Symbols symbols) {
  return to_text(length_um, 1) + " " + in_symbols("um", symbols) + " (" + to_text(length_um / um_per_mil, 2) +
         " mil)";
}

std::string um_and_mil(double least_um, double most_um, Symbols symbols) {
  return to_text(least_um, 1) + " to " + to_text(most_um, 1) + " " + in_symbols("um", symbols) + " (" +
         to_text(least_um / um_per_mil, 2) + " to " + to_text(most_um / um_per_mil, 2) + " mil)";
}

}  // namespace libtexture
