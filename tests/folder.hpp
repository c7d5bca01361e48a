#pragma once
// A folder of one test's own: tests run side by side, so that no two may write the same file.

#include <unistd.h>

#include <filesystem>
#include <string>
#include <string_view>

#include "libtexture/io/whole_file.hpp"

/// An empty folder, removed with all that is in it at the end.
struct Folder {
  Folder() : path(std::filesystem::temp_directory_path() / new_name()) {
    std::filesystem::create_directory(path);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { std::filesystem::remove_all(path); }

  /// A file of this name with this content.
  std::filesystem::path file(const std::string& name, std::string_view content) const {
    libtexture::write_whole_file(path / name, content);
    return path / name;
  }

  std::filesystem::path path;

 private:
  static std::string new_name() {
    static int made = 0;
    return "libtexture_test_" + std::to_string(getpid()) + "_" + std::to_string(++made);
  }
};
