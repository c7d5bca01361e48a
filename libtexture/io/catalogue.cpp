#include "libtexture/io/catalogue.hpp"

#include <algorithm>
#include <cctype>
#include <set>
#include <sstream>
#include <vector>

#include "libtexture/io/toml_file.hpp"
#include "libtexture/io/values.hpp"

namespace libtexture {

extern const char* const catalogue_text;

namespace {

template <class Tool>
using Tools = std::map<std::string, Tool>;

constexpr std::size_t longest_typed = 200;  // bytes of a name that the nearest are looked for

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  return text;
}

/// Whether a tool's name holds a word of what was typed, "3000" say; short ones are in too many.
bool shares_word(const std::string& name, const std::string& typed) {
  std::istringstream words(lower(typed));
  for (std::string word; words >> word;)
    if (word.size() > 2 && lower(name).find(word) != std::string::npos) return true;
  return false;
}

/// The names to offer for one that is not known: the nearest in spelling, then those that share a word with
/// it.
std::string near_names(const std::vector<std::string>& known, const std::string& typed) {
  constexpr std::size_t most_names = 4;
  std::vector<std::string> near;
  if (const std::string nearest = nearest_word(typed, known.data(), known.data() + known.size());
      !nearest.empty())
    near.push_back(nearest);
  for (const std::string& name : known)
    if (near.size() < most_names && shares_word(name, typed) &&
        std::find(near.begin(), near.end(), name) == near.end())
      near.push_back(name);
  std::string list;
  for (const std::string& name : near) list += (list.empty() ? "\"" : ", \"") + name + "\"";
  return list;
}

template <class Tool>
const Tool& named(const Tools<Tool>& tools, const Json& name, const std::string& path) {
  expect(name.is_string(), name, path, "a name of the catalogue");
  const auto found = tools.find(name.get_ref<const std::string&>());
  if (found != tools.end()) return found->second;
  std::vector<std::string> known;
  for (const auto& [word, tool] : tools) known.push_back(word);
  const std::string near = near_names(known, name.get<std::string>().substr(0, longest_typed));
  expect(false, name, path,
         "a name of the catalogue; " + (near.empty() ? "" : "nearest known: " + near + "; ") +
             "the command \"libtexture tools\" lists all");
  return found->second;
}

template <class Tool>
Tool at_new_grit(const Tool& tool, const Json&, const std::string&) {
  return tool;
}

Abrasive at_new_grit(const Abrasive& abrasive, const Json& changes, const std::string& path) {
  Abrasive changed = abrasive;
  changed.family = family_of(abrasive);
  if (changes.contains("grit"))
    changed = at_grit(abrasive, value_from<Grit>(changes["grit"], key_path(path, "grit")));
  if (changes.contains("wear_rate_mm3_per_n_m")) changed.stated_grain_um.reset();  // stated for this grain
  return changed;
}

template <class Tool>
Tool find_tool(const Tools<Tool>& tools, const Json& value, const std::string& path) {
  if (value.is_string()) return named(tools, value, path);
  expect(value.is_object(), value, path, "a name of the catalogue, or a table");
  if (!value.contains("like")) return value_from<Tool>(value, path);
  const Tool base = named(tools, value["like"], key_path(path, "like"));
  Json changes = value;
  changes.erase("like");
  const Tool near = at_new_grit(base, changes, path);
  Json table = to_json(near);
  Json untold = changes;
  if (near.name != base.name) untold.erase("grit");  // the name tells it
  if (!untold.empty()) table["name"] = near.name + ", changed";
  table.merge_patch(changes);
  return value_from<Tool>(table, path);
}

/// The number at a path of a tool, "layers[0].modulus_mpa"; null where there is none.
Json number_at(const Json& tool, const std::string& path) {
  std::string pointer = "/";
  for (const char letter : path)
    if (letter != ']') pointer += letter == '.' || letter == '[' ? '/' : letter;
  try {
    const Json found = tool.at(Json::json_pointer(pointer));
    return found.is_number() ? found : Json();
  } catch (const Json::exception&) {
    return {};
  }
}

/// The ranges that a table states of its tool, after those of the tool that it is like, unless it replaces
/// the list that their number is in.
Ranges ranges_of(const Json& table, const Json& tool, const std::map<std::string, Ranges>& known,
                 const std::string& path) {
  Ranges ranges = value_from<Ranges>(table.value("ranges", Json::object()), key_path(path, "ranges"));
  for (const auto& [number, range] : ranges) {
    const std::string place = key_path(key_path(path, "ranges"), number);
    expect(!number_at(tool, number).is_null(), number, place, "the path of a number of this tool");
    expect(range[0] <= range[1], to_json(range), place, "[least, most]");
  }
  const auto like = known.find(table.value("like", ""));
  if (like == known.end()) return ranges;
  for (const auto& [number, range] : like->second) {
    const auto changed = table.find(number.substr(0, number.find('[')));
    if (changed == table.end() || !changed->is_array()) ranges.emplace(number, range);
  }
  return ranges;
}

/// The names of tables in an order in which each stands after the one of them that it is like.
std::vector<std::string> in_order(const Json& tables, const std::string& path) {
  std::vector<std::string> order;
  std::set<std::string> known;
  for (const auto& entry : tables.items()) {
    std::vector<std::string> chain;  // from this one to the last that is not known yet
    std::set<std::string> in_chain;
    for (std::string name = entry.key(); tables.contains(name) && !known.contains(name);) {
      const std::string tool_path = key_path(path, name);
      expect(tables[name].is_object(), tables[name], tool_path, "a table");
      const Json like = tables[name].value("like", Json());
      expect(in_chain.insert(name).second, like, key_path(tool_path, "like"),
             "a tool that is not in turn like this one");
      chain.push_back(name);
      if (!like.is_string() || like == name) break;  // like its own name: that of the catalogue before
      name = like.get<std::string>();
    }
    known.insert(chain.begin(), chain.end());
    order.insert(order.end(), chain.rbegin(), chain.rend());
  }
  return order;
}

/// Adds the tables of one kind. ranges: where those of the kind are kept; none = the tool holds them itself.
template <class Tool>
void extend(Tools<Tool>& tools, const Json& tables, const std::string& path,
            std::map<std::string, Ranges>* ranges = nullptr) {
  expect(tables.is_object(), tables, path, "a table of names");
  for (const std::string& name : in_order(tables, path)) {
    const std::string tool_path = key_path(path, name);
    Json table = tables[name];
    if (!table.contains("name")) table["name"] = name;
    expect(table["name"] == name, table["name"], key_path(tool_path, "name"), "the table's own name");
    if (ranges) table.erase("ranges");
    tools[name] = find_tool(tools, table, tool_path);
    if (ranges) (*ranges)[name] = ranges_of(tables[name], to_json(tools[name]), *ranges, tool_path);
  }
}

}  // namespace

const Catalogue& shipped_catalogue() {
  static const Catalogue catalogue = extended({}, parse_toml(catalogue_text, "catalogue.toml"));
  return catalogue;
}

Catalogue extended(const Catalogue& base, const ValueFile& file) {
  return with_place(file, [&] {
    check_keys(file.values, {"abrasive", "backing", "motion"}, {}, "");
    Catalogue catalogue = base;
    extend(catalogue.abrasives, file.values.value("abrasive", Json::object()), "abrasive");
    extend(catalogue.backings, file.values.value("backing", Json::object()), "backing",
           &catalogue.backing_ranges);
    extend(catalogue.motions, file.values.value("motion", Json::object()), "motion",
           &catalogue.motion_ranges);
    return catalogue;
  });
}

Abrasive find_abrasive(const Catalogue& catalogue, const Json& value, const std::string& path) {
  return find_tool(catalogue.abrasives, value, path);
}

Backing find_backing(const Catalogue& catalogue, const Json& value, const std::string& path) {
  return find_tool(catalogue.backings, value, path);
}

Motion find_motion(const Catalogue& catalogue, const Json& value, const std::string& path) {
  return find_tool(catalogue.motions, value, path);
}

}  // namespace libtexture
