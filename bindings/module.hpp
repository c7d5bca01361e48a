#pragma once
// One function a floor; each binds the public names of its folder.

#include <pybind11/pybind11.h>

namespace libtexture::python {

void bind_base(pybind11::module_& module);
void bind_numerics(pybind11::module_& module);
void bind_surface(pybind11::module_& module);
void bind_tool(pybind11::module_& module);
void bind_process(pybind11::module_& module);
void bind_plan(pybind11::module_& module);
void bind_predict(pybind11::module_& module);  // of the floor plan too
void bind_choose(pybind11::module_& module);   // of the floor plan too
void bind_io(pybind11::module_& module);
void bind_calibrate(pybind11::module_& module);  // of the floors plan and io

}  // namespace libtexture::python
