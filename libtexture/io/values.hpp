#pragma once
// Values: any struct with a field table, to JSON and back. Job files, Python dicts, reports and pickles all
// pass here.

#include <nlohmann/json.hpp>
#include <string>

#include "libtexture/io/bad_value.hpp"
#include "libtexture/io/describe.hpp"

namespace libtexture {

/// A value as JSON. Fields that are not given (empty optionals, unset numbers) are left out; a grit is its
/// name, or {"median_um": 3} without a grade; an enum is its word.
Json to_json(const Descriptor& descriptor, const void* value);

/// Reads `json` into a new value, every struct in it validated. Throws BadValue, with the path before the
/// message: unknown keys (with the nearest known one), missing keys, wrong types, numbers that are not
/// finite, broken rules.
void read_value(const Json& json, const std::string& path, const Descriptor& descriptor, void* into);

/// The grit of a grade, or of { median_um = 3 }; throws BadValue.
Grit read_grit(const Json& json, const std::string& path);

/// to_json of the value's own type.
template <class T>
Json to_json(const T& value) {
  return to_json(descriptor_of<T>(), &value);
}

/// The value that `json` holds; throws as read_value does. Not named from_json, as the JSON library's own
/// function would be found too.
template <class T>
T value_from(const Json& json, const std::string& path = "") {
  if constexpr (std::same_as<T, Grit>) {
    return read_grit(json, path);
  } else {
    T value{};
    read_value(json, path, descriptor_of<T>(), &value);
    return value;
  }
}

}  // namespace libtexture
