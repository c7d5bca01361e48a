#pragma once
// Values: a struct with a field table becomes a Python class: keyword-only constructor, read-only properties,
// ==, repr, pickling, replace, dicts. Enums cross as their words, std::optional as None, std::vector as list.
// All of it works on descriptors, so that a struct costs the compiler little more than its table.

#include <pybind11/numpy.h>
#include <pybind11/operators.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <cstdint>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "docs.hpp"
#include "libtexture/io/describe.hpp"

namespace libtexture::python {

/// A seed: a whole number, or what a numpy Generator draws.
struct Seed {
  std::uint64_t value = 0;
};

/// The seed of a whole number, or one drawn from a numpy Generator; none where it is neither.
std::optional<Seed> seed_of(pybind11::handle value);

/// Throws InvalidInput that says what a seed is.
[[noreturn]] void throw_no_seed(pybind11::handle value);

/// Reads a word into an enum; false where it has no such word.
bool load_word(const Descriptor& descriptor, pybind11::handle value, void* into);

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
    return libtexture::python::load_word(libtexture::descriptor_of<T>(), source, &value);
  }
  static handle cast(T source, return_value_policy, handle) {
    return str(std::string(libtexture::name_of(source))).release();
  }
};

}  // namespace pybind11::detail

namespace libtexture::python {

namespace py = pybind11;

/// A value as the Python object that stands for it.
py::object python_of(const Descriptor& descriptor, const void* value);

/// A value as plain Python: dicts, lists, numbers and texts, as in JSON.
py::object plain_of(const Descriptor& descriptor, const void* value);

/// Reads plain Python into a new value; BadValue with the path where it is wrong.
void read_plain(py::handle plain, const std::string& path, const Descriptor& descriptor, void* into);

/// Reads a Python value into a field; InvalidInput names owner, field and type where it is another's.
void from_python(py::handle value, std::string_view owner, std::string_view field,
                 const Descriptor& descriptor, void* into);

template <class T>
T from_python(py::handle value, std::string_view owner, std::string_view field) {
  T result{};
  from_python(value, owner, field, descriptor_of<T>(), &result);
  return result;
}

/// Throws for a keyword that is no field, naming the nearest field.
void require_known(const py::kwargs& given, const std::vector<std::string>& known, const std::string& owner);

/// Throws for a field without default that was not given.
[[noreturn]] void throw_missing(const std::string& owner, const std::string& field);

/// Sets the fields of a new record from keywords, and validates it.
void fill(const py::kwargs& given, const std::string& owner, const Descriptor& descriptor, void* into);

template <HasFields T>
T value_of(const py::kwargs& given, const std::string& owner) {
  T value;
  fill(given, owner, descriptor_of<T>(), &value);
  return value;
}

/// ", name: type" or ", name: type = default" of each field, as in a constructor's signature.
std::string parameters_of(const Descriptor& descriptor);

/// "name: comment" of each field, a line each.
std::string field_docs(const Descriptor& descriptor, const std::string& owner);

/// Adds a function to a class as a method; `text` is its signature, and its comment below.
template <class Function, class... Extra>
void define(py::object& bound, const char* name, Function&& function, const std::string& text,
            const Extra&... extra) {
  py::options options;
  options.disable_function_signatures();
  const py::cpp_function method(std::forward<Function>(function), py::name(name), py::is_method(bound),
                                py::sibling(py::getattr(bound, name, py::none())), extra..., text.c_str());
  py::detail::add_class_method(bound, name, method);
}

/// Adds a function whose keywords are the fields of an options struct: function(..., py::kwargs).
/// before: its other parameters, as in a signature.
template <HasFields Options, class Function, class... Extra>
void def_with_options(py::module_& module, const char* options_name, const std::string& name,
                      const std::string& before, const std::string& returns, const std::string& comment,
                      const Function& function, const Extra&... extra) {
  const Descriptor& descriptor = descriptor_of<Options>();
  const bool has_star = before.find('*') != std::string::npos;
  const std::string signature =
      name + "(" + before + (has_star ? "" : ", *") + parameters_of(descriptor) + ") -> " + returns;
  const std::string text = signature + "\n\n" + comment + "\n" + field_docs(descriptor, options_name);
  py::options options;
  options.disable_function_signatures();
  module.def(name.c_str(), function, extra..., text.c_str());
}

/// Adds methods that our Python package carries out.
void def_html(py::object& bound);
void def_to_pandas(py::object& bound);
void def_to_xarray(py::object& bound);

/// Adds to a class what every value has.
void define_value(py::object& bound, const std::string& name, const Descriptor& descriptor);

/// Binds a plain struct by its field table: bind_fields<Motion>(module, "Motion").
template <HasFields T>
py::class_<T> bind_fields(py::module_& module, const char* name) {
  py::class_<T> bound(module, name, doc(name));
  define_value(bound, name, descriptor_of<T>());
  return bound;
}

}  // namespace libtexture::python
