#include "libtexture/io/toml_file.hpp"

#include <toml++/toml.h>

#include <algorithm>
#include <sstream>

#include "libtexture/io/toml_text.hpp"
#include "libtexture/io/whole_file.hpp"

namespace libtexture {

namespace {

Json values_of(const toml::node& node, const std::string& path, ValueFile& file, int depth = 0) {
  const int line = static_cast<int>(node.source().begin.line);
  file.lines[path] = line;
  if (depth > most_nested)
    refuse_line(file.name, line, "values must be nested at most " + std::to_string(most_nested) + " deep");
  if (const auto* table = node.as_table()) {
    Json object = Json::object();
    for (const auto& [key, value] : *table)
      object[std::string(key.str())] = values_of(value, key_path(path, key.str()), file, depth + 1);
    return object;
  }
  if (const auto* list = node.as_array()) {
    Json elements = Json::array();
    for (std::size_t i = 0; i < list->size(); ++i)
      elements.push_back(values_of((*list)[i], element_path(path, i), file, depth + 1));
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

std::string_view line_of(std::string_view text, int number) {
  for (; number > 1 && !text.empty(); --number)
    text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  return text.substr(0, text.find('\n'));
}

}  // namespace

ValueFile parse_toml(std::string_view text, const std::string& name) {
  require_utf8(text, name);
  ValueFile file{name, {}, {}};
  const std::string mended = mended_toml(text, name);
  try {
    file.values = values_of(toml::parse(mended, name), "", file);
  } catch (const toml::parse_error& error) {
    const int line = static_cast<int>(error.source().begin.line);
    const std::string advice = toml_advice(line_of(mended, line));
    refuse_line(name, line, advice.empty() ? std::string(error.description()) : advice);
  }
  file.lines.erase("");  // the whole file is on no line
  return file;
}

ValueFile read_toml(const std::filesystem::path& path) {
  return parse_toml(read_text_file(path), path.string());
}

}  // namespace libtexture
