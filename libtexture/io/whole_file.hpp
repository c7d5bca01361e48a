#pragma once
// Whole files: read in one piece, written whole or not at all.

#include <filesystem>
#include <string>
#include <string_view>

namespace libtexture {

/// All bytes of a file. std::filesystem::filesystem_error, which names the file, where it cannot be read.
std::string read_whole_file(const std::filesystem::path& path);

/// Writes a temporary file beside `path` and renames it, so that a failure leaves no half file and an earlier
/// one as it was. std::filesystem::filesystem_error, which names the file, where it cannot be written.
void write_whole_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace libtexture
