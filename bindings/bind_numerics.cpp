// numerics: the grid.
#include "libtexture/numerics/grid.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {

void bind_numerics(py::module_& module) {
  bind_fields<Grid, "Grid">(module);
}

}  // namespace libtexture::python
