#include "arrays.hpp"

#include <memory>
#include <string>
#include <utility>

#include "libtexture/base/error.hpp"

namespace libtexture::python {
namespace {

py::array read_only(py::array array) {
  array.attr("setflags")(py::arg("write") = false);
  return array;
}

/// Values on the heap, and what deletes them when Python drops it.
template <class Values>
std::pair<const Values*, py::capsule> keep(Values values) {
  auto kept = std::make_unique<Values>(std::move(values));
  const py::capsule owner(kept.get(), [](void* pointer) { delete static_cast<Values*>(pointer); });
  return {kept.release(), owner};
}

}  // namespace

py::array view(const Array2d& values, py::handle owner) {
  return read_only(py::array_t<double>({values.rows(), values.cols()}, values.data(), owner));
}

py::array view(std::span<const double> values, py::handle owner) {
  return read_only(py::array_t<double>(static_cast<py::ssize_t>(values.size()), values.data(), owner));
}

py::array array_of(std::vector<double> values) {
  const auto [kept, owner] = keep(std::move(values));
  return py::array_t<double>(static_cast<py::ssize_t>(kept->size()), kept->data(), owner);
}

py::array array_of(Array2d values) {
  const auto [kept, owner] = keep(std::move(values));
  return py::array_t<double>({kept->rows(), kept->cols()}, kept->data(), owner);
}

Eigen::Map<const Array2d> map_of(py::handle array, std::string_view owner, std::string_view field) {
  const bool is_array = py::isinstance<py::array>(array);
  const std::string type =
      is_array ? py::str(array.attr("dtype")) : py::str(py::type::handle_of(array).attr("__name__"));
  const std::string advice = "; numpy.ascontiguousarray(x, dtype=float) converts";
  require(is_array && py::isinstance<py::array_t<double>>(array), owner, field,
          "must be a numpy array of float64" + advice, type);
  const py::object masked = py::module_::import("numpy").attr("ma").attr("MaskedArray");
  require(
      !py::isinstance(array, masked), owner, field,
      "must be an array without a mask, which would count what is masked; x.filled(...) or x.data say how",
      "a masked array");
  const auto values = py::reinterpret_borrow<py::array>(array);
  require((values.flags() & py::array::c_style) != 0, owner, field,
          "must be in C order (row by row)" + advice,
          "strides " + std::string(py::str(array.attr("strides"))));
  require(values.ndim() == 1 || values.ndim() == 2, owner, field,
          "must have 2 dimensions (rows, cols), or 1 for a profile", std::to_string(values.ndim()));
  const auto rows = values.ndim() == 1 ? 1 : values.shape(0);
  return {static_cast<const double*>(values.data()), rows, values.shape(values.ndim() - 1)};
}

}  // namespace libtexture::python
