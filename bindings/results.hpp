#pragma once
// Results: structs that hold maps or other results. A table of their members gives Python properties,
// pickling, to_dict and from_dict; values.hpp does the same for plain values.

#include "arrays.hpp"
#include "libtexture/base/fields.hpp"
#include "libtexture/surface/height_field.hpp"
#include "values.hpp"

namespace libtexture::python {

/// The members of a result, in the order of the struct.
template <class T>
inline constexpr std::nullptr_t parts = nullptr;

template <class T>
concept HasParts = !std::is_null_pointer_v<std::remove_cvref_t<decltype(parts<T>)>>;

template <class T>
inline constexpr bool is_vector = false;
template <class T>
inline constexpr bool is_vector<std::vector<T>> = true;

/// A height field as plain values, and back.
inline py::dict plain_field(const HeightField& field) {
  py::dict plain;
  plain["pixel_mm"] = field.pixel_mm();
  plain["height_um"] = view(field.height_um(), py::none()).attr("tolist")();
  return plain;
}

template <class T>
T from_plain(py::handle plain, const std::string& owner, const std::string& name);

/// A member as plain values: dicts, lists, numbers and strings.
template <class T>
py::object plain_of(const T& value) {
  if constexpr (HasParts<T>) {
    py::dict plain;
    std::apply([&](const auto&... part) { ((plain[part.name] = plain_of(value.*part.member)), ...); },
               parts<T>);
    return plain;
  } else if constexpr (std::is_same_v<T, HeightField>) {
    return plain_field(value);
  } else if constexpr (std::is_same_v<T, Array2d>) {
    return view(value, py::none()).attr("tolist")();
  } else if constexpr (is_vector<T>) {
    py::list plain;
    for (const auto& element : value) plain.append(plain_of(element));
    return plain;
  } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, std::string> ||
                       std::is_same_v<T, std::optional<double>>) {
    return py::cast(value);
  } else {
    return plain_of(descriptor_of<T>(), &value);
  }
}

inline Array2d map_from_plain(py::handle rows, const std::string& owner, const std::string& name) {
  const py::object numbers = py::module_::import("numpy").attr("array")(rows, py::arg("dtype") = "float64");
  return map_of(numbers, owner, name);
}

template <class T>
T result_from_plain(py::handle plain, const std::string& owner) {
  require(py::isinstance<py::dict>(plain), owner, "fields", "must be a dict", std::string(py::repr(plain)));
  const auto given = py::reinterpret_borrow<py::kwargs>(plain);
  std::vector<std::string> known;
  std::apply([&](const auto&... part) { (known.emplace_back(part.name), ...); }, parts<T>);
  require_known(given, known, owner);
  const auto read = [&]<class Member>(const Field<T, Member>& part) {
    if (!given.contains(part.name)) throw_missing(owner, part.name);
    return from_plain<Member>(given[part.name], owner, part.name);
  };
  return std::apply([&](const auto&... part) { return T{read(part)...}; }, parts<T>);
}

/// The member that was made plain; ValueError names owner and member otherwise.
template <class T>
T from_plain(py::handle plain, const std::string& owner, const std::string& name) {
  if constexpr (HasParts<T>) {
    return result_from_plain<T>(plain, owner + "." + name);
  } else if constexpr (std::is_same_v<T, HeightField>) {
    require(py::isinstance<py::dict>(plain) && plain.contains("height_um") && plain.contains("pixel_mm"),
            owner, name, "must be a dict with height_um and pixel_mm", std::string(py::repr(plain)));
    return HeightField(map_from_plain(plain["height_um"], owner, "height_um"),
                       from_python<double>(plain["pixel_mm"], owner, "pixel_mm"));
  } else if constexpr (std::is_same_v<T, Array2d>) {
    return map_from_plain(plain, owner, name);
  } else if constexpr (is_vector<T>) {
    T values;
    for (const py::handle element : plain)
      values.push_back(from_plain<typename T::value_type>(element, owner, name));
    return values;
  } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, std::string> ||
                       std::is_same_v<T, std::optional<double>>) {
    return from_python<T>(plain, owner, name);
  } else {
    T value{};
    read_plain(plain, owner + "." + name, descriptor_of<T>(), &value);
    return value;
  }
}

/// Adds the read-only properties of the parts, with their comments; maps and rows of numbers are views.
template <HasParts T>
void bind_part_properties(py::class_<T>& bound, const std::string& name) {
  const auto bind_one = [&]<std::size_t I>(std::integral_constant<std::size_t, I>) {
    static constexpr auto part = std::get<I>(parts<T>);
    const char* text = doc(name + "::" + part.name);
    using Member = std::remove_cvref_t<decltype(std::declval<T>().*part.member)>;
    if constexpr (std::is_same_v<Member, Array2d> || std::is_same_v<Member, std::vector<double>>)
      bound.def_property_readonly(
          part.name, [](const py::object& self) { return view(self.cast<const T&>().*part.member, self); },
          text);
    else
      bound.def_readonly(part.name, part.member, text);
  };
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    (bind_one(std::integral_constant<std::size_t, I>{}), ...);
  }
  (std::make_index_sequence<std::tuple_size_v<std::remove_cvref_t<decltype(parts<T>)>>>{});
}

/// Binds a result by its table: bind_result<Levelled>(module, "Levelled").
template <HasParts T>
py::class_<T> bind_result(py::module_& module, const char* name) {
  py::class_<T> bound(module, name, doc(name));
  bind_part_properties<T>(bound, name);
  bound.def("to_dict", &plain_of<T>, "The members as plain values; maps as lists of rows.")
      .def_static(
          "from_dict",
          [owner = std::string(name)](const py::dict& members) {
            return result_from_plain<T>(members, owner);
          },
          py::arg("members"), "The result of such a dict; ValueError where a member is wrong.");
  def_html(bound);
  const auto members = [](const T& self) {
    return std::apply([&](const auto&... part) { return py::make_tuple(self.*part.member...); }, parts<T>);
  };
  const auto from_members = [](const py::tuple& state) {
    return [&]<std::size_t... I>(std::index_sequence<I...>) {
      return T{state[I]
                   .template cast<
                       std::remove_cvref_t<decltype(std::declval<T>().*std::get<I>(parts<T>).member)>>()...};
    }
    (std::make_index_sequence<std::tuple_size_v<std::remove_cvref_t<decltype(parts<T>)>>>{});
  };
  bound.def(py::pickle(members, from_members));
  return bound;
}

}  // namespace libtexture::python
