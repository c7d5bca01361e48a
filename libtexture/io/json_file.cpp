#include "libtexture/io/json_file.hpp"

#include <iterator>
#include <set>
#include <vector>

#include "libtexture/base/text.hpp"
#include "libtexture/io/whole_file.hpp"

namespace libtexture {

namespace {

/// Letters of a text, counting the lines that they end.
class Letters {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  Letters(const char* at_, int* line_) : at(at_), line(line_) {}
  reference operator*() const { return *at; }
  Letters& operator++() {
    if (*at++ == '\n') ++*line;
    return *this;
  }
  Letters operator++(int) {
    Letters before = *this;
    ++*this;
    return before;
  }
  bool operator==(const Letters& other) const { return at == other.at; }
  bool operator!=(const Letters& other) const { return at != other.at; }

 private:
  const char* at;
  int* line;
};

/// Follows the parser from value to value: where each stands, and what may not be.
class Walk {
 public:
  Walk(ValueFile& file_, const int& line_) : file(file_), line(line_) {}

  void meet(Json::parse_event_t event, const Json& value) {
    using Event = Json::parse_event_t;
    if (event == Event::key) return meet_key(value.get_ref<const std::string&>());
    if (event == Event::object_end || event == Event::array_end) return places.pop_back();
    const std::string path = next_path();
    file.lines.emplace(path, line);
    if (event == Event::value) return;
    if (static_cast<int>(places.size()) == most_nested)
      refuse_line(file.name, line, "values must be nested at most " + std::to_string(most_nested) + " deep");
    places.push_back({path, event == Event::array_start});
  }

 private:
  /// An object or a list that is open.
  struct Place {
    std::string path;
    bool is_list;
    std::size_t count = 0;  // elements met, of a list
    std::string key = {};   // the last one, of an object
    std::set<std::string> keys = {};
  };

  void meet_key(const std::string& key) {
    Place& place = places.back();
    if (!place.keys.insert(key).second)
      refuse_line(file.name, line, "key '" + shown(key) + "' stands twice in one table");
    place.key = key;
  }

  std::string next_path() {
    if (places.empty()) return "";
    Place& place = places.back();
    return place.is_list ? element_path(place.path, place.count++) : key_path(place.path, place.key);
  }

  ValueFile& file;
  const int& line;
  std::vector<Place> places = {};
};

}  // namespace

ValueFile parse_json(std::string_view text, const std::string& name) {
  require_utf8(text, name);
  ValueFile file{name, {}, {}};
  int line = 1;
  Walk walk(file, line);
  const auto meet = [&](int, Json::parse_event_t event, const Json& value) {
    walk.meet(event, value);
    return true;
  };
  const char* const begin = text.data();
  const char* const end = begin + text.size();
  try {
    file.values = Json::parse(Letters(begin, &line), Letters(end, &line), meet);
  } catch (const Json::exception&) {
    refuse_line(name, line, "must be JSON from here on");
  }
  file.lines.erase("");  // the whole file is on no line
  return file;
}

ValueFile read_json(const std::filesystem::path& path) {
  return parse_json(read_text_file(path), path.string());
}

}  // namespace libtexture
