#pragma once
// Whole files: read at once, and written whole or not at all.

#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>

namespace libtexture {

/// A file that does not exist; what() names it. Python: FileNotFoundError.
class FileMissing : public std::runtime_error {
 public:
  explicit FileMissing(const std::filesystem::path& path);
};

/// The bytes of a file. Throws FileMissing, or InvalidInput where it cannot be read (a folder, no
/// permission).
std::string read_whole_file(const std::filesystem::path& path);

/// Writes `text` to a temporary file beside `path` and renames it: a reader sees the old file or the new one,
/// never half of it. InvalidInput, with the system's reason, where it cannot be written; nothing is left
/// then.
void write_whole_file(const std::filesystem::path& path, std::string_view text);

}  // namespace libtexture
