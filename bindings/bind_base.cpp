// base: errors. InvalidInput is a std::invalid_argument, which crosses as ValueError by itself.
#include "docs.hpp"
#include "libtexture/base/error.hpp"
#include "module.hpp"

namespace py = pybind11;

namespace libtexture::python {

void bind_base(py::module_& module) {
  static py::handle not_converged;  // lives as long as the interpreter
  not_converged =
      PyErr_NewExceptionWithDoc("libtexture.NotConverged", doc<"NotConverged">, PyExc_RuntimeError, nullptr);
  if (!not_converged) throw py::error_already_set();
  module.attr("NotConverged") = not_converged;
  py::register_exception_translator([](std::exception_ptr thrown) {
    try {
      std::rethrow_exception(thrown);
    } catch (const NotConverged& error) {
      const py::object raised = not_converged(error.what());
      raised.attr("iterations") = error.iterations;
      raised.attr("residual") = error.residual;
      raised.attr("tolerance") = error.tolerance;
      PyErr_SetObject(not_converged.ptr(), raised.ptr());
    }
  });
}

}  // namespace libtexture::python
