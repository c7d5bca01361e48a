#include "libtexture/io/whole_file.hpp"

#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace fs = std::filesystem;

namespace {

[[noreturn]] void fail(const char* action, const fs::path& path, const std::string& reason) {
  throw InvalidInput("cannot " + std::string(action) + " " + path.string() + ": " + reason);
}

}  // namespace

FileMissing::FileMissing(const fs::path& path) : std::runtime_error("no such file: " + path.string()) {}

std::string read_whole_file(const fs::path& path) {
  std::error_code ignored;
  if (!fs::exists(path, ignored)) throw FileMissing(path);
  if (fs::is_directory(path, ignored)) fail("read", path, "it is a folder");
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  if (!file) fail("read", path, std::strerror(errno));
  return text;
}

void write_whole_file(const fs::path& path, std::string_view text) {
  // The process number keeps two writers of the same file apart.
  const fs::path part = path.string() + "." + std::to_string(getpid()) + ".part";
  errno = 0;
  std::ofstream file(part, std::ios::binary);
  file.write(text.data(), static_cast<std::streamsize>(text.size()));
  file.close();
  std::error_code error(file ? 0 : errno, std::generic_category());
  if (!error) fs::rename(part, path, error);
  if (!error) return;
  std::error_code ignored;
  fs::remove(part, ignored);
  fail("write", path, error.message());
}

}  // namespace libtexture
