#pragma once
// Units: names carry them, kernels use SI; these are the factors and the words.

#include <array>
#include <string>
#include <string_view>
#include <utility>

namespace libtexture {

inline constexpr double um_per_mil = 25.4;  // exact: 1 inch = 25.4 mm
inline constexpr double metre_per_um = 1e-6;
inline constexpr double metre_per_mm = 1e-3;
inline constexpr double pascal_per_kpa = 1e3;
inline constexpr double pascal_per_mpa = 1e6;
inline constexpr double pascal_per_gpa = 1e9;

/// How units are written: in plain ASCII, as a terminal and a message do, or in the signs of print (µm, m²,
/// ±).
enum class Symbols { ascii, unicode };
constexpr std::array<std::pair<Symbols, const char*>, 2> names_of(Symbols) {
  return {{{Symbols::ascii, "ascii"}, {Symbols::unicode, "unicode"}}};
}

/// A unit of unit_of() in other symbols: "um" -> "µm", "mm3/(N m)" -> "mm³/(N m)".
std::string in_symbols(const std::string& unit, Symbols symbols);

/// The unit that a field's name ends in, as people write it: "force_n" -> "N", "feed_mm_per_s" -> "mm/s"; ""
/// if none.
std::string unit_of(std::string_view field);

/// A number in at most six significant digits, as used in messages and tables.
std::string to_text(double value);

/// A number with so many decimals, 0 to 9; what rounds to zero has no sign.
std::string to_text(double value, int decimals);

/// A length as both trades read it: "4.2 um (0.17 mil)".
std::string um_and_mil(double length_um, Symbols symbols = Symbols::ascii);

/// A range of lengths: "5.9 to 11.4 um (0.23 to 0.45 mil)".
std::string um_and_mil(double least_um, double most_um, Symbols symbols = Symbols::ascii);

}  // namespace libtexture
