#include "libtexture/io/value_kinds.hpp"

#include <cmath>
#include <cstdint>

#include "libtexture/base/fields.hpp"

namespace libtexture::detail {

double read_number(const Json& json, const std::string& path) {
  expect(json.is_number(), json, path, "a number");
  const double number = json.get<double>();
  expect(std::isfinite(number), json, path, "a finite number");
  return number;
}

std::int64_t read_integer(const Json& json, const std::string& path, std::int64_t least, std::int64_t most) {
  const double number = json.is_number() ? json.get<double>() : unset;
  expect(number == std::trunc(number), json, path, "a whole number");
  const bool fits_64_bits = std::abs(number) < 0x1p63;
  const std::int64_t integer = fits_64_bits ? json.get<std::int64_t>() : 0;
  expect(fits_64_bits && integer >= least && integer <= most, json, path,
         "between " + std::to_string(least) + " and " + std::to_string(most));
  return integer;
}

std::uint64_t read_unsigned(const Json& json, const std::string& path) {
  if (json.is_number_unsigned()) return json.get<std::uint64_t>();
  const std::int64_t number = read_integer(json, path, INT64_MIN, INT64_MAX);
  expect(number >= 0, json, path, "a whole number >= 0");
  return static_cast<std::uint64_t>(number);
}

Grit read_grit(const Json& json, const std::string& path) {
  const bool has_median = json.is_object() && json.size() == 1 && json.contains("median_um");
  expect(json.is_string() || has_median, json, path, "a grade such as \"P2500\", or { median_um = 3 }");
  const double median_um = has_median ? read_number(json["median_um"], key_path(path, "median_um")) : 0;
  try {
    return has_median ? Grit::of_median_um(median_um) : Grit(json.get_ref<const std::string&>());
  } catch (const InvalidInput& error) {
    fail_rule(error.what(), {}, path);
  }
}

Json write_grit(const Grit& grit) {
  const bool has_grade = !grit.name().ends_with(" um");
  return has_grade ? Json(grit.name()) : Json{{"median_um", grit.median_um()}};
}

}  // namespace libtexture::detail
