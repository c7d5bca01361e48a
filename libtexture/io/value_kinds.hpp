#pragma once
// Kinds of values: what a member of a struct can be besides another struct, and how the plain ones are read.

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "libtexture/io/bad_value.hpp"
#include "libtexture/tool/grit.hpp"

namespace libtexture::detail {

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};
template <class T>
struct IsArray : std::false_type {};
template <class T, std::size_t n>
struct IsArray<std::array<T, n>> : std::true_type {};
template <class T>
struct IsMap : std::false_type {};
template <class T>
struct IsMap<std::map<std::string, T>> : std::true_type {};

double read_number(const Json& json, const std::string& path);
std::int64_t read_integer(const Json& json, const std::string& path, std::int64_t least, std::int64_t most);
std::uint64_t read_unsigned(const Json& json, const std::string& path);
Grit read_grit(const Json& json, const std::string& path);
Json write_grit(const Grit& grit);

}  // namespace libtexture::detail
