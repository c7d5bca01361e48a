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

}  // namespace

py::array view(const Array2d& values, py::handle owner) {
  return read_only(py::array_t<double>({values.rows(), values.cols()}, values.data(), owner));
}

py::array view(std::span<const double> values, py::handle owner) {
  return read_only(py::array_t<double>(static_cast<py::ssize_t>(values.size()), values.data(), owner));
}

py::array array_of(std::vector<double> values) {
  auto held = std::make_unique<std::vector<double>>(std::move(values));
  const py::capsule owner(held.get(),
                          [](void* pointer) { delete static_cast<std::vector<double>*>(pointer); });
  const std::vector<double>& kept = *held.release();  // the capsule deletes it
  return py::array_t<double>(static_cast<py::ssize_t>(kept.size()), kept.data(), owner);
}

Eigen::Map<const Array2d> map_of(py::handle array, std::string_view owner, std::string_view field) {
  const bool is_array = py::isinstance<py::array>(array);
  const std::string type =
      is_array ? py::str(array.attr("dtype")) : py::str(py::type::handle_of(array).attr("__name__"));
  const std::string advice = "; numpy.ascontiguousarray(x, dtype=float) converts";
  require(is_array && py::isinstance<py::array_t<double>>(array), owner, field,
          "must be a numpy array of float64" + advice, type);
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
