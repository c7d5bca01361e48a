// plan: a job as plain values; its files are read on the io floor.
#include <pybind11/stl/filesystem.h>

#include "arrays.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/plan/budget.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/target_stop.hpp"
#include "module.hpp"
#include "results.hpp"

namespace libtexture::python {

template <>
inline constexpr auto parts<Film> =
    std::tuple{optional("total_um", &Film::total_um), optional("total_sd_um", &Film::total_sd_um),
               optional("clear_um", &Film::clear_um), optional("clear_sd_um", &Film::clear_sd_um)};

using namespace py::literals;

namespace {

void bind_budget(py::module_& module) {
  bind_result<Film>(module, "Film");
  module.def(
      "film_at",
      [](const Panel& panel, const Paint& paint, double x_mm, double y_mm) {
        return film_at(film_map(panel, paint), {x_mm, y_mm});
      },
      "panel"_a, "paint"_a, py::kw_only(), "x_mm"_a, "y_mm"_a, doc("film_at"));
  bind_fields<BudgetRule>(module, "BudgetRule");
  module.def("default_budget", &default_budget, "kind"_a, doc("default_budget"));
  module.def("budget_of", &budget_of, "job"_a, doc("budget_of"));
  module.def("published_budget", &published_budget, doc("published_budget"));
  module.def("must_stay_um", &must_stay_um, "budget"_a, doc("must_stay_um"));
  module.def("removable_um", &removable_um, "budget"_a, py::kw_only(), "clear_um"_a, doc("removable_um"));
  module.def("budget_rules", &budget_rules, "budget"_a, py::kw_only(), "clear_um"_a, doc("budget_rules"));
}

}  // namespace

void bind_plan(py::module_& module) {
  bind_fields<Reading>(module, "Reading");
  bind_fields<Panel>(module, "Panel");
  bind_fields<Estimate>(module, "Estimate");
  bind_fields<SeenTexture>(module, "SeenTexture");
  module.def("seen_rms_um", &seen_rms_um, "seen"_a, doc("seen_rms_um"));
  bind_fields<WetTexture>(module, "WetTexture");
  bind_fields<TextureSource>(module, "TextureSource");
  bind_fields<Gauge>(module, "Gauge");
  bind_fields<Paint>(module, "Paint");
  bind_fields<Defect>(module, "Defect");
  bind_fields<Target>(module, "Target");
  bind_fields<Budget>(module, "Budget");
  bind_fields<Labour>(module, "Labour");
  bind_fields<EdgeWork>(module, "EdgeWork");
  bind_fields<Sequence>(module, "Sequence");
  bind_fields<Uncertainty>(module, "Uncertainty");
  bind_fields<Job>(module, "Job")
      .def_static("load", &load_job, "path"_a, doc("load_job"))
      .def("save", &save_job, "path"_a, doc("save_job"));
  module.def("_saved_text", &saved_text, "job"_a, "path"_a, doc("saved_text"));
  module.def("target_stop", &target_stop, "target"_a, doc("target_stop"));
  module.def(
      "worked_sequence",
      [](const Job& job, const std::string& sequence) {
        return worked_sequence(job, sequence_named(job, sequence), surface_of(job));
      },
      "job"_a, py::kw_only(), "sequence"_a = "", doc("worked_sequence"),
      py::call_guard<py::gil_scoped_release>());
  module.def("viewer_of", &viewer_of, "job"_a, doc("viewer_of"));
  module.def("surface_of", &surface_of, "job"_a, doc("surface_of"), py::call_guard<py::gil_scoped_release>());
  module.def("surface_notes", &surface_notes, "job"_a, doc("surface_notes"),
             py::call_guard<py::gil_scoped_release>());
  bind_budget(module);
}

}  // namespace libtexture::python
