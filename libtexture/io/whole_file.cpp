#include "libtexture/io/whole_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <cstring>
#include <memory>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/text.hpp"

namespace libtexture {

namespace fs = std::filesystem;

namespace {

[[noreturn]] void fail(const char* action, const fs::path& path, const std::string& reason) {
  throw InvalidInput("cannot " + std::string(action) + " " + shown(path.string(), 300) + ": " + reason);
}

[[noreturn]] void fail_of_system(const char* action, const fs::path& path) {
  fail(action, path, std::strerror(errno));
}

/// An open file, closed at the end.
class OpenFile {
 public:
  OpenFile(const fs::path& path, int flags, mode_t mode = 0) : number(open(path.c_str(), flags, mode)) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (number >= 0) close(number);
  }
  const int number;  ///< < 0: could not be opened, errno says why
};

void require_regular(const char* action, const fs::path& path, mode_t mode) {
  if (S_ISDIR(mode)) fail(action, path, "it is a folder");
  if (!S_ISREG(mode)) fail(action, path, "it is not a regular file");
}

/// Where a file's bytes go: what a link leads to, there already or not.
fs::path followed(fs::path path) {
  std::error_code error;
  for (int links = 0; fs::is_symlink(fs::symlink_status(path, error)); ++links) {
    if (links == 40) fail("write", path, std::strerror(ELOOP));  // as many as the system follows
    path = path.parent_path() / fs::read_symlink(path, error);
  }
  return path;
}

/// A file written beside its place, which keep() puts there; else it is removed.
class Part {
 public:
  explicit Part(const FileContent& content) : shown_path(content.path), target(followed(content.path)) {
    struct stat old {};
    const bool is_there = stat(target.c_str(), &old) == 0;
    if (is_there) require_regular("write", shown_path, old.st_mode);
    part = part_name();
    // New: of nobody else's making, as no second writer has the name. Its rights are the process's default.
    const OpenFile file(part, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file.number < 0) fail_of_system("write", shown_path);
    is_made = true;
    try {
      if (is_there && fchmod(file.number, old.st_mode & 07777U) != 0) fail_of_system("write", shown_path);
      write_all(file.number, content.bytes);
      if (fsync(file.number) != 0) fail_of_system("write", shown_path);
    } catch (...) {
      remove();
      throw;
    }
  }
  Part(const Part&) = delete;
  Part& operator=(const Part&) = delete;
  ~Part() { remove(); }

  void keep() {
    if (rename(part.c_str(), target.c_str()) != 0) fail_of_system("write", shown_path);
    is_made = false;
    // The folder's entry too outlives a loss of power; a file system that cannot do so is no reason to fail.
    const OpenFile folder(target.has_parent_path() ? target.parent_path() : ".",
                          O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder.number >= 0) (void)fsync(folder.number);
  }

 private:
  fs::path part_name() const {
    static std::atomic<unsigned> made = 0;  // keeps threads apart, the number of the process two processes
    const std::string number = std::to_string(getpid()) + "." + std::to_string(++made);
    // A short name of its own: the file's may be as long as the file system allows.
    return target.parent_path() / (".libtexture." + number + ".part");
  }

  void write_all(int file, std::string_view bytes) const {
    while (!bytes.empty()) {
      const ssize_t written = write(file, bytes.data(), bytes.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) fail_of_system("write", shown_path);
      bytes.remove_prefix(static_cast<std::size_t>(written));
    }
  }

  void remove() {
    if (std::exchange(is_made, false)) unlink(part.c_str());
  }

  fs::path shown_path, target, part;
  bool is_made = false;
};

std::string megabytes(std::size_t bytes) {
  return std::to_string(bytes >> 20) + " MB";
}

}  // namespace

FileMissing::FileMissing(const fs::path& path)
    : std::runtime_error("no such file: " + shown(path.string(), 300)) {}

std::string read_whole_file(const fs::path& path, std::size_t most_bytes) {
  // Without O_NONBLOCK the opening of a pipe waits for a writer.
  const OpenFile file(path, O_RDONLY | O_NONBLOCK | O_CLOEXEC);
  if (file.number < 0 && (errno == ENOENT || errno == ENOTDIR)) throw FileMissing(path);
  struct stat status {};
  if (file.number < 0 || fstat(file.number, &status) != 0) fail_of_system("read", path);
  require_regular("read", path, status.st_mode);
  std::string bytes;
  std::string block(std::size_t{1} << 16, '\0');
  while (true) {
    const ssize_t got = read(file.number, block.data(), block.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail_of_system("read", path);
    if (got == 0) return bytes;
    bytes.append(block, 0, static_cast<std::size_t>(got));
    if (bytes.size() > most_bytes) fail("read", path, "it is larger than " + megabytes(most_bytes));
  }
}

void require_utf8(std::string_view text, const std::string& name) {
  const std::size_t good = utf8_bytes(text);
  if (good == text.size()) return;
  const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(good), '\n');
  throw InvalidInput(name + ":" + std::to_string(line) +
                     ": must be UTF-8: save the file in that encoding (a spreadsheet calls it CSV UTF-8)");
}

std::string read_text_file(const fs::path& path, std::size_t most_bytes) {
  std::string text = read_whole_file(path, most_bytes);
  if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
  require_utf8(text, path.string());
  return text;
}

void write_whole_files(const std::vector<FileContent>& files) {
  std::vector<std::unique_ptr<Part>> parts;
  for (const FileContent& file : files) parts.push_back(std::make_unique<Part>(file));
  for (const auto& part : parts) part->keep();
}

void write_whole_file(const fs::path& path, std::string_view text) {
  write_whole_files({{path, std::string(text)}});
}

}  // namespace libtexture
