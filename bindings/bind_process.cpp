// process: step, levelling of one patch, scratches, a sequence and its history.
#include <pybind11/eigen.h>

#include "libtexture/process/edge.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/process/press.hpp"
#include "libtexture/process/sequence.hpp"
#include "long_work.hpp"
#include "module.hpp"
#include "results.hpp"

namespace libtexture::python {

template <>
inline constexpr auto parts<Levelled> =
    std::tuple{optional("surface", &Levelled::surface),
               optional("removal_map_um", &Levelled::removal_map_um),
               optional("surfaces", &Levelled::surfaces),
               optional("removed_um", &Levelled::removed_um),
               optional("rms_um", &Levelled::rms_um),
               optional("peak_to_valley_um", &Levelled::peak_to_valley_um),
               optional("valley_depth_um", &Levelled::valley_depth_um),
               optional("contact_share", &Levelled::contact_share),
               optional("touched_share", &Levelled::touched_share),
               optional("increments", &Levelled::increments),
               optional("transform_pairs", &Levelled::transform_pairs),
               optional("residual", &Levelled::residual),
               optional("amplitude_error_um", &Levelled::amplitude_error_um)};

template <>
inline constexpr auto parts<Pressed> = std::tuple{optional("pressure_kpa", &Pressed::pressure_kpa),
                                                  optional("contact_share", &Pressed::contact_share),
                                                  optional("mean_gap_um", &Pressed::mean_gap_um),
                                                  optional("iterations", &Pressed::iterations),
                                                  optional("transform_pairs", &Pressed::transform_pairs),
                                                  optional("residual", &Pressed::residual)};

template <>
inline constexpr auto parts<DepthLaw> =
    std::tuple{optional("grooves", &DepthLaw::grooves), optional("area_share", &DepthLaw::area_share)};

template <>
inline constexpr auto parts<ScratchPopulation> = std::tuple{
    optional("figures", &ScratchPopulation::figures), optional("removal_um", &ScratchPopulation::removal_um)};

template <>
inline constexpr auto parts<Scratches> = std::tuple{optional("populations", &Scratches::populations)};

template <>
inline constexpr auto parts<History> = std::tuple{optional("start", &History::start),
                                                  optional("passes", &History::passes),
                                                  optional("steps", &History::steps),
                                                  optional("band_edges_mm", &History::band_edges_mm),
                                                  optional("before", &History::before),
                                                  optional("surfaces", &History::surfaces),
                                                  optional("scratches", &History::scratches),
                                                  optional("warnings", &History::warnings),
                                                  optional("transform_pairs", &History::transform_pairs)};

template <>
inline constexpr auto parts<EdgePressure> =
    std::tuple{optional("distance_mm", &EdgePressure::distance_mm),
               optional("pressure_kpa", &EdgePressure::pressure_kpa),
               optional("line_load_n_per_mm", &EdgePressure::line_load_n_per_mm),
               optional("plate_slope", &EdgePressure::plate_slope)};

template <>
inline constexpr auto parts<EdgeProfile> =
    std::tuple{optional("distance_mm", &EdgeProfile::distance_mm),
               optional("removal_um", &EdgeProfile::removal_um),
               optional("removed_area_mm2", &EdgeProfile::removed_area_mm2),
               optional("peak_removal_um", &EdgeProfile::peak_removal_um),
               optional("margin_mm", &EdgeProfile::margin_mm),
               optional("pixel_mm", &EdgeProfile::pixel_mm),
               optional("transform_pairs", &EdgeProfile::transform_pairs),
               optional("residual", &EdgeProfile::residual),
               optional("balance", &EdgeProfile::balance)};
namespace {

using namespace py::literals;

void bind_levelling(py::module_& module) {
  auto levelled = bind_result<Levelled>(module, "Levelled");
  def_to_pandas(levelled);
  def_to_xarray(levelled);
  def_with_options<LevelOptions>(
      module, "LevelOptions", "level",
      "field: HeightField, backing: Backing, *, pressure_kpa: float, " LONG_WORK, "Levelled", doc("level"),
      [](const HeightField& field, const Backing& backing, double pressure_kpa, const py::object& progress,
         int threads, const py::kwargs& given) {
        const auto options = value_of<LevelOptions>(given, "level");
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        return level(field, backing, pressure_kpa, options, work.progress());
      },
      "field"_a, "backing"_a, py::kw_only(), "pressure_kpa"_a, LONG_WORK_ARGUMENTS);
}

void bind_press(py::module_& module) {
  auto pressed = bind_result<Pressed>(module, "Pressed");
  def_to_xarray(pressed);
  module.def(
      "press",
      [](const HeightField& field, const Backing& backing, double pressure_kpa, const py::object& progress,
         int threads) {
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        return press(field, backing, pressure_kpa, work.progress());
      },
      "field"_a, "backing"_a, py::kw_only(), "pressure_kpa"_a, LONG_WORK_ARGUMENTS, doc("press"));
}

void bind_scratches(py::module_& module) {
  bind_result<DepthLaw>(module, "DepthLaw");
  bind_fields<GrooveFigures>(module, "GrooveFigures");
  bind_fields<ScratchLimits>(module, "ScratchLimits");
  bind_result<ScratchPopulation>(module, "ScratchPopulation");
  bind_result<Scratches>(module, "Scratches");
  module.def("depth_laws", &depth_laws, "scratches"_a, doc("depth_laws"),
             py::call_guard<py::gil_scoped_release>());
  module.def(
      "specular_share_map",
      [](const Scratches& scratches, double angle_deg) {
        return array_of(without_lock([&] { return specular_share_map(scratches, angle_deg); }));
      },
      "scratches"_a, py::kw_only(), "angle_deg"_a = 45.0, doc("specular_share_map"));
  module.def(
      "clear_owed_by_population_um",
      [](const Scratches& scratches, const ScratchLimits& limits) {
        return clear_owed_by_population_um(scratches, limits);
      },
      "scratches"_a, py::kw_only(), "limits"_a = ScratchLimits{}, doc("clear_owed_by_population_um"),
      py::call_guard<py::gil_scoped_release>());
}

void bind_history(py::module_& module) {
  bind_fields<HistoryRow>(module, "HistoryRow");
  auto history = bind_result<History>(module, "History");
  history.def_property_readonly("removed_um", &History::removed_um, doc("History::removed_um"));
  def_to_pandas(history);
}

void bind_sequence(py::module_& module) {
  bind_fields<Stop>(module, "Stop");
  bind_fields<Step>(module, "Step");
  module.def("titles_of", &titles_of, "steps"_a, doc("titles_of"));
  def_with_options<SimulateOptions>(
      module, "SimulateOptions", "simulate",
      "*, surface: HeightField, coating: Coating, steps: list[Step], " LONG_WORK, "History", doc("simulate"),
      [](const HeightField& surface, const Coating& coating, const std::vector<Step>& steps,
         const py::object& progress, int threads, const py::kwargs& given) {
        const auto options = value_of<SimulateOptions>(given, "simulate");
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        return simulate(surface, coating, steps, options, work.progress());
      },
      py::kw_only(), "surface"_a, "coating"_a, "steps"_a, LONG_WORK_ARGUMENTS);
}

void bind_edge(py::module_& module) {
  bind_fields<EdgeClear>(module, "EdgeClear");
  auto pressure = bind_result<EdgePressure>(module, "EdgePressure");
  def_to_pandas(pressure);
  auto profile = bind_result<EdgeProfile>(module, "EdgeProfile");
  def_to_pandas(profile);
  def_with_options<EdgeOptions>(
      module, "EdgeOptions", "edge_pressure", "backing: Backing, motion: Motion, *, centre_mm: float",
      "EdgePressure", doc("edge_pressure"),
      [](const Backing& backing, const Motion& motion, double centre_mm, const py::kwargs& given) {
        const auto options = value_of<EdgeOptions>(given, "edge_pressure");
        const py::gil_scoped_release without_lock;
        return edge_pressure(backing, motion, options, centre_mm);
      },
      "backing"_a, "motion"_a, py::kw_only(), "centre_mm"_a);
  def_with_options<EdgeOptions>(
      module, "EdgeOptions", "edge_profile", "backing: Backing, motion: Motion, *, " LONG_WORK, "EdgeProfile",
      doc("edge_profile"),
      [](const Backing& backing, const Motion& motion, const py::object& progress, int threads,
         const py::kwargs& given) {
        const auto options = value_of<EdgeOptions>(given, "edge_profile");
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        return edge_profile(backing, motion, options, work.progress());
      },
      "backing"_a, "motion"_a, py::kw_only(), LONG_WORK_ARGUMENTS);
  module.def("unsanded_margin_mm", &unsanded_margin_mm, "profile"_a, "clear"_a, doc("unsanded_margin_mm"));
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
