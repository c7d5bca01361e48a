#pragma once
// Values: a struct with a field table becomes a Python class: keyword-only constructor, read-only properties,
// ==, repr, pickling, replace, dicts. Enums cross as their words, std::optional as None, std::vector as list.

#include <pybind11/numpy.h>
#include <pybind11/operators.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "docs.hpp"
#include "libtexture/base/fields.hpp"
#include "libtexture/io/values.hpp"

namespace libtexture::python {

/// A seed: a whole number, or what a numpy Generator draws.
struct Seed {
  std::uint64_t value = 0;
};

/// The seed of a whole number, or one drawn from a numpy Generator; none where it is neither.
std::optional<Seed> seed_of(pybind11::handle value);

/// Throws InvalidInput that says what a seed is.
[[noreturn]] void throw_no_seed(pybind11::handle value);

}  // namespace libtexture::python

namespace pybind11::detail {

template <>
struct type_caster<libtexture::python::Seed> {
  PYBIND11_TYPE_CASTER(libtexture::python::Seed, const_name("int | numpy.random.Generator"));

  bool load(handle source, bool) {
    const auto seed = libtexture::python::seed_of(source);
    if (!seed) libtexture::python::throw_no_seed(source);  // a wrong value, not a wrong call
    value = *seed;
    return true;
  }
};

#if PYBIND11_VERSION_HEX >= 0x03000000
template <libtexture::HasNames T>
struct type_caster_enum_type_enabled<T> : std::false_type {};
#endif

template <libtexture::HasNames T>
struct type_caster<T> {
  PYBIND11_TYPE_CASTER(T, const_name("str"));

  bool load(handle source, bool) {
    if (!isinstance<str>(source)) return false;
    const auto word = source.cast<std::string>();
    for (const auto& entry : names_of(T{})) {
      if (word != entry.second) continue;
      value = entry.first;
      return true;
    }
    return false;
  }
  static handle cast(T source, return_value_policy, handle) {
    return str(std::string(libtexture::name_of(source))).release();
  }
};

}  // namespace pybind11::detail

namespace libtexture::python {

namespace py = pybind11;

/// A class that is made of its name, as a grit is.
template <class T>
inline constexpr bool is_named_by_text =
    std::is_class_v<T> && !std::is_same_v<T, std::string> && std::is_constructible_v<T, std::string_view>;

/// The Python type of a field, as in an annotation.
template <class T>
struct TypeName {
  static std::string get() {
    if constexpr (HasNames<T>) {
      std::string words;
      for (const auto& entry : names_of(T{}))
        words += (words.empty() ? "'" : ", '") + std::string(entry.second) + "'";
      return "Literal[" + words + "]";
    } else if constexpr (std::is_same_v<T, bool>) {
      return "bool";
    } else if constexpr (std::is_same_v<T, std::uint64_t>) {
      return "int | numpy.random.Generator";  // fields of this type are seeds
    } else if constexpr (std::is_integral_v<T>) {
      return "int";
    } else if constexpr (std::is_floating_point_v<T>) {
      return "float";
    } else if constexpr (std::is_same_v<T, std::string>) {
      return "str";
    } else {
      const std::string name = py::str(py::type::of<T>().attr("__name__"));
      return is_named_by_text<T> ? name + " | str" : name;
    }
  }
};
template <class T>
struct TypeName<std::optional<T>> {
  static std::string get() { return TypeName<T>::get() + " | None"; }
};
template <class T>
struct TypeName<std::vector<T>> {
  static std::string get() { return "list[" + TypeName<T>::get() + "]"; }
};
template <class T, std::size_t N>
struct TypeName<std::array<T, N>> {
  static std::string get() { return "list[" + TypeName<T>::get() + "]"; }
};
template <class Key, class T>
struct TypeName<std::map<Key, T>> {
  static std::string get() { return "dict[" + TypeName<Key>::get() + ", " + TypeName<T>::get() + "]"; }
};

/// Throws InvalidInput that says what the field takes.
[[noreturn]] void throw_wrong_type(py::handle value, std::string_view owner, std::string_view field,
                                   std::string_view type);

/// A Python value as a field's; InvalidInput names owner, field and type otherwise.
template <class T>
T from_python(py::handle value, std::string_view owner, std::string_view field) {
  if constexpr (std::is_class_v<T> && !std::is_same_v<T, std::string> &&
                std::is_constructible_v<T, std::string_view>)
    if (py::isinstance<py::str>(value))
      return T(std::string_view(value.cast<std::string>()));  // a grit by its name
  if constexpr (HasNames<T>)
    if (py::isinstance<py::str>(value)) return from_name<T>(value.cast<std::string>(), owner, field);
  if constexpr (std::is_same_v<T, std::uint64_t>)
    if (const auto seed = seed_of(value)) return seed->value;
  py::detail::make_caster<T> caster;
  if (!caster.load(value, true)) throw_wrong_type(value, owner, field, TypeName<T>::get());
  return py::detail::cast_op<T>(std::move(caster));
}

template <class T>
std::vector<std::string> field_names() {
  std::vector<std::string> names;
  for_each_field<T>([&](const auto& field) { names.emplace_back(field.name); });
  return names;
}

/// Throws for a keyword that is no field, naming the nearest field.
void require_known(const py::kwargs& given, const std::vector<std::string>& known, const std::string& owner);

/// Throws for a field without default that was not given.
[[noreturn]] void throw_missing(const std::string& owner, const std::string& field);

template <HasFields T>
T value_of(const py::kwargs& given, const std::string& owner) {
  require_known(given, field_names<T>(), owner);
  T value;
  for_each_field<T>([&](const auto& field) {
    using Member = std::remove_reference_t<decltype(value.*field.member)>;
    if (given.contains(field.name))
      value.*field.member = from_python<Member>(given[field.name], owner, field.name);
    else if (field.is_required)
      throw_missing(owner, field.name);
  });
  if constexpr (requires { value.validate(); }) value.validate();
  return value;
}

template <HasFields T>
py::dict fields_of(const T& value) {
  py::dict fields;
  for_each_field<T>([&](const auto& field) { fields[field.name] = py::cast(value.*field.member); });
  return fields;
}

/// "name: type" or "name: type = default" of each field, as in a constructor's signature.
template <HasFields T>
std::string parameters_of() {
  std::string text;
  const T defaults;
  for_each_field<T>([&](const auto& field) {
    using Member = std::remove_cvref_t<decltype(defaults.*field.member)>;
    text += std::string(", ") + field.name + ": " + TypeName<Member>::get();
    if (field.is_required) return;
    const py::object value = py::cast(defaults.*field.member);
    const bool is_plain = py::type::of(value).attr("__module__").cast<std::string>() == "builtins";
    text += " = " + (is_plain ? std::string(py::repr(value)) : "...");
  });
  return text;
}

/// "name: comment" of each field, a line each.
template <HasFields T, Name name>
std::string field_docs() {
  std::string text;
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    ((text += std::string("\n    ") + std::get<I>(T::fields()).name + ": " +
              find_doc(name.text, std::get<I>(T::fields()).name)),
     ...);
  }
  (std::make_index_sequence<std::tuple_size_v<decltype(T::fields())>>{});
  return text;
}

/// Adds a function whose keywords are the fields of an options struct: function(..., py::kwargs).
/// before: its other parameters, as in a signature.
template <HasFields Options, Name options_name, class Function, class... Extra>
void def_with_options(py::module_& module, const std::string& name, const std::string& before,
                      const std::string& returns, const std::string& comment, const Function& function,
                      const Extra&... extra) {
  const bool has_star = before.find('*') != std::string::npos;
  const std::string signature =
      name + "(" + before + (has_star ? "" : ", *") + parameters_of<Options>() + ") -> " + returns;
  const std::string text = signature + "\n\n" + comment + "\n" + field_docs<Options, options_name>();
  py::options options;
  options.disable_function_signatures();
  module.def(name.c_str(), function, extra..., text.c_str());
}

/// JSON as Python's own dicts, lists, numbers and strings, and back.
py::object object_of(const Json& json);
Json json_of(py::handle object);

/// A constructor call; fields that hold their default are left out.
template <HasFields T>
std::string repr_of(const T& value, const std::string& name) {
  std::string text;
  const py::dict given = fields_of(value);
  const py::dict defaults = fields_of(T{});
  for_each_field<T>([&](const auto& field) {
    if (!field.is_required && given[field.name].equal(defaults[field.name])) return;
    text +=
        (text.empty() ? "" : ", ") + std::string(field.name) + "=" + std::string(py::repr(given[field.name]));
  });
  return name + "(" + text + ")";
}

/// Adds the read-only properties of the fields, with their comments. For results, and as a part of
/// bind_fields.
template <HasFields T, Name name>
void bind_properties(py::class_<T>& bound) {
  const auto bind_one = [&]<std::size_t I>(std::integral_constant<std::size_t, I>) {
    static constexpr auto field = std::get<I>(T::fields());
    static constexpr const char* text = find_doc(name.text, field.name);
    bound.def_property_readonly(field.name,
                                py::cpp_function([](const T& self) { return self.*field.member; }), text);
  };
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    (bind_one(std::integral_constant<std::size_t, I>{}), ...);
  }
  (std::make_index_sequence<std::tuple_size_v<decltype(T::fields())>>{});
}

/// Adds a method that a function of our Python package carries out: module "html", function "html_of".
template <class T>
void def_in_python(py::class_<T>& bound, const char* method, const char* module, const char* function,
                   const char* signature_and_doc) {
  py::options options;
  options.disable_function_signatures();
  bound.def(
      method,
      [module, function](const py::object& self) {
        return py::module_::import((std::string("libtexture.") + module).c_str()).attr(function)(self);
      },
      signature_and_doc);
}

template <class T>
void def_html(py::class_<T>& bound) {
  def_in_python(bound, "_repr_html_", "html", "html_of",
                "_repr_html_(self) -> str\n\nA table, for notebooks.");
}

template <class T>
void def_to_pandas(py::class_<T>& bound) {
  def_in_python(bound, "to_pandas", "frames", "to_pandas",
                "to_pandas(self) -> Any\n\nA pandas.DataFrame; ImportError where pandas is not installed.");
}

template <class T>
void def_to_xarray(py::class_<T>& bound) {
  def_in_python(
      bound, "to_xarray", "frames", "to_xarray",
      "to_xarray(self) -> Any\n\nAn xarray.Dataset with coordinates in mm; ImportError where xarray is not "
      "installed.");
}

/// Binds a plain struct by its field table: bind_fields<Motion, "Motion">(module).
template <HasFields T, Name name_>
py::class_<T> bind_fields(py::module_& module) {
  const std::string name = name_.text;
  py::class_<T> bound(module, name_.text, doc<name_>);
  bind_properties<T, name_>(bound);
  const std::string signature = "__init__(self, *" + parameters_of<T>() + ") -> None";
  {
    py::options options;
    options.disable_function_signatures();
    bound.def(py::init([name](const py::args& positional, const py::kwargs& given) {
                if (!positional.empty()) throw py::type_error(name + " takes keyword arguments only");
                return value_of<T>(given, name);
              }),
              signature.c_str());
    bound.def(
        "replace",
        [name](const T& self, const py::kwargs& changes) {
          const py::dict given = fields_of(self);
          given.attr("update")(changes);
          return value_of<T>(py::reinterpret_borrow<py::kwargs>(given), name);
        },
        ("replace(self, **changes) -> " + name + "\n\nThe same value with some fields changed.").c_str());
  }
  bound
      .def(
          "to_dict", [](const T& self) { return object_of(to_json(self)); },
          "The fields as plain values, as in JSON.")
      .def_static(
          "from_dict", [](const py::dict& fields) { return value_from<T>(json_of(fields)); },
          py::arg("fields"), "The value of such a dict; ValueError, with the path, where a field is wrong.");
  def_html(bound);
  bound.def(py::self == py::self)
      .def("__repr__", [name](const T& self) { return repr_of(self, name); })
      .def(py::pickle(&fields_of<T>, [name](const py::dict& state) {
        return value_of<T>(py::reinterpret_borrow<py::kwargs>(state), name);
      }));
  return bound;
}

}  // namespace libtexture::python
