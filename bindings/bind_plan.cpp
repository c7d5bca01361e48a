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
#include "values.hpp"

namespace libtexture::python {

using namespace py::literals;

namespace {

void bind_budget(py::module_& module) {
  py::class_<Film>(module, "Film", doc<"Film">)
      .def_readonly("total_um", &Film::total_um, doc<"Film::total_um">)
      .def_readonly("total_sd_um", &Film::total_sd_um, doc<"Film::total_sd_um">)
      .def_readonly("clear_um", &Film::clear_um, doc<"Film::clear_um">)
      .def_readonly("clear_sd_um", &Film::clear_sd_um, doc<"Film::clear_sd_um">)
      .def(py::pickle(
          [](const Film& self) {
            return py::make_tuple(self.total_um, self.total_sd_um, self.clear_um, self.clear_sd_um);
          },
          [](const py::tuple& state) {
            return Film{state[0].cast<double>(), state[1].cast<double>(), state[2].cast<double>(),
                        state[3].cast<double>()};
          }));
  module.def(
      "film_at",
      [](const Panel& panel, const Paint& paint, double x_mm, double y_mm) {
        return film_at(film_map(panel, paint), {x_mm, y_mm});
      },
      "panel"_a, "paint"_a, py::kw_only(), "x_mm"_a, "y_mm"_a, doc<"film_at">);
  bind_fields<BudgetRule, "BudgetRule">(module);
  module.def("published_budget", &published_budget, doc<"published_budget">);
  module.def("budget_rules", &budget_rules, "budget"_a, py::kw_only(), "clear_um"_a, doc<"budget_rules">);
}

void bind_risk(py::module_& module) {
  bind_fields<Spread, "Spread">(module);
  bind_fields<PanelRisk, "PanelRisk">(module);
  using D = RiskDraws;
  py::class_<D>(module, "RiskDraws", doc<"RiskDraws">)
      .def_readonly("removed_um", &D::removed_um, doc<"RiskDraws::removed_um">)
      .def_readonly("levelling_um", &D::levelling_um, doc<"RiskDraws::levelling_um">)
      .def_readonly("overshoot_um", &D::overshoot_um, doc<"RiskDraws::overshoot_um">)
      .def_readonly("debt_um", &D::debt_um, doc<"RiskDraws::debt_um">)
      .def_readonly("clear_left_least_um", &D::clear_left_least_um, doc<"RiskDraws::clear_left_least_um">)
      .def_readonly("rms_um", &D::rms_um, doc<"RiskDraws::rms_um">)
      .def_readonly("touched_share", &D::touched_share, doc<"RiskDraws::touched_share">)
      .def_readonly("minutes", &D::minutes, doc<"RiskDraws::minutes">)
      .def_readonly("discs", &D::discs, doc<"RiskDraws::discs">)
      .def_readonly("levelling_efficiency", &D::levelling_efficiency, doc<"RiskDraws::levelling_efficiency">)
      .def_readonly("step_efficiency", &D::step_efficiency, doc<"RiskDraws::step_efficiency">)
      .def_readonly("is_struck_through", &D::is_struck_through, doc<"RiskDraws::is_struck_through">)
      .def_readonly("is_budget_exceeded", &D::is_budget_exceeded, doc<"RiskDraws::is_budget_exceeded">)
      .def_readonly("is_target_missed", &D::is_target_missed, doc<"RiskDraws::is_target_missed">)
      .def(py::pickle(
          [](const D& self) {
            return py::make_tuple(self.removed_um, self.levelling_um, self.overshoot_um, self.debt_um,
                                  self.clear_left_least_um, self.rms_um, self.touched_share, self.minutes, self.discs,
                                  self.levelling_efficiency, self.step_efficiency, self.is_struck_through,
                                  self.is_budget_exceeded, self.is_target_missed);
          },
          [](const py::tuple& state) {
            const auto figure = [&](int i) { return state[i].cast<std::vector<double>>(); };
            return D{figure(0), figure(1), figure(2),  figure(3),  figure(4),  figure(5),
                     figure(6), figure(7), figure(8),  figure(9),  state[10].cast<std::vector<std::vector<double>>>(),
                     figure(11), figure(12), figure(13)};
          }));
}

void bind_prediction(py::module_& module) {
  bind_risk(module);
  bind_fields<StepCautions, "StepCautions">(module);
  bind_fields<PanelPrediction, "PanelPrediction">(module);
  bind_fields<Prediction, "Prediction">(module);
  py::class_<Predicted>(module, "Predicted", doc<"Predicted">)
      .def_readonly("prediction", &Predicted::prediction, doc<"Predicted::prediction">)
      .def_readonly("histories", &Predicted::histories, doc<"Predicted::histories">)
      .def_readonly("draws", &Predicted::draws, doc<"Predicted::draws">)
      .def("to_dict", [](const Predicted& self) { return py::cast(self.prediction).attr("to_dict")(); },
           doc<"Predicted::prediction">)
      .def(py::pickle([](const Predicted& self) { return py::make_tuple(self.prediction, self.histories, self.draws); },
                      [](const py::tuple& state) {
                        return Predicted{state[0].cast<Prediction>(), state[1].cast<std::vector<History>>(),
                                         state[2].cast<std::vector<RiskDraws>>()};
                      }));
  module.def(
      "predict",
      [](const Job& job, const std::string& sequence, const py::object& progress) {
        const py::gil_scoped_release without_lock;
        return predict(job, surface_of(job), sequence, as_progress(progress));
      },
      "job"_a, py::kw_only(), "sequence"_a = "", "progress"_a = py::none(), doc<"predict">);
}

void bind_film_map(py::module_& module) {
  using P = FilmPicture;
  const auto map_of = [](Array2d P::*member) {
    return [member](const py::object& self) { return view(self.cast<const P&>().*member, self); };
  };
  py::class_<P>(module, "FilmPicture", doc<"FilmPicture">)
      .def_property_readonly("corner_x_mm", [](const P& self) { return self.corner.x_mm; }, doc<"FilmPicture::corner">)
      .def_property_readonly("corner_y_mm", [](const P& self) { return self.corner.y_mm; }, doc<"FilmPicture::corner">)
      .def_readonly("pixel_mm", &P::pixel_mm, doc<"FilmPicture::pixel_mm">)
      .def_property_readonly("total_um", map_of(&P::total_um), doc<"FilmPicture::total_um">)
      .def_property_readonly("total_sd_um", map_of(&P::total_sd_um), doc<"FilmPicture::total_sd_um">)
      .def_property_readonly("clear_um", map_of(&P::clear_um), doc<"FilmPicture::clear_um">)
      .def_property_readonly("clear_sd_um", map_of(&P::clear_sd_um), doc<"FilmPicture::clear_sd_um">);
  module.def(
      "film_picture",
      [](const Panel& panel, const Paint& paint, int pixels) { return film_picture(film_map(panel, paint), pixels); },
      "panel"_a, "paint"_a, py::kw_only(), "pixels"_a = 64, doc<"film_picture">);
}

}  // namespace

void bind_plan(py::module_& module) {
  bind_fields<Reading, "Reading">(module);
  bind_fields<Panel, "Panel">(module);
  bind_fields<SeenTexture, "SeenTexture">(module);
  bind_fields<WetTexture, "WetTexture">(module);
  bind_fields<TextureSource, "TextureSource">(module);
  bind_fields<Gauge, "Gauge">(module);
  bind_fields<Paint, "Paint">(module);
  bind_fields<Target, "Target">(module);
  bind_fields<Budget, "Budget">(module);
  bind_fields<Sequence, "Sequence">(module);
  bind_fields<Uncertainty, "Uncertainty">(module);
  bind_fields<Job, "Job">(module).def_static("load", &load_job, "path"_a, doc<"load_job">);
  module.def("surface_of", &surface_of, "job"_a, doc<"surface_of">);
  bind_budget(module);
  bind_prediction(module);
  bind_film_map(module);
}

}  // namespace libtexture::python
