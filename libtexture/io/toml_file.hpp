#pragma once
// TOML files: their values with the lines they stand on.

#include <filesystem>
#include <string>
#include <string_view>

#include "libtexture/io/value_file.hpp"

namespace libtexture {

/// Parses TOML; syntax errors are InvalidInput "name:line: ...", with what to write where that can be
/// guessed.
ValueFile parse_toml(std::string_view text, const std::string& name);

/// The same from a file, named as `path` writes it. Throws FileMissing.
ValueFile read_toml(const std::filesystem::path& path);

}  // namespace libtexture
