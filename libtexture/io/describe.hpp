#pragma once
// The descriptors of our types, made from their field tables.

#include <array>
#include <concepts>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/io/descriptor.hpp"
#include "libtexture/tool/grit.hpp"

namespace libtexture {

/// The descriptor of a type: a number, text or word, an optional, list, array or map of such, or a struct
/// with a field table.
template <class T>
const Descriptor& descriptor_of();

namespace detail {

template <class T>
T& as(std::conditional_t<std::is_const_v<T>, const void*, void*> value) {
  return *static_cast<T*>(value);
}

template <class T>
Descriptor describe_word() {
  Descriptor result{Descriptor::Form::word, &typeid(T)};
  for (const auto& entry : names_of(T{})) result.words.emplace_back(entry.second);
  result.word_index = [](const void* value) {
    std::size_t index = 0;
    for (const auto& entry : names_of(T{})) {
      if (entry.first == as<const T>(value)) break;
      ++index;
    }
    return index;
  };
  result.set_word = [](void* value, std::size_t index) { as<T>(value) = names_of(T{}).begin()[index].first; };
  return result;
}

template <class T>
void describe_member(Descriptor& record, const T& sample, const auto& field) {
  const auto& member = sample.*field.member;
  record.members.push_back({field.name,
                            reinterpret_cast<const char*>(&member) - reinterpret_cast<const char*>(&sample),
                            &descriptor_of<std::remove_cvref_t<decltype(member)>>(), field.is_required});
}

template <HasFields T>
Descriptor describe_record() {
  Descriptor result{Descriptor::Form::record, &typeid(T)};
  const T sample{};
  for_each_field<T>([&](const auto& field) { describe_member<T>(result, sample, field); });
  result.make = []() -> void* { return new T{}; };
  result.copy = [](const void* from) -> void* { return new T(as<const T>(from)); };
  result.destroy = [](void* value) { delete static_cast<T*>(value); };
  result.assign = [](void* to, const void* from) { as<T>(to) = as<const T>(from); };
  if constexpr (std::equality_comparable<T>)
    result.equal = [](const void* a, const void* b) { return as<const T>(a) == as<const T>(b); };
  if constexpr (requires(const T& value) { value.validate(); })
    result.validate = [](const void* value) { as<const T>(value).validate(); };
  if constexpr (HasText<T>) result.text = [](const void* value) { return as<const T>(value).text(); };
  return result;
}

template <class T>
Descriptor described(const T*) {
  using Form = Descriptor::Form;
  if constexpr (HasFields<T>)
    return describe_record<T>();
  else if constexpr (HasNames<T>)
    return describe_word<T>();
  else if constexpr (std::same_as<T, bool>)
    return {Form::boolean, &typeid(T)};
  else if constexpr (std::same_as<T, int>)
    return {Form::integer, &typeid(T)};
  else if constexpr (std::same_as<T, std::uint64_t>)
    return {Form::seed, &typeid(T)};
  else if constexpr (std::same_as<T, double>)
    return {Form::number, &typeid(T)};
  else if constexpr (std::same_as<T, std::string>)
    return {Form::text, &typeid(T)};
  else {
    static_assert(std::same_as<T, Grit>, "this type has no descriptor");
    return {Form::grit, &typeid(T)};
  }
}

template <class Element>
Descriptor described(const std::optional<Element>*) {
  using T = std::optional<Element>;
  Descriptor result{Descriptor::Form::optional, &typeid(T), &descriptor_of<Element>()};
  result.size = [](const void* value) -> std::size_t { return as<const T>(value).has_value(); };
  result.at = [](const void* value, std::size_t) -> const void* { return &*as<const T>(value); };
  result.append = [](void* value) -> void* { return &as<T>(value).emplace(); };
  result.clear = [](void* value) { as<T>(value).reset(); };
  return result;
}

template <class Element>
Descriptor described(const std::vector<Element>*) {
  using T = std::vector<Element>;
  Descriptor result{Descriptor::Form::list, &typeid(T), &descriptor_of<Element>()};
  result.size = [](const void* value) { return as<const T>(value).size(); };
  result.at = [](const void* value, std::size_t i) -> const void* { return &(as<const T>(value))[i]; };
  result.append = [](void* value) -> void* { return &as<T>(value).emplace_back(); };
  result.clear = [](void* value) { as<T>(value).clear(); };
  return result;
}

template <class Element, std::size_t size>
Descriptor described(const std::array<Element, size>*) {
  using T = std::array<Element, size>;
  Descriptor result{Descriptor::Form::array, &typeid(T), &descriptor_of<Element>()};
  result.size = [](const void*) { return size; };
  result.at = [](const void* value, std::size_t i) -> const void* { return &(as<const T>(value))[i]; };
  return result;
}

template <class Element>
Descriptor described(const std::map<std::string, Element>*) {
  using T = std::map<std::string, Element>;
  Descriptor result{Descriptor::Form::map, &typeid(T), &descriptor_of<Element>()};
  result.for_each = [](const void* value, const auto& visit) {
    for (const auto& [key, element] : as<const T>(value)) visit(key, &element);
  };
  result.insert = [](void* value, const std::string& key) -> void* { return &(as<T>(value))[key]; };
  result.clear = [](void* value) { as<T>(value).clear(); };
  return result;
}

}  // namespace detail

template <class T>
const Descriptor& descriptor_of() {
  static const Descriptor descriptor = detail::described(static_cast<const T*>(nullptr));
  return descriptor;
}

}  // namespace libtexture
