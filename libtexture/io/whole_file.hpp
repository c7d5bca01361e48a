#pragma once
// Whole files: read at once, and written whole or not at all.

#include <cstddef>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace libtexture {

/// A file that does not exist; what() names it. Python: FileNotFoundError.
class FileMissing : public std::runtime_error {
 public:
  explicit FileMissing(const std::filesystem::path& path);
};

/// What people write by hand or with a spreadsheet is smaller by far.
inline constexpr std::size_t most_text_bytes = std::size_t{16} << 20;

/// The bytes of a regular file, or of one that a link leads to. Throws FileMissing, or InvalidInput where it
/// cannot be read, is a folder, a device or a pipe, or is larger than `most_bytes`.
std::string read_whole_file(const std::filesystem::path& path, std::size_t most_bytes = most_text_bytes);

/// The text of such a file, without the mark that spreadsheets put before UTF-8. InvalidInput, with the line,
/// where it is not UTF-8.
std::string read_text_file(const std::filesystem::path& path, std::size_t most_bytes = most_text_bytes);

/// Throws InvalidInput "name:line: must be UTF-8 ..." for other text.
void require_utf8(std::string_view text, const std::string& name);

/// A file to be written and what it is to hold.
struct FileContent {
  std::filesystem::path path;
  std::string bytes;
};

/// Writes files beside their places and renames them: a reader sees the old file or the new one, never half
/// of it, and all of them are on the disk before the first is renamed. A link is followed, and a file's
/// rights stay. InvalidInput, with the file and the system's reason, where one cannot be written; none is
/// changed then.
void write_whole_files(const std::vector<FileContent>& files);

/// The same for one file.
void write_whole_file(const std::filesystem::path& path, std::string_view text);

}  // namespace libtexture
