#include "libtexture/io/value_file.hpp"

namespace libtexture {

std::string place_of(const ValueFile& file, std::string_view path) {
  std::size_t longest = 0;
  int place = 1;  // what is missing altogether is missed from the top
  for (const auto& [known, line] : file.lines) {
    const bool is_beginning =
        path.starts_with(known) &&
        (path.size() == known.size() || path[known.size()] == '.' || path[known.size()] == '[');
    if (!is_beginning || known.size() <= longest) continue;
    longest = known.size();
    place = line;
  }
  return file.name + ":" + std::to_string(place);
}

void refuse_line(const std::string& name, int line, const std::string& message) {
  throw InvalidInput(name + ":" + std::to_string(line) + ": " + message);
}

}  // namespace libtexture
