#include "libtexture/io/bad_value.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <nlohmann/json.hpp>

#include "libtexture/base/text.hpp"

namespace libtexture {

std::string key_path(const std::string& path, std::string_view key) {
  const bool is_plain = !key.empty() && std::all_of(key.begin(), key.end(), [](unsigned char c) {
    return std::isalnum(c) || c == '_' || c == '-';
  });
  const char* quote = is_plain ? "" : "\"";
  std::string longer = path;
  longer.append(path.empty() ? "" : ".").append(quote).append(key).append(quote);
  return longer;
}

std::string element_path(const std::string& path, std::size_t index) {
  return path + "[" + std::to_string(index) + "]";
}

namespace {

bool is_compound(const Json& json) {
  return json.is_structured();
}

/// What came, as a reader of the message would write it; long values are cut.
std::string words_of(const Json& json) {
  if (json.is_object()) return "a table";
  const bool is_long = json.is_array() && json.size() > 4;
  if (json.is_array() && (is_long || std::any_of(json.begin(), json.end(), is_compound)))
    return "a list of " + std::to_string(json.size());
  if (json.is_null()) return "nothing";
  if (json.is_number_float() && !std::isfinite(json.get<double>()))
    return std::isnan(json.get<double>()) ? "nan" : "inf";
  if (json.is_string()) {
    std::string quoted = "\"";
    return quoted.append(shown(json.get_ref<const std::string&>())).append("\"");
  }
  return shown(json.dump(-1, ' ', false, Json::error_handler_t::replace));
}

std::string before(const std::string& path) {
  return path.empty() ? "" : shown(path, 200) + ": ";
}

[[noreturn]] void fail(const std::string& path, const std::string& message, const std::string& at) {
  throw BadValue(before(path) + message, at);
}

}  // namespace

void expect(bool ok, const Json& json, const std::string& path, std::string_view expected) {
  if (!ok) fail(path, "must be " + std::string(expected) + " (got " + words_of(json) + ")", path);
}

void check_keys(const Json& json, const std::vector<std::string>& known,
                const std::vector<std::string>& needed, const std::string& path) {
  for (const auto& [key, value] : json.items()) {
    if (std::find(known.begin(), known.end(), key) != known.end()) continue;
    const std::string nearest = nearest_word(key, known.data(), known.data() + known.size());
    std::string help = "nearest known: " + nearest;
    if (nearest.empty()) {
      help = "known:";
      for (const std::string& word : known) help.append(" ").append(word);
    }
    fail(path, "unknown key '" + shown(key) + "'; " + help, key_path(path, key));
  }
  for (const std::string& key : needed)
    if (!json.contains(key)) fail(path, "missing key '" + key + "'", path);
}

void fail_rule(const std::string& message, const std::vector<std::string>& known, const std::string& path) {
  // Rules read "Owner: field must ...": the field, or a path that starts at it, leads to the line of its own
  // key.
  const std::size_t colon = message.find(": ");
  const std::size_t start = colon == std::string::npos ? 0 : colon + 2;
  const std::string field = message.substr(start, message.find_first_of(" :", start) - start);
  const bool is_key =
      std::find(known.begin(), known.end(), field.substr(0, field.find_first_of(".["))) != known.end();
  const std::string at = path.empty() ? field : path + "." + field;
  fail(path, message, is_key ? at : path);
}

}  // namespace libtexture
