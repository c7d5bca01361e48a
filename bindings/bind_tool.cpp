// tool: grit, abrasive, backing, motion, the sheet of a panel, and how a disc meets it.
#include "arrays.hpp"
#include "libtexture/tool/abrasive.hpp"
#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/crown_contact.hpp"
#include "libtexture/tool/dose.hpp"
#include "libtexture/tool/grit.hpp"
#include "libtexture/tool/motion.hpp"
#include "libtexture/tool/sheet.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;

Grit grit(const std::optional<std::string>& name, std::optional<double> median_um) {
  if (name.has_value() == median_um.has_value()) throw InvalidInput("Grit: takes either a name or median_um");
  return name ? Grit(*name) : Grit::of_median_um(*median_um);
}

void bind_grit(py::module_& module) {
  py::class_<Grit> bound(module, "Grit", doc("Grit"));
  def_html(bound);
  bound
      .def(py::init(&grit), "name"_a = py::none(), py::kw_only(), "median_um"_a = py::none(),
           doc("Grit::Grit"))
      .def_property_readonly("name", &Grit::name, doc("Grit::name"))
      .def_property_readonly("has_grade", &Grit::has_grade, doc("Grit::has_grade"))
      .def_property_readonly("median_um", &Grit::median_um, doc("Grit::median_um"))
      .def_property_readonly("is_extrapolated", &Grit::is_extrapolated, doc("Grit::is_extrapolated"))
      .def(
          "to_dict",
          [](const Grit& self) {
            py::dict fields;
            if (self.has_grade())
              fields["name"] = self.name();
            else
              fields["median_um"] = self.median_um();
            return fields;
          },
          "Its name, or its size where it has no grade.")
      .def_static(
          "from_dict", [](const py::dict& fields) { return py::type::of<Grit>()(**fields); }, "fields"_a,
          "The grit of such a dict.")
      .def(py::self == py::self)
      .def("__repr__",
           [](const Grit& self) {
             const py::object given = self.has_grade() ? py::object(py::str(self.name()))
                                                       : py::object(py::float_(self.median_um()));
             return (self.has_grade() ? "Grit(" : "Grit(median_um=") + std::string(py::repr(given)) + ")";
           })
      .def(py::pickle(
          [](const Grit& self) {
            return self.has_grade() ? py::tuple(py::make_tuple(self.name()))
                                    : py::tuple(py::make_tuple(self.median_um()));
          },
          [](const py::tuple& state) {
            const bool is_name = py::isinstance<py::str>(state[0]);
            return is_name ? Grit(state[0].cast<std::string>()) : Grit::of_median_um(state[0].cast<double>());
          }));
}

void bind_abrasive(py::module_& module) {
  bind_fields<Abrasive>(module, "Abrasive");
  module.def("at_grit", &at_grit, "abrasive"_a, "grit"_a, py::kw_only(), "exponent"_a = 1.0, doc("at_grit"));
}

void bind_backing(py::module_& module) {
  bind_fields<Skin>(module, "Skin");
  bind_fields<Layer>(module, "Layer");
  bind_fields<Backing>(module, "Backing")
      .def_static("springs", &Backing::on_springs, py::kw_only(), "stiffness_kpa_per_um"_a,
                  doc("Backing::on_springs"))
      .def_static("half_space", &Backing::on_half_space, py::kw_only(), "modulus_mpa"_a, "poisson"_a = 0.0,
                  doc("Backing::on_half_space"))
      .def_static("rigid", &Backing::rigid, doc("Backing::rigid"))
      .def(
          "stiffness_kpa_per_um",
          [](const Backing& self, const Numbers& wavelength_mm) {
            return each(wavelength_mm, [&](double one_mm) { return stiffness_kpa_per_um(self, one_mm); });
          },
          "wavelength_mm"_a, doc("stiffness_kpa_per_um"))
      .def("at_working_pressure", &at_working_pressure, py::kw_only(), "pressure_kpa"_a,
           doc("at_working_pressure"))
      .def("mean_approach_um", &mean_approach_um, py::kw_only(), "pressure_kpa"_a, doc("mean_approach_um"));
}

void bind_motion(py::module_& module) {
  bind_fields<Motion>(module, "Motion")
      .def_property_readonly("pressure_kpa", &pressure_kpa, doc("pressure_kpa"))
      .def_property_readonly("sliding_m_per_s", &sliding_m_per_s, doc("sliding_m_per_s"));
}

void bind_crown(py::module_& module) {
  bind_fields<Sheet>(module, "Sheet");
  bind_fields<Crown>(module, "Crown");
  bind_fields<CrownContact>(module, "CrownContact");
  module.def("crown_contact", &crown_contact, "motion"_a, "backing"_a, py::kw_only(), "crown"_a = py::none(),
             doc("crown_contact"));
  bind_fields<LaneDose>(module, "LaneDose");
  module.def("lane_dose", &lane_dose, "motion"_a, "contact"_a, doc("lane_dose"));
}

}  // namespace

void bind_tool(py::module_& module) {
  bind_grit(module);
  bind_abrasive(module);
  bind_backing(module);
  bind_motion(module);
  bind_crown(module);
}

}  // namespace libtexture::python
