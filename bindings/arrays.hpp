#pragma once
// Arrays: numpy in without a silent conversion, numpy out without a copy.

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

#include <span>
#include <string_view>
#include <vector>

#include "libtexture/numerics/array.hpp"

namespace libtexture::python {

namespace py = pybind11;

/// Read-only numpy view, shape (rows, cols), that keeps `owner` alive.
py::array view(const Array2d& values, py::handle owner);

/// The same for a row of numbers.
py::array view(std::span<const double> values, py::handle owner);

/// A number or an array of any shape, as an argument of functions that work number by number.
using Numbers = py::array_t<double, py::array::forcecast>;

/// function(x) of each number; the shape stays, a number gives a number.
template <class Function>
py::object each(const Numbers& numbers, const Function& function) {
  return py::vectorize([&](double number) { return function(number); })(numbers);
}

/// A row of numbers that the array owns; not copied.
py::array array_of(std::vector<double> values);

/// The same for a map, shape (rows, cols).
py::array array_of(Array2d values);

/// The numbers of a numpy array as an array of (rows, cols); one dimension = one row. ValueError, with what
/// is needed, unless it is float64 in C order: a conversion is for the caller to see.
Eigen::Map<const Array2d> map_of(py::handle array, std::string_view owner, std::string_view field);

}  // namespace libtexture::python
