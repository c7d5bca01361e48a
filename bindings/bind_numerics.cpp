// numerics: the grid, and one levelling increment for tests against other minimisers.
#include <algorithm>

#include "arrays.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/numerics/grid.hpp"
#include "libtexture/numerics/increment.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;

/// The pressure over its mean (rows, cols) of one increment, as close as doubles allow.
py::array increment(const py::object& height, const py::object& stiffness, double removal) {
  const auto heights = map_of(height, "_increment", "height");
  const auto stiffnesses = map_of(stiffness, "_increment", "stiffness");
  const Grid grid{static_cast<int>(heights.rows()), static_cast<int>(heights.cols()), 1.0};
  require(stiffnesses.rows() == grid.rows && stiffnesses.cols() == grid.half_cols(), "_increment",
          "stiffness", "must be a half spectrum (rows, cols/2 + 1)", "another shape");
  const AlignedVector<double> values(heights.data(), heights.data() + heights.size());
  Increment solver(grid, {stiffnesses.data(), stiffnesses.data() + stiffnesses.size()});
  AlignedVector<double> pressure(values.size());
  solver.solve(values, removal, pressure, {.residual_tolerance = 1e-9, .gap_tolerance = 1e-9});
  Array2d result(grid.rows, grid.cols);
  std::copy(pressure.begin(), pressure.end(), result.data());
  return array_of(std::move(result));
}

}  // namespace

void bind_numerics(py::module_& module) {
  bind_fields<Grid>(module, "Grid");
  module.def("_increment", &increment, "height"_a, "stiffness"_a, "removal"_a,
             "For tests only. One implicit increment of levelling: pressure over its mean, (rows, cols), of "
             "a height "
             "(rows, cols) and a mean removal in the same unit; stiffness S/p_mean on the half spectrum "
             "[1/length].");
}

}  // namespace libtexture::python
