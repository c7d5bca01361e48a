#include "values.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "libtexture/io/values.hpp"

namespace libtexture::python {

namespace {

using Form = Descriptor::Form;

py::handle class_of(const Descriptor& descriptor) {
  return py::detail::get_type_handle(*descriptor.type, true);
}

/// The record that a Python object of its class holds; TypeError for another, or one whose __init__ never
/// ran.
void* record_of(const Descriptor& descriptor, py::handle self) {
  const py::handle type = class_of(descriptor);
  const std::string name = py::str(type.attr("__name__"));
  if (!py::isinstance(self, type)) throw py::type_error(name + ": another type was given");
  const auto* info = py::detail::get_type_info(reinterpret_cast<PyTypeObject*>(type.ptr()));
  auto held = reinterpret_cast<py::detail::instance*>(self.ptr())->get_value_and_holder(info);
  if (!held.value_ptr()) throw py::type_error(name + ": __init__ was not called");
  return held.value_ptr();
}

py::object python_of_record(const Descriptor& descriptor, const void* value) {
  const auto* info = py::detail::get_type_info(*descriptor.type, true);
  return py::reinterpret_steal<py::object>(py::detail::type_caster_generic::cast(
      value, py::return_value_policy::take_ownership, {}, info, nullptr, nullptr));
}

/// A list, or a dict of a map, whose elements are made by `make`.
template <class Make>
py::object container_of(const Descriptor& descriptor, const void* value, const Make& make) {
  if (descriptor.form == Form::map) {
    py::dict map;
    descriptor.for_each(value, [&](const std::string& key, const void* element) {
      map[py::str(key)] = make(*descriptor.element, element);
    });
    return map;
  }
  py::list list;
  const std::size_t size = descriptor.size(value);
  for (std::size_t i = 0; i < size; ++i) list.append(make(*descriptor.element, descriptor.at(value, i)));
  return list;
}

template <class Simple>
bool load_simple(py::handle value, void* into) {
  py::detail::make_caster<Simple> caster;
  if (!caster.load(value, true)) return false;
  *static_cast<Simple*>(into) = py::detail::cast_op<Simple>(caster);
  return true;
}

bool load(const Descriptor& descriptor, py::handle value, void* into);

bool load_list(const Descriptor& descriptor, py::handle value, void* into) {
  if (!py::isinstance<py::sequence>(value) || py::isinstance<py::str>(value) ||
      py::isinstance<py::bytes>(value))
    return false;
  const auto sequence = py::reinterpret_borrow<py::sequence>(value);
  const bool is_array = descriptor.form == Form::array;
  if (is_array && sequence.size() != descriptor.size(into)) return false;
  if (!is_array) descriptor.clear(into);
  std::size_t i = 0;
  for (const py::handle element : sequence) {
    void* place = is_array ? const_cast<void*>(descriptor.at(into, i++)) : descriptor.append(into);
    if (!load(*descriptor.element, element, place)) return false;
  }
  return true;
}

bool load_map(const Descriptor& descriptor, py::handle value, void* into) {
  if (!py::isinstance<py::dict>(value)) return false;
  descriptor.clear(into);
  for (const auto& [key, element] : py::reinterpret_borrow<py::dict>(value))
    if (!py::isinstance<py::str>(key) ||
        !load(*descriptor.element, element, descriptor.insert(into, key.cast<std::string>())))
      return false;
  return true;
}

bool load_grit(py::handle value, void* into) {
  if (py::isinstance<py::str>(value)) {
    *static_cast<Grit*>(into) = Grit(value.cast<std::string>());
    return true;
  }
  return load_simple<Grit>(value, into);
}

/// A record of its class, or a dict of its fields.
bool load_record(const Descriptor& descriptor, py::handle value, void* into) {
  if (py::isinstance<py::dict>(value)) {
    for (const auto& item : py::reinterpret_borrow<py::dict>(value))
      if (!py::isinstance<py::str>(item.first)) return false;
    fill(py::reinterpret_borrow<py::kwargs>(value), py::str(class_of(descriptor).attr("__name__")),
         descriptor, into);
    return true;
  }
  if (!py::isinstance(value, class_of(descriptor))) return false;
  descriptor.assign(into, record_of(descriptor, value));
  return true;
}

/// Reads a Python value into a new one; false where its type is another.
bool load(const Descriptor& descriptor, py::handle value, void* into) {
  switch (descriptor.form) {
    case Form::boolean:
      return load_simple<bool>(value, into);
    case Form::integer:
      return load_simple<int>(value, into);
    case Form::number:
      return load_simple<double>(value, into);
    case Form::text:
      return load_simple<std::string>(value, into);
    case Form::word:
      return load_word(descriptor, value, into);
    case Form::grit:
      return load_grit(value, into);
    case Form::optional:
      descriptor.clear(into);
      return value.is_none() || load(*descriptor.element, value, descriptor.append(into));
    case Form::list:
    case Form::array:
      return load_list(descriptor, value, into);
    case Form::map:
      return load_map(descriptor, value, into);
    case Form::record:
      return load_record(descriptor, value, into);
    case Form::seed:
      break;
  }
  const auto seed = seed_of(value);
  if (seed) *static_cast<std::uint64_t*>(into) = seed->value;
  return seed.has_value();
}

std::string literal_of(const std::vector<std::string_view>& words) {
  std::string text;
  for (const std::string_view word : words) text.append(text.empty() ? "'" : ", '").append(word).append("'");
  return "Literal[" + text + "]";
}

enum class Direction { given, answered };

/// The Python type of a value, as in an annotation: what may be given, or what is answered.
std::string type_name(const Descriptor& descriptor, Direction direction = Direction::given) {
  const bool is_given = direction == Direction::given;
  switch (descriptor.form) {
    case Form::boolean:
      return "bool";
    case Form::integer:
      return "int";
    case Form::seed:
      return is_given ? "int | numpy.random.Generator" : "int";
    case Form::number:
      return "float";
    case Form::text:
      return "str";
    case Form::word:
      return is_given ? literal_of(descriptor.words) : "str";
    case Form::grit:
      return is_given ? "Grit | str" : "Grit";
    case Form::optional:
      return type_name(*descriptor.element, direction) + " | None";
    case Form::list:
    case Form::array:
      return "list[" + type_name(*descriptor.element, direction) + "]";
    case Form::map:
      return "dict[str, " + type_name(*descriptor.element, direction) + "]";
    case Form::record:
      break;
  }
  const std::string name = py::str(class_of(descriptor).attr("__name__"));
  return is_given ? name + " | dict" : name;
}

py::dict fields_of(const Descriptor& descriptor, const void* value) {
  py::dict fields;
  for (const auto& member : descriptor.members)
    fields[member.name] = python_of(*member.type, member_of(value, member));
  return fields;
}

using Owned = std::unique_ptr<void, void (*)(void*)>;

Owned made(const Descriptor& descriptor) {
  return {descriptor.make(), descriptor.destroy};
}

py::object plain_grit(const Grit& grit) {
  if (grit.has_grade()) return py::str(grit.name());
  py::dict plain;
  plain["median_um"] = grit.median_um();
  return plain;
}

/// A new Python object of the record that the keywords give.
py::object made_of(const py::kwargs& given, const std::string& owner, const Descriptor& descriptor) {
  Owned value = made(descriptor);
  fill(given, owner, descriptor, value.get());
  return python_of_record(descriptor, value.release());
}

/// A constructor call; fields that hold their default are left out.
std::string repr_of(const Descriptor& descriptor, const void* value, const std::string& name) {
  std::string text;
  const py::dict given = fields_of(descriptor, value);
  const py::dict defaults = fields_of(descriptor, made(descriptor).get());
  for (const auto& member : descriptor.members) {
    if (!member.is_required && given[member.name].equal(defaults[member.name])) continue;
    text.append(text.empty() ? "" : ", ").append(member.name).append("=");
    text += py::repr(given[member.name]).cast<std::string>();
  }
  return name + "(" + text + ")";
}

void define_property(py::object& bound, const Descriptor& descriptor, const Descriptor::Member& member,
                     const std::string& owner) {
  py::options options;
  options.disable_function_signatures();
  const std::string signature = "(self) -> " + type_name(*member.type, Direction::answered);
  const py::cpp_function getter(
      [&descriptor, &member](py::handle self) {
        return python_of(*member.type, member_of(record_of(descriptor, self), member));
      },
      py::is_method(bound), signature.c_str());
  const py::handle property(reinterpret_cast<PyObject*>(&PyProperty_Type));
  bound.attr(member.name) = property(getter, py::none(), py::none(), doc(owner + "::" + member.name));
}

void define_constructor(py::object& bound, const std::string& name, const Descriptor& descriptor) {
  define(
      bound, "__init__",
      [&descriptor, name](py::detail::value_and_holder& self, const py::args& positional,
                          const py::kwargs& given) {
        if (!positional.empty()) throw py::type_error(name + " takes keyword arguments only");
        Owned value = made(descriptor);
        fill(given, name, descriptor, value.get());
        self.value_ptr() = value.release();
      },
      "__init__(self, *" + parameters_of(descriptor) + ") -> None", py::detail::is_new_style_constructor());
  define(
      bound, "replace",
      [&descriptor, name](py::handle self, const py::kwargs& changes) {
        const py::dict given = fields_of(descriptor, record_of(descriptor, self));
        given.attr("update")(changes);
        return made_of(py::reinterpret_borrow<py::kwargs>(given), name, descriptor);
      },
      "replace(self, **changes) -> " + name + "\n\nThe same value with some fields changed.");
}

void define_dicts(py::object& bound, const std::string& name, const Descriptor& descriptor) {
  define(
      bound, "to_dict",
      [&descriptor](py::handle self) { return plain_of(descriptor, record_of(descriptor, self)); },
      "to_dict(self) -> dict\n\nThe fields as plain values, as in JSON.");
  const std::string text = "from_dict(fields: dict) -> " + name +
                           "\n\nThe value of such a dict; ValueError, with the path, where a field is wrong.";
  py::options options;
  options.disable_function_signatures();
  const py::cpp_function from_dict(
      [&descriptor](const py::dict& fields) {
        Owned value = made(descriptor);
        read_plain(fields, "", descriptor, value.get());
        return python_of_record(descriptor, value.release());
      },
      py::name("from_dict"), py::scope(bound), py::arg("fields"), text.c_str());
  bound.attr("from_dict") = py::staticmethod(from_dict);
}

void define_protocols(py::object& bound, const std::string& name, const Descriptor& descriptor) {
  if (!descriptor.equal) throw std::logic_error(name + " has no operator==");
  define(
      bound, "__eq__",
      [&descriptor](py::handle self, py::handle other) -> py::object {
        if (!py::isinstance(other, class_of(descriptor)))
          return py::reinterpret_borrow<py::object>(Py_NotImplemented);
        return py::bool_(descriptor.equal(record_of(descriptor, self), record_of(descriptor, other)));
      },
      "__eq__(self, arg0: object) -> bool");
  define(
      bound, "__repr__",
      [&descriptor, name](py::handle self) { return repr_of(descriptor, record_of(descriptor, self), name); },
      "__repr__(self) -> str");
  define(
      bound, "__getstate__",
      [&descriptor](py::handle self) { return fields_of(descriptor, record_of(descriptor, self)); },
      "__getstate__(self) -> dict");
  define(
      bound, "__setstate__",
      [&descriptor, name](py::detail::value_and_holder& self, const py::dict& state) {
        Owned value = made(descriptor);
        fill(py::reinterpret_borrow<py::kwargs>(state), name, descriptor, value.get());
        self.value_ptr() = value.release();
      },
      "__setstate__(self, arg0: dict) -> None", py::detail::is_new_style_constructor());
}

/// Adds a method that a function of our Python package carries out: module "html", function "html_of".
void define_in_python(py::object& bound, const char* method, const char* module, const char* function,
                      const char* text) {
  define(
      bound, method,
      [module, function](const py::object& self) {
        return py::module_::import((std::string("libtexture.") + module).c_str()).attr(function)(self);
      },
      text);
}

}  // namespace

std::optional<Seed> seed_of(py::handle value) {
  if (py::hasattr(value, "integers")) {
    const py::module_ numpy = py::module_::import("numpy");
    const py::object whole = py::int_(1) << py::int_(64);
    return Seed{value.attr("integers")(whole, py::arg("dtype") = numpy.attr("uint64")).cast<std::uint64_t>()};
  }
  py::detail::make_caster<std::uint64_t> caster;
  if (!caster.load(value, true)) return std::nullopt;
  return Seed{py::detail::cast_op<std::uint64_t>(caster)};
}

void throw_no_seed(py::handle value) {
  throw InvalidInput("seed must be a whole number, 0 to 2^64 - 1, or a numpy.random.Generator (got " +
                     std::string(py::repr(value)) + ")");
}

bool load_word(const Descriptor& descriptor, py::handle value, void* into) {
  if (!py::isinstance<py::str>(value)) return false;
  const auto word = value.cast<std::string>();
  const auto found = std::find(descriptor.words.begin(), descriptor.words.end(), word);
  if (found == descriptor.words.end()) return false;
  descriptor.set_word(into, static_cast<std::size_t>(found - descriptor.words.begin()));
  return true;
}

py::object python_of(const Descriptor& descriptor, const void* value) {
  switch (descriptor.form) {
    case Form::boolean:
      return py::bool_(*static_cast<const bool*>(value));
    case Form::integer:
      return py::int_(*static_cast<const int*>(value));
    case Form::seed:
      return py::int_(*static_cast<const std::uint64_t*>(value));
    case Form::number:
      return py::float_(*static_cast<const double*>(value));
    case Form::text:
      return py::str(*static_cast<const std::string*>(value));
    case Form::word:
      return py::str(std::string(descriptor.words.at(descriptor.word_index(value))));
    case Form::grit:
      return py::cast(*static_cast<const Grit*>(value));
    case Form::optional:
      if (descriptor.size(value) == 0) return py::none();
      return python_of(*descriptor.element, descriptor.at(value, 0));
    case Form::list:
    case Form::array:
    case Form::map:
      return container_of(descriptor, value, python_of);
    case Form::record:
      break;
  }
  return python_of_record(descriptor, descriptor.copy(value));
}

py::object plain_of(const Descriptor& descriptor, const void* value) {
  switch (descriptor.form) {
    case Form::number: {
      const double number = *static_cast<const double*>(value);
      return std::isfinite(number) ? py::object(py::float_(number)) : py::none();
    }
    case Form::grit:
      return plain_grit(*static_cast<const Grit*>(value));
    case Form::optional:
      if (descriptor.size(value) == 0) return py::none();
      return plain_of(*descriptor.element, descriptor.at(value, 0));
    case Form::list:
    case Form::array:
    case Form::map:
      return container_of(descriptor, value, plain_of);
    case Form::record:
      break;
    default:
      return python_of(descriptor, value);
  }
  py::dict plain;
  for (const auto& member : descriptor.members) {
    const void* field = member_of(value, member);
    if (is_given(*member.type, field)) plain[member.name] = plain_of(*member.type, field);
  }
  if (descriptor.text) plain["text"] = descriptor.text(value);
  return plain;
}

void read_plain(py::handle plain, const std::string& path, const Descriptor& descriptor, void* into) {
  const py::object text = py::module_::import("json").attr("dumps")(plain, py::arg("allow_nan") = false);
  read_value(Json::parse(text.cast<std::string>()), path, descriptor, into);
}

void from_python(py::handle value, std::string_view owner, std::string_view field,
                 const Descriptor& descriptor, void* into) {
  if (load(descriptor, value, into)) return;
  if (descriptor.form == Form::word && py::isinstance<py::str>(value)) {
    std::string rule = "must be one of";
    for (const std::string_view word : descriptor.words) rule.append(" ").append(word);
    require(false, owner, field, rule, value.cast<std::string>());
  }
  throw InvalidInput(std::string(owner) + ": " + std::string(field) + " must be of type " +
                     type_name(descriptor) + " (got " + py::repr(value).cast<std::string>() + ")");
}

void require_known(const py::kwargs& given, const std::vector<std::string>& known, const std::string& owner) {
  for (const auto& item : given) {
    const auto word = item.first.cast<std::string>();
    if (std::find(known.begin(), known.end(), word) != known.end()) continue;
    const std::string nearest = nearest_word(word, known.data(), known.data() + known.size());
    throw InvalidInput(owner + ": unknown field " + word +
                       (nearest.empty() ? "" : "; nearest known: " + nearest));
  }
}

void throw_missing(const std::string& owner, const std::string& field) {
  throw InvalidInput(owner + ": " + field + " is missing");
}

void fill(const py::kwargs& given, const std::string& owner, const Descriptor& descriptor, void* into) {
  require_known(given, descriptor.member_names(), owner);
  for (const auto& member : descriptor.members) {
    if (given.contains(member.name))
      from_python(given[member.name], owner, member.name, *member.type, member_of(into, member));
    else if (member.is_required)
      throw_missing(owner, member.name);
  }
  if (descriptor.validate) descriptor.validate(into);
}

std::string parameters_of(const Descriptor& descriptor) {
  std::string text;
  const Owned defaults = made(descriptor);
  for (const auto& member : descriptor.members) {
    text.append(", ").append(member.name).append(": ").append(type_name(*member.type));
    if (member.is_required) continue;
    const py::object value = python_of(*member.type, member_of(defaults.get(), member));
    const bool is_plain = py::type::of(value).attr("__module__").cast<std::string>() == "builtins";
    text += " = " + (is_plain ? py::repr(value).cast<std::string>() : "...");
  }
  return text;
}

std::string field_docs(const Descriptor& descriptor, const std::string& owner) {
  std::string text;
  for (const auto& member : descriptor.members)
    text.append("\n    ").append(member.name).append(": ").append(doc(owner + "::" + member.name));
  return text;
}

void def_html(py::object& bound) {
  define_in_python(bound, "_repr_html_", "html", "html_of",
                   "_repr_html_(self) -> str\n\nA table, for notebooks.");
}

void def_to_pandas(py::object& bound) {
  define_in_python(
      bound, "to_pandas", "frames", "to_pandas",
      "to_pandas(self) -> Any\n\nA pandas.DataFrame; ImportError where pandas is not installed.");
}

void def_to_xarray(py::object& bound) {
  define_in_python(bound, "to_xarray", "frames", "to_xarray",
                   "to_xarray(self) -> Any\n\nAn xarray.Dataset with coordinates in mm; ImportError where "
                   "xarray is not installed.");
}

void define_value(py::object& bound, const std::string& name, const Descriptor& descriptor) {
  for (const auto& member : descriptor.members) define_property(bound, descriptor, member, name);
  define_constructor(bound, name, descriptor);
  define_dicts(bound, name, descriptor);
  define_protocols(bound, name, descriptor);
  def_html(bound);
}

}  // namespace libtexture::python
