// The table of contents of libtexture._core: one line a floor, from the bottom up.
#include "module.hpp"

PYBIND11_MODULE(_core, module) {
  module.doc() = "The compiled core of libtexture.";
  module.attr("__version__") = LIBTEXTURE_VERSION;
  libtexture::python::bind_base(module);
  libtexture::python::bind_numerics(module);
  libtexture::python::bind_surface(module);
  libtexture::python::bind_tool(module);
  libtexture::python::bind_process(module);
  libtexture::python::bind_plan(module);
  libtexture::python::bind_predict(module);
  libtexture::python::bind_choose(module);
  libtexture::python::bind_io(module);
  libtexture::python::bind_calibrate(module);
}
