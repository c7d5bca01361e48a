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

TEST_CASE("a missing file is named as missing, a folder as a folder") {
  const Folder folder;
  const fs::path nothing = folder.path / "a.txt";
  CHECK_THROWS_AS(read_whole_file(nothing), FileMissing);
  CHECK_THROWS_WITH(read_whole_file(nothing), "no such file: " + nothing.string());
  CHECK_THROWS_WITH(read_whole_file(folder.path), "cannot read " + folder.path.string() + ": it is a folder");
}
