// base: errors, statements, and how figures are put into words. InvalidInput is a std::invalid_argument,
// which crosses as ValueError by itself.
#include "libtexture/base/chance.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/base/units.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;

void bind_errors(py::module_& module) {
  static py::handle not_converged;  // lives as long as the interpreter
  not_converged =
      PyErr_NewExceptionWithDoc("libtexture.NotConverged", doc("NotConverged"), PyExc_RuntimeError, nullptr);
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

void bind_statement(py::module_& module) {
  bind_fields<Statement>(module, "Statement")
      .def_property_readonly(
          "text", [](const Statement& self) { return self.text(); }, doc("Statement::text"))
      .def("text_in", &Statement::text, "symbols"_a, doc("Statement::text"))
      .def("__str__", [](const Statement& self) { return self.text(); });
}

// For our own tables and pages, which put figures into words as statements do.
void bind_words(py::module_& module) {
  module.attr("_um_per_mil") = um_per_mil;
  module.def("_chance_text", &chance_text, "probability"_a, "samples"_a, doc("chance_text"));
  module.def("_um_and_mil", py::overload_cast<double, Symbols>(&um_and_mil), "length_um"_a,
             "symbols"_a = Symbols::ascii, "A length as both trades read it.");
  module.def("_range_um_and_mil", py::overload_cast<double, double, Symbols>(&um_and_mil), "least_um"_a,
             "most_um"_a, "symbols"_a = Symbols::ascii, "A range of lengths as both trades read it.");
}

}  // namespace

void bind_base(py::module_& module) {
  bind_errors(module);
  bind_statement(module);
  bind_words(module);
}

}  // namespace libtexture::python
