#include "libtexture/io/values.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <limits>

namespace libtexture {

namespace {

using Form = Descriptor::Form;

/// What to write in place of a text that is a number in quotes; the decimal comma is mended too.
std::string number_advice(const Json& json) {
  if (!json.is_string()) return "";
  std::string text = json.get<std::string>();
  if (const std::size_t comma = text.find(','); comma != std::string::npos) text[comma] = '.';
  const char* const end = text.data() + text.size();
  double value{};
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  return error == std::errc{} && stop == end ? ": write " + text + ", without quotes" : "";
}

double read_number(const Json& json, const std::string& path) {
  expect(json.is_number(), json, path, "a number" + number_advice(json));
  const double number = json.get<double>();
  expect(std::isfinite(number), json, path, "a finite number");
  return number;
}

std::int64_t read_integer(const Json& json, const std::string& path, std::int64_t least, std::int64_t most) {
  const double number = json.is_number() ? json.get<double>() : unset;
  expect(number == std::trunc(number), json, path, "a whole number");
  const bool fits_64_bits = std::abs(number) < 0x1p63;
  const std::int64_t integer = fits_64_bits ? json.get<std::int64_t>() : 0;
  expect(fits_64_bits && integer >= least && integer <= most, json, path,
         "between " + std::to_string(least) + " and " + std::to_string(most));
  return integer;
}

std::uint64_t read_seed(const Json& json, const std::string& path) {
  if (json.is_number_unsigned()) return json.get<std::uint64_t>();
  expect(json.is_number_integer() && json.get<std::int64_t>() >= 0, json, path,
         "a whole number from 0 to 18446744073709551615");
  return json.get<std::uint64_t>();
}

Json write_grit(const Grit& grit) {
  return grit.has_grade() ? Json(grit.name()) : Json{{"median_um", grit.median_um()}};
}

std::size_t read_word(const Json& json, const std::string& path, const Descriptor& descriptor) {
  const auto found = std::find_if(descriptor.words.begin(), descriptor.words.end(),
                                  [&](std::string_view word) { return json == word; });
  std::string expected = "one of ";
  for (const std::string_view word : descriptor.words)
    expected.append(expected.size() > 7 ? ", " : "").append(word);
  expect(found != descriptor.words.end(), json, path, expected);
  return static_cast<std::size_t>(found - descriptor.words.begin());
}

void read_record(const Json& json, const std::string& path, const Descriptor& descriptor, void* into) {
  std::vector<std::string> known = descriptor.member_names(), needed;
  for (const auto& member : descriptor.members)
    if (member.is_required) needed.emplace_back(member.name);
  if (descriptor.text) known.emplace_back("text");
  expect(json.is_object(), json, path, "a table");
  check_keys(json, known, needed, path);
  for (const auto& member : descriptor.members)
    if (const auto found = json.find(member.name); found != json.end())
      read_value(*found, key_path(path, member.name), *member.type, member_of(into, member));
  if (!descriptor.validate) return;
  try {
    descriptor.validate(into);
  } catch (const InvalidInput& error) {
    fail_rule(error.what(), known, path);
  }
}

void read_list(const Json& json, const std::string& path, const Descriptor& descriptor, void* into) {
  expect(json.is_array(), json, path, "a list");
  descriptor.clear(into);
  for (std::size_t i = 0; i < json.size(); ++i)
    read_value(json[i], element_path(path, i), *descriptor.element, descriptor.append(into));
}

void read_array(const Json& json, const std::string& path, const Descriptor& descriptor, void* into) {
  const std::size_t size = descriptor.size(into);
  expect(json.is_array() && json.size() == size, json, path, "a list of " + std::to_string(size));
  for (std::size_t i = 0; i < size; ++i)
    read_value(json[i], element_path(path, i), *descriptor.element,
               const_cast<void*>(descriptor.at(into, i)));
}

void read_map(const Json& json, const std::string& path, const Descriptor& descriptor, void* into) {
  expect(json.is_object(), json, path, "a table");
  descriptor.clear(into);
  for (const auto& [key, element] : json.items())
    read_value(element, key_path(path, key), *descriptor.element, descriptor.insert(into, key));
}

bool read_boolean(const Json& json, const std::string& path) {
  expect(json.is_boolean(), json, path, "true or false");
  return json.get<bool>();
}

std::string read_text(const Json& json, const std::string& path) {
  expect(json.is_string(), json, path, "a text");
  return json.get<std::string>();
}

Json write_record(const Descriptor& descriptor, const void* value) {
  Json object = Json::object();
  for (const auto& member : descriptor.members) {
    const void* field = member_of(value, member);
    if (is_given(*member.type, field)) object[member.name] = to_json(*member.type, field);
  }
  if (descriptor.text) object["text"] = descriptor.text(value);
  return object;
}

Json write_list(const Descriptor& descriptor, const void* value) {
  Json list = Json::array();
  const std::size_t size = descriptor.size(value);
  for (std::size_t i = 0; i < size; ++i)
    list.push_back(to_json(*descriptor.element, descriptor.at(value, i)));
  return list;
}

Json write_map(const Descriptor& descriptor, const void* value) {
  Json object = Json::object();
  descriptor.for_each(value, [&](const std::string& key, const void* element) {
    object[key] = to_json(*descriptor.element, element);
  });
  return object;
}

}  // namespace

Grit read_grit(const Json& json, const std::string& path) {
  const bool has_median = json.is_object() && json.size() == 1 && json.contains("median_um");
  expect(json.is_string() || has_median, json, path, "a grade such as \"P2500\", or { median_um = 3 }");
  const double median_um = has_median ? read_number(json["median_um"], key_path(path, "median_um")) : 0;
  try {
    return has_median ? Grit::of_median_um(median_um) : Grit(json.get_ref<const std::string&>());
  } catch (const InvalidInput& error) {
    fail_rule(error.what(), {}, path);
  }
}

Json to_json(const Descriptor& descriptor, const void* value) {
  switch (descriptor.form) {
    case Form::boolean:
      return *static_cast<const bool*>(value);
    case Form::integer:
      return *static_cast<const int*>(value);
    case Form::seed:
      return *static_cast<const std::uint64_t*>(value);
    case Form::number:
      return *static_cast<const double*>(value);
    case Form::text:
      return *static_cast<const std::string*>(value);
    case Form::word:
      return descriptor.words.at(descriptor.word_index(value));
    case Form::grit:
      return write_grit(*static_cast<const Grit*>(value));
    case Form::optional:
      return descriptor.size(value) == 1 ? to_json(*descriptor.element, descriptor.at(value, 0)) : Json();
    case Form::list:
    case Form::array:
      return write_list(descriptor, value);
    case Form::map:
      return write_map(descriptor, value);
    case Form::record:
      return write_record(descriptor, value);
  }
  return {};
}

void read_value(const Json& json, const std::string& path, const Descriptor& descriptor, void* into) {
  switch (descriptor.form) {
    case Form::boolean:
      *static_cast<bool*>(into) = read_boolean(json, path);
      break;
    case Form::integer: {
      using Limits = std::numeric_limits<int>;
      *static_cast<int*>(into) = static_cast<int>(read_integer(json, path, Limits::min(), Limits::max()));
      break;
    }
    case Form::seed:
      *static_cast<std::uint64_t*>(into) = read_seed(json, path);
      break;
    case Form::number:
      *static_cast<double*>(into) = read_number(json, path);
      break;
    case Form::text:
      *static_cast<std::string*>(into) = read_text(json, path);
      break;
    case Form::word:
      descriptor.set_word(into, read_word(json, path, descriptor));
      break;
    case Form::grit:
      *static_cast<Grit*>(into) = read_grit(json, path);
      break;
    case Form::optional:
      descriptor.clear(into);
      if (!json.is_null()) read_value(json, path, *descriptor.element, descriptor.append(into));
      break;
    case Form::list:
      read_list(json, path, descriptor, into);
      break;
    case Form::array:
      read_array(json, path, descriptor, into);
      break;
    case Form::map:
      read_map(json, path, descriptor, into);
      break;
    case Form::record:
      read_record(json, path, descriptor, into);
      break;
  }
}

}  // namespace libtexture
