#pragma once
// Fields: one table per plain struct, from which the job reader, JSON, Python constructors, pickling and repr
// all work, so that a name is written once.
//
//   struct Motion {
//     double force_n = unset;
//     double orbit_mm = 0;
//     static constexpr auto fields() {
//       return FieldTable{required("force_n", &Motion::force_n), optional("orbit_mm", &Motion::orbit_mm)};
//     }
//   };

#include <array>
#include <cstddef>
#include <limits>
#include <string_view>
#include <utility>

#include "libtexture/base/error.hpp"

namespace libtexture {

/// What a number holds before it is given; every rule (> 0, within ...) refuses it.
inline constexpr double unset = std::numeric_limits<double>::quiet_NaN();

template <class Struct, class Member>
struct Field {
  const char* name;
  Member Struct::*member;
  bool is_required;
};

template <class Struct, class Member>
constexpr Field<Struct, Member> required(const char* name, Member Struct::*member) {
  return {name, member, true};
}

template <class Struct, class Member>
constexpr Field<Struct, Member> optional(const char* name, Member Struct::*member) {
  return {name, member, false};
}

namespace detail {

template <std::size_t, class Field>
struct FieldAt {
  Field field;
};

template <class Indices, class... Fields>
struct FieldTableBase;
template <std::size_t... I, class... Fields>
struct FieldTableBase<std::index_sequence<I...>, Fields...> : FieldAt<I, Fields>... {
  constexpr FieldTableBase(const Fields&... fields) : FieldAt<I, Fields>{fields}... {}

  template <class Visit>
  constexpr void for_each(Visit& visit) const {
    (visit(static_cast<const FieldAt<I, Fields>&>(*this).field), ...);
  }
};

}  // namespace detail

/// The fields of a struct, in order. Not a std::tuple, whose constructors cost the compiler a second a file.
template <class... Fields>
struct FieldTable : detail::FieldTableBase<std::index_sequence_for<Fields...>, Fields...> {
  using detail::FieldTableBase<std::index_sequence_for<Fields...>, Fields...>::FieldTableBase;
};
template <class... Fields>
FieldTable(const Fields&...) -> FieldTable<Fields...>;

/// A struct with a field table.
template <class T>
concept HasFields = requires {
  T::fields();
};

/// A struct that puts itself into words, text(): its JSON holds them as well, for readers; reading passes
/// over them.
template <class T>
concept HasText = HasFields<T> && requires(const T& value) {
  value.text();
};

/// Calls visit(field) for each entry of the table, in order.
template <HasFields T, class Visit>
void for_each_field(Visit&& visit) {
  T::fields().for_each(visit);
}

/// An enum whose words are listed by names_of(T), found beside the enum:
///   constexpr std::array<std::pair<Wetness, const char*>, 3> names_of(Wetness) { ... }
template <class T>
concept HasNames = requires(T value) {
  names_of(value);
};

/// The word of an enum's value.
template <HasNames T>
constexpr std::string_view name_of(T value) {
  for (const auto& [candidate, name] : names_of(value))
    if (candidate == value) return name;
  return "";
}

/// The enum's value of a word; InvalidInput with the known words otherwise.
template <HasNames T>
T from_name(std::string_view word, std::string_view owner, std::string_view field) {
  std::string rule = "must be one of";
  for (const auto& [value, name] : names_of(T{})) {
    if (word == name) return value;
    rule.append(" ").append(name);
  }
  require(false, owner, field, rule, word);
  return T{};
}

}  // namespace libtexture
