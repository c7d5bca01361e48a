// process: step, levelling of one patch, scratches, a sequence and its history.
#include <pybind11/eigen.h>

#include "arrays.hpp"
#include "libtexture/process/edge.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/process/press.hpp"
#include "libtexture/process/sequence.hpp"
#include "module.hpp"
#include "progress.hpp"
#include "values.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;

/// Pickling of a result struct: all its members, in order.
template <class T, class... Members>
auto pickle_of(Members T::*... members) {
  return py::pickle([=](const T& self) { return py::make_tuple(self.*members...); },
                    [](const py::tuple& state) {
                      return [&]<std::size_t... I>(std::index_sequence<I...>) {
                        return T{state[I].template cast<Members>()...};
                      }
                      (std::index_sequence_for<Members...>{});
                    });
}

/// A getter of a vector or map member, as a view.
template <class T, class Values>
auto view_of(Values T::*member) {
  return [member](const py::object& self) { return view(self.cast<const T&>().*member, self); };
}

void bind_levelling(py::module_& module) {
  using L = Levelled;
  py::class_<L>(module, "Levelled", doc<"Levelled">)
      .def_readonly("surface", &L::surface, doc<"Levelled::surface">)
      .def_property_readonly("removal_map_um", view_of(&L::removal_map_um), doc<"Levelled::removal_map_um">)
      .def_readonly("surfaces", &L::surfaces, doc<"Levelled::surfaces">)
      .def_property_readonly("removed_um", view_of(&L::removed_um), doc<"Levelled::removed_um">)
      .def_property_readonly("rms_um", view_of(&L::rms_um), doc<"Levelled::rms_um">)
      .def_property_readonly("peak_to_valley_um", view_of(&L::peak_to_valley_um),
                             doc<"Levelled::peak_to_valley_um">)
      .def_property_readonly("valley_depth_um", view_of(&L::valley_depth_um),
                             doc<"Levelled::valley_depth_um">)
      .def_property_readonly("contact_share", view_of(&L::contact_share), doc<"Levelled::contact_share">)
      .def_property_readonly("touched_share", view_of(&L::touched_share), doc<"Levelled::touched_share">)
      .def_readonly("increments", &L::increments, doc<"Levelled::increments">)
      .def_readonly("transform_pairs", &L::transform_pairs, doc<"Levelled::transform_pairs">)
      .def_readonly("residual", &L::residual, doc<"Levelled::residual">)
      .def_readonly("amplitude_error_um", &L::amplitude_error_um, doc<"Levelled::amplitude_error_um">)
      .def(pickle_of(&L::surface, &L::removal_map_um, &L::surfaces, &L::removed_um, &L::rms_um,
                     &L::peak_to_valley_um, &L::valley_depth_um, &L::contact_share, &L::touched_share,
                     &L::increments, &L::transform_pairs, &L::residual, &L::amplitude_error_um));
  def_with_options<LevelOptions, "LevelOptions">(
      module, "level",
      "field: HeightField, backing: Backing, *, pressure_kpa: float, progress: Callable[[float], object] | "
      "None = None",
      "Levelled", doc<"level">,
      [](const HeightField& field, const Backing& backing, double pressure_kpa, const py::object& progress,
         const py::kwargs& given) {
        const auto options = value_of<LevelOptions>(given, "level");
        const py::gil_scoped_release without_lock;
        return level(field, backing, pressure_kpa, options, as_progress(progress));
      },
      "field"_a, "backing"_a, py::kw_only(), "pressure_kpa"_a, "progress"_a = py::none());
}

void bind_press(py::module_& module) {
  using P = Pressed;
  py::class_<P>(module, "Pressed", doc<"Pressed">)
      .def_property_readonly("pressure_kpa", view_of(&P::pressure_kpa), doc<"Pressed::pressure_kpa">)
      .def_readonly("contact_share", &P::contact_share, doc<"Pressed::contact_share">)
      .def_readonly("mean_gap_um", &P::mean_gap_um, doc<"Pressed::mean_gap_um">)
      .def_readonly("iterations", &P::iterations, doc<"Pressed::iterations">)
      .def_readonly("transform_pairs", &P::transform_pairs, doc<"Pressed::transform_pairs">)
      .def_readonly("residual", &P::residual, doc<"Pressed::residual">)
      .def(pickle_of(&P::pressure_kpa, &P::contact_share, &P::mean_gap_um, &P::iterations, &P::transform_pairs, &P::residual));
  module.def(
      "press",
      [](const HeightField& field, const Backing& backing, double pressure_kpa, const py::object& progress) {
        const py::gil_scoped_release without_lock;
        return press(field, backing, pressure_kpa, as_progress(progress));
      },
      "field"_a, "backing"_a, py::kw_only(), "pressure_kpa"_a, "progress"_a = py::none(), doc<"press">);
}

void bind_scratches(py::module_& module) {
  py::class_<DepthLaw>(module, "DepthLaw", doc<"DepthLaw">)
      .def_readonly("grooves", &DepthLaw::grooves, doc<"DepthLaw::grooves">)
      .def_readonly("area_share", &DepthLaw::area_share, doc<"DepthLaw::area_share">)
      .def(pickle_of(&DepthLaw::grooves, &DepthLaw::area_share));
  bind_fields<GrooveFigures, "GrooveFigures">(module);
  bind_fields<ScratchLimits, "ScratchLimits">(module);
  using P = ScratchPopulation;
  py::class_<P>(module, "ScratchPopulation", doc<"ScratchPopulation">)
      .def_readonly("figures", &P::figures, doc<"ScratchPopulation::figures">)
      .def_property_readonly("removal_um", view_of(&P::removal_um), doc<"ScratchPopulation::removal_um">)
      .def(pickle_of(&P::figures, &P::removal_um));
  py::class_<Scratches>(module, "Scratches", doc<"Scratches">)
      .def_readonly("populations", &Scratches::populations, doc<"Scratches::populations">)
      .def(pickle_of(&Scratches::populations));
  module.def("depth_laws", &depth_laws, "scratches"_a, doc<"depth_laws">,
             py::call_guard<py::gil_scoped_release>());
  module.def(
      "specular_share_map",
      [](const Scratches& scratches, double angle_deg) {
        return array_of(specular_share_map(scratches, angle_deg));
      },
      "scratches"_a, py::kw_only(), "angle_deg"_a = 45.0, doc<"specular_share_map">);
  module.def(
      "clear_owed_by_population_um",
      [](const Scratches& scratches, const ScratchLimits& limits) {
        return clear_owed_by_population_um(scratches, limits);
      },
      "scratches"_a, py::kw_only(), "limits"_a = ScratchLimits{}, doc<"clear_owed_by_population_um">);
}

void bind_history(py::module_& module) {
  bind_fields<HistoryRow, "HistoryRow">(module);
  using H = History;
  py::class_<H>(module, "History", doc<"History">)
      .def_readonly("start", &H::start, doc<"History::start">)
      .def_readonly("passes", &H::passes, doc<"History::passes">)
      .def_readonly("steps", &H::steps, doc<"History::steps">)
      .def_property_readonly("band_edges_mm", view_of(&H::band_edges_mm), doc<"History::band_edges_mm">)
      .def_readonly("before", &H::before, doc<"History::before">)
      .def_readonly("surfaces", &H::surfaces, doc<"History::surfaces">)
      .def_readonly("scratches", &H::scratches, doc<"History::scratches">)
      .def_readonly("warnings", &H::warnings, doc<"History::warnings">)
      .def_readonly("transform_pairs", &H::transform_pairs, doc<"History::transform_pairs">)
      .def_property_readonly("removed_um", &H::removed_um, doc<"History::removed_um">)
      .def(pickle_of(&H::start, &H::passes, &H::steps, &H::band_edges_mm, &H::before, &H::surfaces,
                     &H::scratches, &H::warnings, &H::transform_pairs));
}

void bind_sequence(py::module_& module) {
  bind_fields<Stop, "Stop">(module);
  bind_fields<Step, "Step">(module);
  def_with_options<SimulateOptions, "SimulateOptions">(
      module, "simulate",
      "*, surface: HeightField, coating: Coating, steps: list[Step], progress: Callable[[float], object] | "
      "None = None",
      "History", doc<"simulate">,
      [](const HeightField& surface, const Coating& coating, const std::vector<Step>& steps,
         const py::object& progress, const py::kwargs& given) {
        const auto options = value_of<SimulateOptions>(given, "simulate");
        const py::gil_scoped_release without_lock;
        return simulate(surface, coating, steps, options, as_progress(progress));
      },
      py::kw_only(), "surface"_a, "coating"_a, "steps"_a, "progress"_a = py::none());
}

void bind_edge(py::module_& module) {
  bind_fields<EdgeClear, "EdgeClear">(module);
  using P = EdgePressure;
  py::class_<P>(module, "EdgePressure", doc<"EdgePressure">)
      .def_property_readonly("distance_mm", view_of(&P::distance_mm), doc<"EdgePressure::distance_mm">)
      .def_property_readonly("pressure_kpa", view_of(&P::pressure_kpa), doc<"EdgePressure::pressure_kpa">)
      .def_readonly("line_load_n_per_mm", &P::line_load_n_per_mm, doc<"EdgePressure::line_load_n_per_mm">)
      .def_readonly("plate_slope", &P::plate_slope, doc<"EdgePressure::plate_slope">)
      .def(pickle_of(&P::distance_mm, &P::pressure_kpa, &P::line_load_n_per_mm, &P::plate_slope));
  using E = EdgeProfile;
  py::class_<E>(module, "EdgeProfile", doc<"EdgeProfile">)
      .def_property_readonly("distance_mm", view_of(&E::distance_mm), doc<"EdgeProfile::distance_mm">)
      .def_property_readonly("removal_um", view_of(&E::removal_um), doc<"EdgeProfile::removal_um">)
      .def_readonly("removed_area_mm2", &E::removed_area_mm2, doc<"EdgeProfile::removed_area_mm2">)
      .def_readonly("peak_removal_um", &E::peak_removal_um, doc<"EdgeProfile::peak_removal_um">)
      .def_readonly("margin_mm", &E::margin_mm, doc<"EdgeProfile::margin_mm">)
      .def_readonly("pixel_mm", &E::pixel_mm, doc<"EdgeProfile::pixel_mm">)
      .def_readonly("transform_pairs", &E::transform_pairs, doc<"EdgeProfile::transform_pairs">)
      .def_readonly("residual", &E::residual, doc<"EdgeProfile::residual">)
      .def_readonly("balance", &E::balance, doc<"EdgeProfile::balance">)
      .def(pickle_of(&E::distance_mm, &E::removal_um, &E::removed_area_mm2, &E::peak_removal_um,
                     &E::margin_mm, &E::pixel_mm, &E::transform_pairs, &E::residual, &E::balance));
  def_with_options<EdgeOptions, "EdgeOptions">(
      module, "edge_pressure", "backing: Backing, motion: Motion, *, centre_mm: float", "EdgePressure",
      doc<"edge_pressure">,
      [](const Backing& backing, const Motion& motion, double centre_mm, const py::kwargs& given) {
        const auto options = value_of<EdgeOptions>(given, "edge_pressure");
        const py::gil_scoped_release without_lock;
        return edge_pressure(backing, motion, options, centre_mm);
      },
      "backing"_a, "motion"_a, py::kw_only(), "centre_mm"_a);
  def_with_options<EdgeOptions, "EdgeOptions">(
      module, "edge_profile",
      "backing: Backing, motion: Motion, *, progress: Callable[[float], object] | None = None", "EdgeProfile",
      doc<"edge_profile">,
      [](const Backing& backing, const Motion& motion, const py::object& progress, const py::kwargs& given) {
        const auto options = value_of<EdgeOptions>(given, "edge_profile");
        const py::gil_scoped_release without_lock;
        return edge_profile(backing, motion, options, as_progress(progress));
      },
      "backing"_a, "motion"_a, py::kw_only(), "progress"_a = py::none());
  module.def("unsanded_margin_mm", &unsanded_margin_mm, "profile"_a, "clear"_a, doc<"unsanded_margin_mm">);
}

}  // namespace

void bind_process(py::module_& module) {
  bind_levelling(module);
  bind_press(module);
  bind_scratches(module);
  bind_history(module);
  bind_sequence(module);
  bind_edge(module);
}

}  // namespace libtexture::python
