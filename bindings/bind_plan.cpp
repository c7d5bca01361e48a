// plan: a job as plain values; its files are read on the io floor.
#include <pybind11/stl/filesystem.h>

#include "arrays.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/plan/budget.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/predict.hpp"
#include "module.hpp"
#include "progress.hpp"
#include "results.hpp"

namespace libtexture::python {

using namespace py::literals;

namespace {

void bind_budget(py::module_& module) {
  bind_result<Film, "Film">(module);
  module.def(
      "film_at",
      [](const Panel& panel, const Paint& paint, double x_mm, double y_mm) {
        return film_at(film_map(panel, paint), {x_mm, y_mm});
      },
      "panel"_a, "paint"_a, py::kw_only(), "x_mm"_a, "y_mm"_a, doc<"film_at">);
  bind_fields<BudgetRule, "BudgetRule">(module);
  module.def("published_budget", &published_budget, doc<"published_budget">);
  module.def("must_stay_um", &must_stay_um, "budget"_a, doc<"must_stay_um">);
  module.def("removable_um", &removable_um, "budget"_a, py::kw_only(), "clear_um"_a, doc<"removable_um">);
  module.def("budget_rules", &budget_rules, "budget"_a, py::kw_only(), "clear_um"_a, doc<"budget_rules">);
}

void bind_risk(py::module_& module) {
  bind_fields<Spread, "Spread">(module);
  bind_fields<TextureLeft, "TextureLeft">(module);
  bind_fields<PanelRisk, "PanelRisk">(module);
  auto draws = bind_result<RiskDraws, "RiskDraws">(module);
  def_to_pandas(draws);
}

void bind_prediction(py::module_& module) {
  bind_risk(module);
  bind_fields<LabourMinutes, "LabourMinutes">(module);
  bind_fields<DiscLife, "DiscLife">(module);
  bind_fields<DiscSizeMinutes, "DiscSizeMinutes">(module);
  bind_fields<EdgeMargin, "EdgeMargin">(module);
  auto panel = bind_fields<PanelPrediction, "PanelPrediction">(module);
  def_to_pandas(panel);
  auto prediction = bind_fields<Prediction, "Prediction">(module);
  def_to_pandas(prediction);
  py::class_<Predicted> predicted(module, "Predicted", doc<"Predicted">);
  def_html(predicted);
  def_to_pandas(predicted);
  predicted.def_readonly("prediction", &Predicted::prediction, doc<"Predicted::prediction">)
      .def_readonly("histories", &Predicted::histories, doc<"Predicted::histories">)
      .def_readonly("draws", &Predicted::draws, doc<"Predicted::draws">)
      .def(
          "to_dict", [](const Predicted& self) { return py::cast(self.prediction).attr("to_dict")(); },
          doc<"Predicted::prediction">)
      .def(py::pickle(
          [](const Predicted& self) { return py::make_tuple(self.prediction, self.histories, self.draws); },
          [](const py::tuple& state) {
            return Predicted{state[0].cast<Prediction>(), state[1].cast<std::vector<History>>(),
                             state[2].cast<std::vector<RiskDraws>>()};
          }));
  module.def(
      "predict",
      [](const Job& job, const std::string& sequence, const py::object& progress) {
        const Reporter reporter(progress);
        const py::gil_scoped_release without_lock;
        Predicted predicted = predict(job, surface_of(job), sequence, reporter.progress());
        add_new(predicted.prediction.warnings, surface_notes(job));
        return predicted;
      },
      "job"_a, py::kw_only(), "sequence"_a = "", "progress"_a = py::none(), doc<"predict">);
}

void bind_film_map(py::module_& module) {
  using P = FilmPicture;
  const auto map_of = [](Array2d P::*member) {
    return [member](const py::object& self) { return view(self.cast<const P&>().*member, self); };
  };
  py::class_<P> bound(module, "FilmPicture", doc<"FilmPicture">);
  def_html(bound);
  def_to_xarray(bound);
  bound.def("to_dict", &plain_of<P>, "The members as plain values; maps as lists of rows.")
      .def_static(
          "from_dict", [](const py::dict& members) { return result_from_plain<P>(members, "FilmPicture"); },
          "members"_a, "The picture of such a dict; ValueError where a member is wrong.")
      .def(py::pickle(&plain_of<P>,
                      [](const py::object& state) { return result_from_plain<P>(state, "FilmPicture"); }))
      .def_property_readonly(
          "corner_x_mm", [](const P& self) { return self.corner.x_mm; }, doc<"FilmPicture::corner">)
      .def_property_readonly(
          "corner_y_mm", [](const P& self) { return self.corner.y_mm; }, doc<"FilmPicture::corner">)
      .def_readonly("pixel_mm", &P::pixel_mm, doc<"FilmPicture::pixel_mm">)
      .def_property_readonly("total_um", map_of(&P::total_um), doc<"FilmPicture::total_um">)
      .def_property_readonly("total_sd_um", map_of(&P::total_sd_um), doc<"FilmPicture::total_sd_um">)
      .def_property_readonly("clear_um", map_of(&P::clear_um), doc<"FilmPicture::clear_um">)
      .def_property_readonly("clear_sd_um", map_of(&P::clear_sd_um), doc<"FilmPicture::clear_sd_um">);
  module.def(
      "film_picture",
      [](const Panel& panel, const Paint& paint, int pixels) {
        return film_picture(film_map(panel, paint), pixels);
      },
      "panel"_a, "paint"_a, py::kw_only(), "pixels"_a = 64, doc<"film_picture">,
      py::call_guard<py::gil_scoped_release>());
}

}  // namespace

void bind_plan(py::module_& module) {
  bind_fields<Reading, "Reading">(module);
  bind_fields<Panel, "Panel">(module);
  bind_fields<Estimate, "Estimate">(module);
  bind_fields<SeenTexture, "SeenTexture">(module);
  module.def("seen_rms_um", &seen_rms_um, "seen"_a, doc<"seen_rms_um">);
  bind_fields<WetTexture, "WetTexture">(module);
  bind_fields<TextureSource, "TextureSource">(module);
  bind_fields<Gauge, "Gauge">(module);
  bind_fields<Paint, "Paint">(module);
  bind_fields<Target, "Target">(module);
  bind_fields<Budget, "Budget">(module);
  bind_fields<Labour, "Labour">(module);
  bind_fields<EdgeWork, "EdgeWork">(module);
  bind_fields<Sequence, "Sequence">(module);
  bind_fields<Uncertainty, "Uncertainty">(module);
  bind_fields<Job, "Job">(module)
      .def_static("load", &load_job, "path"_a, doc<"load_job">)
      .def("save", &save_job, "path"_a, doc<"save_job">);
  module.def("viewer_of", &viewer_of, "job"_a, doc<"viewer_of">);
  module.def("surface_of", &surface_of, "job"_a, doc<"surface_of">, py::call_guard<py::gil_scoped_release>());
  module.def("surface_notes", &surface_notes, "job"_a, doc<"surface_notes">,
             py::call_guard<py::gil_scoped_release>());
  bind_budget(module);
  bind_prediction(module);
  bind_film_map(module);
}

}  // namespace libtexture::python
