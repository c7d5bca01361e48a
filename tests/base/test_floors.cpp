#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <string>
#include <vector>

#include "catch.hpp"

namespace {

namespace fs = std::filesystem;

// Folders on one level do not see each other.
const std::map<std::string, int> level_of{{"base", 0},    {"numerics", 1}, {"surface", 2}, {"tool", 2},
                                          {"process", 3}, {"plan", 4},     {"io", 5}};

std::vector<fs::path> sources() {
  std::vector<fs::path> found;
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(LIBTEXTURE_SOURCE_DIR) / "libtexture"))
    if (entry.path().extension() == ".hpp" || entry.path().extension() == ".cpp")
      found.push_back(entry.path());
  return found;
}

std::vector<std::string> lines_of(const fs::path& path) {
  std::ifstream file(path);
  std::vector<std::string> lines;
  for (std::string line; std::getline(file, line);) lines.push_back(line);
  return lines;
}

}  // namespace

TEST_CASE("every folder of the library is a floor") {
  REQUIRE(sources().size() > 10);
  for (const auto& path : sources()) {
    INFO(path);
    CHECK(level_of.count(path.parent_path().filename().string()) == 1);
  }
}

TEST_CASE("a floor includes only itself and the floors below") {
  const std::regex include(R"re(#include "libtexture/(\w+)/\w+\.hpp")re");
  for (const auto& path : sources()) {
    const std::string floor = path.parent_path().filename().string();
    for (const auto& line : lines_of(path)) {
      std::smatch match;
      if (!std::regex_search(line, match, include)) continue;
      INFO(path << ": " << line);
      CHECK((match[1] == floor || level_of.at(match[1]) < level_of.at(floor)));
    }
  }
}

TEST_CASE("a header holds one concept: at most 150 lines") {
  for (const auto& path : sources()) {
    if (path.extension() != ".hpp") continue;
    INFO(path);
    CHECK(lines_of(path).size() <= 150);
  }
}
