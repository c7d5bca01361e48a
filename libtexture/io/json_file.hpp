#pragma once
// JSON files: their values with the lines they stand on, as saved jobs are read.

#include <filesystem>
#include <string>
#include <string_view>

#include "libtexture/io/value_file.hpp"

namespace libtexture {

/// Parses JSON (RFC 8259). InvalidInput "name:line: ..." for what is none, for a key that stands twice in one
/// object, and for values nested deeper than most_nested.
ValueFile parse_json(std::string_view text, const std::string& name);

/// The same from a file, named as `path` writes it. Throws FileMissing.
ValueFile read_json(const std::filesystem::path& path);

}  // namespace libtexture
