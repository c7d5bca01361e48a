// plan, calibrating: test spot, bench and compression curve, with their files.
#include <pybind11/stl/filesystem.h>

#include <optional>
#include <variant>

#include "libtexture/io/bench_file.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/io/test_spot_file.hpp"
#include "libtexture/plan/belief_moved.hpp"
#include "libtexture/plan/bench.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/compression.hpp"
#include "libtexture/plan/spot_plan.hpp"
#include "libtexture/plan/test_spot.hpp"
#include "long_work.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;
using Readings = std::variant<TestSpot, std::filesystem::path>;

TestSpot spot_of(const Readings& readings) {
  if (const auto* spot = std::get_if<TestSpot>(&readings)) return *spot;
  return read_test_spot(std::get<std::filesystem::path>(readings));
}

// The curves, where the spot asks for them.
SpotCurves curves_for(const Job& job, const TestSpot& spot, const Progress& progress) {
  return tells_texture(spot) ? curves_of(job, spot, surface_of(job), progress) : SpotCurves();
}

// calibrate() answered with the job alone in 0.1: what asks a Calibration for a job's own names, or passes it
// on as a job, still works, and warns.
void warn_of_old_calibration() {
  if (PyErr_WarnEx(PyExc_DeprecationWarning, "calibrate() answers with .result and .job: write .job", 1) != 0)
    throw py::error_already_set();
}

py::object job_attribute(const py::object& self, const std::string& name) {
  if (name.starts_with("_") || !py::hasattr(py::type::of<Job>(), name.c_str()))
    throw py::attribute_error("'Calibration' object has no attribute '" + name + "'");
  warn_of_old_calibration();
  return self.attr("job").attr(name.c_str());
}

PyObject* job_in_calibration(PyObject* given, PyTypeObject*) {
  if (!py::isinstance<Calibration>(given)) return nullptr;
  warn_of_old_calibration();
  return py::handle(given).attr("job").cast<py::object>().release().ptr();
}

void bind_calibration(py::module_& module) {
  bind_fields<Calibration>(module, "Calibration").def("__getattr__", &job_attribute, "name"_a);
  py::detail::get_type_info(typeid(Job))->implicit_conversions.push_back(&job_in_calibration);
}

void bind_test_spot(py::module_& module) {
  bind_fields<TestSpot>(module, "TestSpot");
  bind_fields<Belief>(module, "Belief");
  bind_fields<TaughtAbrasive>(module, "TaughtAbrasive");
  bind_fields<TestSpotResult>(module, "TestSpotResult");
  bind_calibration(module);
  bind_fields<SpotAim>(module, "SpotAim");
  bind_fields<SpotPlan>(module, "SpotPlan");
  module.def("spot_plan", &spot_plan, "job"_a, "aim"_a = SpotAim(), doc("spot_plan"));
  module.def("read_test_spot", &read_test_spot, "path"_a, doc("read_test_spot"));
  module.def(
      "judge_test_spot",
      [](const Job& job, const Readings& readings, const py::object& progress, int threads) {
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        const TestSpot spot = spot_of(readings);
        return judge_test_spot(job, spot, curves_for(job, spot, work.progress()));
      },
      "job"_a, "readings"_a, py::kw_only(), LONG_WORK_ARGUMENTS, doc("judge_test_spot"));
  module.def(
      "what_moved_belief",
      [](const Job& job, const Readings& readings, const py::object& progress, int threads) {
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        const TestSpot spot = spot_of(readings);
        return what_moved_belief(job, spot, curves_for(job, spot, work.progress()));
      },
      "job"_a, "readings"_a, py::kw_only(), LONG_WORK_ARGUMENTS, doc("what_moved_belief"));
  module.def(
      "calibrate",
      [](const Job& job, const Readings& readings, const py::object& progress, int threads) {
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        const TestSpot spot = spot_of(readings);
        return calibrate(job, spot, curves_for(job, spot, work.progress()));
      },
      "job"_a, "readings"_a, py::kw_only(), LONG_WORK_ARGUMENTS, doc("calibrate"));
}

void bind_bench(py::module_& module) {
  bind_fields<BenchRun>(module, "BenchRun");
  bind_fields<Bench>(module, "Bench");
  bind_fields<BenchResult>(module, "BenchResult");
  bind_fields<BenchComparison>(module, "BenchComparison");
  module.def("read_bench", &read_bench, "path"_a, doc("read_bench"));
  module.def("judge_bench", &judge_bench, "bench"_a, doc("judge_bench"));
  module.def("abrasive_of", &abrasive_of, "bench"_a, "result"_a, py::kw_only(), "like"_a, "source"_a,
             doc("abrasive_of"));
  module.def("size_exponent", &size_exponent, "benches"_a, "results"_a, doc("size_exponent"));
  module.def("compare_benches", &compare_benches, "first"_a, "second"_a, doc("compare_benches"));
  module.def("runs_needed", &runs_needed, py::kw_only(), "difference_percent"_a, "log_sd"_a, "power"_a = 0.8,
             doc("runs_needed"));
  module.def("bench_cautions", &bench_cautions, py::kw_only(), "wetness"_a, doc("bench_cautions"));
  module.def("catalogue_entry", &catalogue_entry, "abrasive"_a, doc("catalogue_entry"));
}

void bind_compression(py::module_& module) {
  bind_fields<CompressionCurve>(module, "CompressionCurve");
  bind_fields<CompressionResult>(module, "CompressionResult");
  module.def("read_compression", &read_compression, "path"_a, doc("read_compression"));
  module.def("judge_compression", &judge_compression, "curve"_a, doc("judge_compression"));
}

}  // namespace

void bind_calibrate(py::module_& module) {
  bind_test_spot(module);
  bind_bench(module);
  bind_compression(module);
}

}  // namespace libtexture::python
