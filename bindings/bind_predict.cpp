// plan: a prediction, its risk, and the picture of the film.
#include "arrays.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/predict.hpp"
#include "long_work.hpp"
#include "module.hpp"
#include "results.hpp"

namespace libtexture::python {

template <>
inline constexpr auto parts<RiskDraws> =
    std::tuple{optional("removed_um", &RiskDraws::removed_um),
               optional("levelling_um", &RiskDraws::levelling_um),
               optional("overshoot_um", &RiskDraws::overshoot_um),
               optional("debt_um", &RiskDraws::debt_um),
               optional("clear_before_um", &RiskDraws::clear_before_um),
               optional("removable_um", &RiskDraws::removable_um),
               optional("clear_left_um", &RiskDraws::clear_left_um),
               optional("clear_left_least_um", &RiskDraws::clear_left_least_um),
               optional("rms_um", &RiskDraws::rms_um),
               optional("touched_share", &RiskDraws::touched_share),
               optional("minutes", &RiskDraws::minutes),
               optional("discs", &RiskDraws::discs),
               optional("levelling_efficiency", &RiskDraws::levelling_efficiency),
               optional("step_efficiency", &RiskDraws::step_efficiency),
               optional("is_struck_through", &RiskDraws::is_struck_through),
               optional("is_budget_exceeded", &RiskDraws::is_budget_exceeded),
               optional("is_clear_left_short", &RiskDraws::is_clear_left_short),
               optional("is_short_before", &RiskDraws::is_short_before),
               optional("is_broken_by_work", &RiskDraws::is_broken_by_work),
               optional("is_target_missed", &RiskDraws::is_target_missed),
               optional("is_target_met_before", &RiskDraws::is_target_met_before),
               optional("defect_left_um", &RiskDraws::defect_left_um),
               optional("defect_removed_um", &RiskDraws::defect_removed_um),
               optional("is_defect_left", &RiskDraws::is_defect_left)};

template <>
inline constexpr auto parts<Place> =
    std::tuple{optional("x_mm", &Place::x_mm), optional("y_mm", &Place::y_mm)};

template <>
inline constexpr auto parts<FilmPicture> = std::tuple{
    optional("corner", &FilmPicture::corner),     optional("pixel_mm", &FilmPicture::pixel_mm),
    optional("total_um", &FilmPicture::total_um), optional("total_sd_um", &FilmPicture::total_sd_um),
    optional("clear_um", &FilmPicture::clear_um), optional("clear_sd_um", &FilmPicture::clear_sd_um)};

using namespace py::literals;

namespace {

void bind_risk(py::module_& module) {
  bind_fields<Spread>(module, "Spread");
  bind_fields<TextureLeft>(module, "TextureLeft");
  bind_fields<VarianceShares>(module, "VarianceShares");
  bind_fields<PanelRisk>(module, "PanelRisk");
  auto draws = bind_result<RiskDraws>(module, "RiskDraws");
  def_to_pandas(draws);
}

void bind_prediction(py::module_& module) {
  bind_fields<LabourMinutes>(module, "LabourMinutes");
  bind_fields<DiscLife>(module, "DiscLife");
  bind_fields<DiscSizeMinutes>(module, "DiscSizeMinutes");
  bind_fields<EdgeMargin>(module, "EdgeMargin");
  bind_fields<DefectWay>(module, "DefectWay");
  bind_fields<DefectAnswer>(module, "DefectAnswer");
  auto panel = bind_fields<PanelPrediction>(module, "PanelPrediction");
  def_to_pandas(panel);
  auto prediction = bind_fields<Prediction>(module, "Prediction");
  def_to_pandas(prediction);
  py::class_<Predicted> predicted(module, "Predicted", doc("Predicted"));
  def_html(predicted);
  def_to_pandas(predicted);
  predicted.def_readonly("prediction", &Predicted::prediction, doc("Predicted::prediction"))
      .def_readonly("histories", &Predicted::histories, doc("Predicted::histories"))
      .def_readonly("draws", &Predicted::draws, doc("Predicted::draws"))
      .def(
          "to_dict", [](const Predicted& self) { return py::cast(self.prediction).attr("to_dict")(); },
          doc("Predicted::prediction"))
      .def(py::pickle(
          [](const Predicted& self) { return py::make_tuple(self.prediction, self.histories, self.draws); },
          [](const py::tuple& state) {
            return Predicted{state[0].cast<Prediction>(), state[1].cast<std::vector<History>>(),
                             state[2].cast<std::vector<RiskDraws>>()};
          }));
  module.def(
      "predict",
      [](const Job& job, const std::string& sequence, const py::object& progress, int threads) {
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        Predicted result = predict(job, surface_of(job), sequence, work.progress());
        add_new(result.prediction.warnings, surface_notes(job));
        return result;
      },
      "job"_a, py::kw_only(), "sequence"_a = "", LONG_WORK_ARGUMENTS, doc("predict"));
}

void bind_film_map(py::module_& module) {
  using P = FilmPicture;
  const auto map_of = [](Array2d P::*member) {
    return [member](const py::object& self) { return view(self.cast<const P&>().*member, self); };
  };
  py::class_<P> bound(module, "FilmPicture", doc("FilmPicture"));
  def_html(bound);
  def_to_xarray(bound);
  bound.def("to_dict", &plain_of<P>, "The members as plain values; maps as lists of rows.")
      .def_static(
          "from_dict", [](const py::dict& members) { return result_from_plain<P>(members, "FilmPicture"); },
          "members"_a, "The picture of such a dict; ValueError where a member is wrong.")
      .def(py::pickle(&plain_of<P>,
                      [](const py::object& state) { return result_from_plain<P>(state, "FilmPicture"); }))
      .def_property_readonly(
          "corner_x_mm", [](const P& self) { return self.corner.x_mm; }, doc("FilmPicture::corner"))
      .def_property_readonly(
          "corner_y_mm", [](const P& self) { return self.corner.y_mm; }, doc("FilmPicture::corner"))
      .def_readonly("pixel_mm", &P::pixel_mm, doc("FilmPicture::pixel_mm"))
      .def_property_readonly("total_um", map_of(&P::total_um), doc("FilmPicture::total_um"))
      .def_property_readonly("total_sd_um", map_of(&P::total_sd_um), doc("FilmPicture::total_sd_um"))
      .def_property_readonly("clear_um", map_of(&P::clear_um), doc("FilmPicture::clear_um"))
      .def_property_readonly("clear_sd_um", map_of(&P::clear_sd_um), doc("FilmPicture::clear_sd_um"));
  module.def(
      "film_picture",
      [](const Panel& panel, const Paint& paint, int pixels) {
        return film_picture(film_map(panel, paint), pixels);
      },
      "panel"_a, "paint"_a, py::kw_only(), "pixels"_a = 64, doc("film_picture"),
      py::call_guard<py::gil_scoped_release>());
}

}  // namespace

void bind_predict(py::module_& module) {
  bind_risk(module);
  bind_prediction(module);
  bind_film_map(module);
}

}  // namespace libtexture::python
