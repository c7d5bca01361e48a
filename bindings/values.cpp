#include "values.hpp"

namespace libtexture::python {

void throw_wrong_type(py::handle value, std::string_view owner, std::string_view field,
                      std::string_view type) {
  std::string message(owner);
  message.append(": ").append(field).append(" must be of type ").append(type);
  throw InvalidInput(message + " (got " + std::string(py::repr(value)) + ")");
}

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

py::object object_of(const Json& json) {
  return py::module_::import("json").attr("loads")(json.dump());
}

Json json_of(py::handle object) {
  const py::object text = py::module_::import("json").attr("dumps")(object, py::arg("allow_nan") = false);
  return Json::parse(text.cast<std::string>());
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

}  // namespace libtexture::python
