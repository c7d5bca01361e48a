#include <sys/stat.h>

#include <fstream>

#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/whole_file.hpp"

using namespace libtexture;
namespace fs = std::filesystem;

namespace {

std::ptrdiff_t count(const fs::path& folder) {
  return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

}  // namespace

TEST_CASE("a file reads back byte for byte, and an old one is replaced") {
  const Folder folder;
  const std::string text("line\r\n\0end", 10);
  write_whole_file(folder.path / "a.txt", "an older and longer text");
  write_whole_file(folder.path / "a.txt", text);
  CHECK(read_whole_file(folder.path / "a.txt") == text);
  CHECK(count(folder.path) == 1);
}

TEST_CASE("a file that cannot be written leaves nothing behind") {
  const Folder folder;
  const fs::path nowhere = folder.path / "missing" / "a.txt";
  CHECK_THROWS_WITH(write_whole_file(nowhere, "text"),
                    "cannot write " + nowhere.string() + ": No such file or directory");
  fs::create_directories(folder.path / "taken" / "inside");
  CHECK_THROWS_AS(write_whole_file(folder.path / "taken", "text"), InvalidInput);
  CHECK(count(folder.path) == 1);
}

TEST_CASE("only regular files up to a size are read") {
  const Folder folder;
  const fs::path pipe = folder.path / "pipe", loop = folder.path / "loop";
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  fs::create_symlink("loop", loop);
  CHECK_THROWS_WITH(read_whole_file(pipe), "cannot read " + pipe.string() + ": it is not a regular file");
  CHECK_THROWS_WITH(read_whole_file("/dev/zero"), "cannot read /dev/zero: it is not a regular file");
  CHECK_THROWS_WITH(read_whole_file(loop),
                    "cannot read " + loop.string() + ": Too many levels of symbolic links");
  CHECK_THROWS_AS(read_whole_file(folder.path / std::string(5000, 'x')), InvalidInput);
  const fs::path large = folder.file("large", std::string(3 << 20, 'x'));
  CHECK_THROWS_WITH(read_whole_file(large, 2 << 20),
                    "cannot read " + large.string() + ": it is larger than 2 MB");
  CHECK(read_whole_file(large, 3 << 20).size() == 3 << 20);
}

TEST_CASE("a text is UTF-8, and its mark is left out") {
  const Folder folder;
  CHECK(read_text_file(folder.file("a", "\xEF\xBB\xBFT\xc3\xbcr")) == "T\xc3\xbcr");
  CHECK_THROWS_WITH(
      require_utf8("a\nT\xfcr", "a.csv"),
      "a.csv:2: must be UTF-8: save the file in that encoding (a spreadsheet calls it CSV UTF-8)");
}

TEST_CASE("a link is followed, and a file keeps its rights") {
  const Folder folder;
  const fs::path target = folder.file("target", "old"), link = folder.path / "link";
  fs::permissions(target, fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("target", link);
  write_whole_file(link, "new");
  CHECK(fs::is_symlink(link));
  CHECK(read_whole_file(target) == "new");
  CHECK(fs::status(target).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
  fs::create_symlink("not there yet", folder.path / "ahead");
  write_whole_file(folder.path / "ahead", "new");
  CHECK(read_whole_file(folder.path / "not there yet") == "new");
  fs::create_symlink("loop", folder.path / "loop");
  CHECK_THROWS_AS(write_whole_file(folder.path / "loop", "new"), InvalidInput);
  CHECK_THROWS_WITH(write_whole_file("/dev/full", "new"), "cannot write /dev/full: it is not a regular file");
}

TEST_CASE("of several files all are written or none") {
  const Folder folder;
  const fs::path first = folder.file("first", "old"), nowhere = folder.path / "missing" / "second";
  CHECK_THROWS_AS(write_whole_files({{first, "new"}, {nowhere, "new"}}), InvalidInput);
  CHECK(read_whole_file(first) == "old");
  CHECK(count(folder.path) == 1);
  write_whole_files({{first, "new"}, {folder.path / "second", "too"}});
  CHECK(read_whole_file(first) == "new");
  CHECK(read_whole_file(folder.path / "second") == "too");
  CHECK(count(folder.path) == 2);
}

TEST_CASE("a missing file is named as missing, a folder as a folder") {
  const Folder folder;
  const fs::path nothing = folder.path / "a.txt";
  CHECK_THROWS_AS(read_whole_file(nothing), FileMissing);
  CHECK_THROWS_WITH(read_whole_file(nothing), "no such file: " + nothing.string());
  CHECK_THROWS_WITH(read_whole_file(folder.path), "cannot read " + folder.path.string() + ": it is a folder");
}
