#pragma once
// Values: any struct with a field table, to JSON and back. Job files, Python dicts, reports and pickles all
// pass here.

#include <concepts>
#include <limits>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/io/value_kinds.hpp"

namespace libtexture {

/// A value as JSON. Fields that are not given (empty optionals, unset numbers) are left out; a grit is its
/// name, or {"median_um": 3} without a grade; an enum is its word.
template <class T>
Json to_json(const T& value);

/// The value that `json` holds, every struct in it validated; not named from_json, as the JSON library's own
/// function would be found too. Throws BadValue, with the path before the message: unknown keys (with the
/// nearest known one), missing keys, wrong types, numbers that are not finite, broken rules.
template <class T>
T value_from(const Json& json, const std::string& path = "");

namespace detail {

template <class T>
bool is_given(const T& value) {
  if constexpr (std::floating_point<T>) return value == value;
  if constexpr (IsOptional<T>::value) return value.has_value();
  return true;
}

template <HasNames T>
T read_word(const Json& json, const std::string& path) {
  std::string words;
  for (const auto& [value, name] : names_of(T{})) {
    if (json == name) return value;
    words.append(words.empty() ? "one of " : ", ").append(name);
  }
  expect(false, json, path, words);
  return T{};
}

template <HasFields T>
T read_struct(const Json& json, const std::string& path) {
  std::vector<std::string> known, needed;
  for_each_field<T>([&](const auto& field) {
    known.emplace_back(field.name);
    if (field.is_required) needed.emplace_back(field.name);
  });
  if constexpr (HasText<T>) known.emplace_back("text");
  expect(json.is_object(), json, path, "a table");
  check_keys(json, known, needed, path);
  T value{};
  for_each_field<T>([&](const auto& field) {
    using Member = std::decay_t<decltype(value.*field.member)>;
    if (const auto found = json.find(field.name); found != json.end())
      value.*field.member = value_from<Member>(*found, key_path(path, field.name));
  });
  if constexpr (requires { value.validate(); }) {
    try {
      value.validate();
    } catch (const InvalidInput& error) {
      fail_rule(error.what(), known, path);
    }
  }
  return value;
}

}  // namespace detail

template <class T>
Json to_json(const T& value) {
  if constexpr (HasFields<T>) {
    Json object = Json::object();
    for_each_field<T>([&](const auto& field) {
      const auto& member = value.*field.member;
      if (detail::is_given(member)) object[field.name] = to_json(member);
    });
    if constexpr (HasText<T>) object["text"] = value.text();
    return object;
  } else if constexpr (HasNames<T>) {
    return Json(name_of(value));
  } else if constexpr (std::same_as<T, Grit>) {
    return detail::write_grit(value);
  } else if constexpr (detail::IsOptional<T>::value) {
    return value ? to_json(*value) : Json();
  } else if constexpr (detail::IsVector<T>::value || detail::IsArray<T>::value) {
    Json list = Json::array();
    for (const typename T::value_type& element : value) list.push_back(to_json(element));
    return list;
  } else if constexpr (detail::IsMap<T>::value) {
    Json object = Json::object();
    for (const auto& [key, element] : value) object[key] = to_json(element);
    return object;
  } else {
    static_assert(std::is_arithmetic_v<T> || std::same_as<T, std::string>, "this type has no JSON form");
    return Json(value);
  }
}

template <class T>
T value_from(const Json& json, const std::string& path) {
  if constexpr (HasFields<T>) {
    return detail::read_struct<T>(json, path);
  } else if constexpr (HasNames<T>) {
    return detail::read_word<T>(json, path);
  } else if constexpr (std::same_as<T, Grit>) {
    return detail::read_grit(json, path);
  } else if constexpr (detail::IsOptional<T>::value) {
    return json.is_null() ? T() : T(value_from<typename T::value_type>(json, path));
  } else if constexpr (detail::IsVector<T>::value) {
    expect(json.is_array(), json, path, "a list");
    T list;
    for (std::size_t i = 0; i < json.size(); ++i)
      list.push_back(value_from<typename T::value_type>(json[i], element_path(path, i)));
    return list;
  } else if constexpr (detail::IsArray<T>::value) {
    T list{};
    const std::string expected = "a list of " + std::to_string(list.size());
    expect(json.is_array() && json.size() == list.size(), json, path, expected);
    for (std::size_t i = 0; i < list.size(); ++i)
      list[i] = value_from<typename T::value_type>(json[i], element_path(path, i));
    return list;
  } else if constexpr (detail::IsMap<T>::value) {
    expect(json.is_object(), json, path, "a table");
    T map;
    for (const auto& [key, element] : json.items())
      map.emplace(key, value_from<typename T::mapped_type>(element, key_path(path, key)));
    return map;
  } else if constexpr (std::same_as<T, bool>) {
    expect(json.is_boolean(), json, path, "true or false");
    return json.get<bool>();
  } else if constexpr (std::same_as<T, std::string>) {
    expect(json.is_string(), json, path, "a text");
    return json.get<std::string>();
  } else if constexpr (std::floating_point<T>) {
    return static_cast<T>(detail::read_number(json, path));
  } else if constexpr (std::same_as<T, std::uint64_t>) {
    return detail::read_unsigned(json, path);
  } else {
    static_assert(std::signed_integral<T>, "this type has no JSON form");
    using Limits = std::numeric_limits<T>;
    return static_cast<T>(detail::read_integer(json, path, Limits::min(), Limits::max()));
  }
}

}  // namespace libtexture
