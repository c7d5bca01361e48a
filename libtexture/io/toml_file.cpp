#include "libtexture/io/toml_file.hpp"

#include <toml++/toml.h>

#include <sstream>

#include "libtexture/io/whole_file.hpp"

namespace libtexture {

namespace {

Json values_of(const toml::node& node, const std::string& path, std::map<std::string, int>& lines) {
  lines[path] = static_cast<int>(node.source().begin.line);
  if (const auto* table = node.as_table()) {
    Json object = Json::object();
    for (const auto& [key, value] : *table)
      object[std::string(key.str())] = values_of(value, key_path(path, key.str()), lines);
    return object;
  }
  if (const auto* list = node.as_array()) {
    Json elements = Json::array();
    for (std::size_t i = 0; i < list->size(); ++i)
      elements.push_back(values_of((*list)[i], element_path(path, i), lines));
    return elements;
  }
  if (const auto* text = node.as_string()) return text->get();
  if (const auto* whole = node.as_integer()) return whole->get();
  if (const auto* number = node.as_floating_point()) return number->get();
  if (const auto* truth = node.as_boolean()) return truth->get();
  std::ostringstream date;  // dates and times: no field takes one, and the message shows what came
  node.visit([&](const auto& value) { date << value; });
  return date.str();
}

/// The first line that is not UTF-8, which the parser would place elsewhere; 0 = none.
int line_not_utf8(std::string_view text) {
  int number = 0;
  std::istringstream lines{std::string(text)};
  for (std::string line; std::getline(lines, line);) {
    ++number;
    try {
      Json(line).dump();
    } catch (const Json::type_error&) {
      return number;
    }
  }
  return 0;
}

}  // namespace

TomlFile parse_toml(std::string_view text, const std::string& name) {
  TomlFile file{name, {}, {}};
  if (const int line = line_not_utf8(text))
    throw InvalidInput(name + ":" + std::to_string(line) + ": must be UTF-8: save the file in that encoding");
  try {
    file.values = values_of(toml::parse(text, name), "", file.lines);
  } catch (const toml::parse_error& error) {
    throw InvalidInput(name + ":" + std::to_string(error.source().begin.line) + ": " +
                       std::string(error.description()));
  }
  file.lines.erase("");  // the whole file is on no line
  return file;
}

TomlFile read_toml(const std::filesystem::path& path) {
  return parse_toml(read_whole_file(path), path.string());
}

std::string place_of(const TomlFile& file, std::string_view path) {
  std::size_t longest = 0;
  std::string place = file.name;
  for (const auto& [known, line] : file.lines) {
    const bool is_beginning =
        path.starts_with(known) &&
        (path.size() == known.size() || path[known.size()] == '.' || path[known.size()] == '[');
    if (!is_beginning || known.size() <= longest) continue;
    longest = known.size();
    place = file.name + ":" + std::to_string(line);
  }
  return place;
}

}  // namespace libtexture
