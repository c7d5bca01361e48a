#include "catch.hpp"
#include "libtexture/io/whole_file.hpp"

using namespace libtexture;

namespace {

const std::filesystem::path folder = std::filesystem::temp_directory_path();

}  // namespace

TEST_CASE("what is written is read back and leaves no temporary file") {
  const auto path = folder / "libtexture_whole_file.txt";
  write_whole_file(path, "first");
  const std::string bytes("a\0b\r\n", 5);
  write_whole_file(path, bytes);
  CHECK(read_whole_file(path) == bytes);
  CHECK(!std::filesystem::exists(path.string() + ".part"));
  std::filesystem::remove(path);
}

TEST_CASE("a write that fails leaves what was there") {
  const auto path = folder / "libtexture_whole_folder";
  std::filesystem::create_directories(path /
                                      "inside");  // a folder that is not empty cannot be replaced by a file
  CHECK_THROWS_AS(write_whole_file(path, "bytes"), std::filesystem::filesystem_error);
  CHECK(std::filesystem::is_directory(path / "inside"));
  CHECK(!std::filesystem::exists(path.string() + ".part"));
  std::filesystem::remove_all(path);
}

TEST_CASE("a file that cannot be opened is named, with the system's reason") {
  const auto path = folder / "libtexture_no_such_folder" / "surface.npy";
  try {
    read_whole_file(path);
    FAIL("read a file that is not there");
  } catch (const std::filesystem::filesystem_error& error) {
    CHECK(error.path1() == path);
    CHECK(error.code() == std::errc::no_such_file_or_directory);
  }
  CHECK_THROWS_AS(write_whole_file(path, ""), std::filesystem::filesystem_error);
  CHECK_THROWS_AS(read_whole_file(folder), std::filesystem::filesystem_error);
}
