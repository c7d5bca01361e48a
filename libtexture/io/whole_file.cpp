#include "libtexture/io/whole_file.hpp"

#include <cerrno>
#include <fstream>
#include <iterator>
#include <system_error>

namespace libtexture {

namespace {

[[noreturn]] void fail(const char* what, const std::filesystem::path& path) {
  const int code = errno != 0 ? errno : EIO;
  throw std::filesystem::filesystem_error(what, path, std::error_code(code, std::generic_category()));
}

}  // namespace

std::string read_whole_file(const std::filesystem::path& path) {
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) fail("cannot open", path);
  if (std::filesystem::is_directory(path)) {
    errno = EISDIR;
    fail("cannot read", path);
  }
  std::string bytes{std::istreambuf_iterator<char>(file), {}};
  if (file.bad()) fail("cannot read", path);
  return bytes;
}

void write_whole_file(const std::filesystem::path& path, std::string_view bytes) {
  std::filesystem::path part = path;
  part += ".part";
  errno = 0;
  std::ofstream file(part, std::ios::binary | std::ios::trunc);
  if (!file) fail("cannot write", path);
  file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  file.close();
  std::error_code error;
  if (file) std::filesystem::rename(part, path, error);
  if (file && !error) return;
  if (error) errno = error.value();
  const int code = errno;
  std::filesystem::remove(part, error);
  errno = code;
  fail("cannot write", path);
}

}  // namespace libtexture
