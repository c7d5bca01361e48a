// surface: height field, texture, coating.
#include "arrays.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/surface/height_field.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;

HeightField height_field(const py::object& height_um, double pixel_mm, bool periodic) {
  require(periodic, "HeightField", "periodic",
          "must be True: waves are worked in Fourier space; mirror or detrend the map first", "False");
  return HeightField(map_of(height_um, "HeightField", "height_um"), pixel_mm);
}

void bind_height_field(py::module_& module) {
  py::class_<HeightField>(module, "HeightField", doc<"HeightField">)
      .def(py::init(&height_field), py::kw_only(), "height_um"_a, "pixel_mm"_a, "periodic"_a = true,
           doc<"HeightField::HeightField">)
      .def_property_readonly(
          "height_um",
          [](const py::object& self) { return view(self.cast<const HeightField&>().height_um(), self); },
          doc<"HeightField::height_um">)
      .def_property_readonly("pixel_mm", &HeightField::pixel_mm, doc<"HeightField::pixel_mm">)
      .def_property_readonly("grid", &HeightField::grid, doc<"HeightField::grid">)
      .def_property_readonly("mean_um", &HeightField::mean_um, doc<"HeightField::mean_um">)
      .def_property_readonly("rms_um", &HeightField::rms_um, doc<"HeightField::rms_um">)
      .def_property_readonly("peak_to_valley_um", &HeightField::peak_to_valley_um,
                             doc<"HeightField::peak_to_valley_um">)
      .def_property_readonly("valley_depth_um", &HeightField::valley_depth_um,
                             doc<"HeightField::valley_depth_um">)
      .def(py::self == py::self)
      .def("__repr__",
           [](const HeightField& self) {
             return "<HeightField: " + std::to_string(self.grid().rows) + " x " +
                    std::to_string(self.grid().cols) + " pixels of " + to_text(self.pixel_mm()) +
                    " mm, rms " + to_text(self.rms_um()) + " um>";
           })
      .def(py::pickle(
          [](const py::object& self) {
            return py::make_tuple(self.attr("height_um"), self.attr("pixel_mm"));
          },
          [](const py::tuple& state) { return height_field(state[0], state[1].cast<double>(), true); }));
}

}  // namespace

void bind_surface(py::module_& module) {
  bind_height_field(module);
}

}  // namespace libtexture::python
