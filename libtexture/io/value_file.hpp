#pragma once
// ValueFile: the values of a file, and the line that each of them stands on, for messages.

#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "libtexture/io/bad_value.hpp"

namespace libtexture {

/// Values nested deeper than this are refused before they are read: nothing that is read here needs more than
/// ten, and a hundred thousand would exhaust the stack of whoever walks them.
inline constexpr int most_nested = 32;

/// A file of values as read.
struct ValueFile {
  std::string name;                  ///< as messages name it
  Json values;                       ///< a table
  std::map<std::string, int> lines;  ///< path of a value ("sequence[0].step[2].passes") -> its line, from 1
};

/// Where a path stands: "rear_door.toml:42", the line of its longest known beginning; the first line without
/// any.
std::string place_of(const ValueFile& file, std::string_view path);

/// Throws InvalidInput "name:line: message".
[[noreturn]] void refuse_line(const std::string& name, int line, const std::string& message);

/// What `read()` returns; a BadValue that it throws becomes InvalidInput with file and line before its
/// message.
template <class Read>
auto with_place(const ValueFile& file, Read&& read) {
  try {
    return read();
  } catch (const BadValue& error) {
    throw InvalidInput(place_of(file, error.path) + ": " + error.what());
  }
}

}  // namespace libtexture
