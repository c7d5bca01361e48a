#pragma once
// TOML files: their values, and the line that each of them stands on, for messages.

#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "libtexture/io/bad_value.hpp"

namespace libtexture {

/// A TOML file as read.
struct TomlFile {
  std::string name;                  ///< as messages name it
  Json values;                       ///< a table
  std::map<std::string, int> lines;  ///< path of a value ("sequence[0].step[2].passes") -> its line, from 1
};

/// Parses TOML; syntax errors are InvalidInput "name:line: ...".
TomlFile parse_toml(std::string_view text, const std::string& name);

/// The same from a file, named as `path` writes it. Throws FileMissing.
TomlFile read_toml(const std::filesystem::path& path);

/// Where a path stands: "rear_door.toml:42", the line of its longest known beginning; the name alone without
/// any.
std::string place_of(const TomlFile& file, std::string_view path);

/// What `read()` returns; a BadValue that it throws becomes InvalidInput with file and line before its
/// message.
template <class Read>
auto with_place(const TomlFile& file, Read&& read) {
  try {
    return read();
  } catch (const BadValue& error) {
    throw InvalidInput(place_of(file, error.path) + ": " + error.what());
  }
}

}  // namespace libtexture
