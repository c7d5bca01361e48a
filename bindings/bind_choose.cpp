// plan: choosing: compare and recommend, over the job's catalogue.
#include "libtexture/io/job_file.hpp"
#include "libtexture/plan/compare.hpp"
#include "libtexture/plan/pareto.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/plan/recommend.hpp"
#include "long_work.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {

using namespace py::literals;

void bind_choose(py::module_& module) {
  bind_fields<Reached>(module, "Reached");
  bind_fields<Difference>(module, "Difference");
  bind_fields<Alternative>(module, "Alternative");
  auto comparison = bind_fields<Comparison>(module, "Comparison");
  def_to_pandas(comparison);
  bind_fields<FirstStep>(module, "FirstStep");
  bind_fields<Recommendation>(module, "Recommendation");
  bind_fields<Machine>(module, "Machine");
  module.def("pareto_front", &pareto_front, "costs"_a, doc("pareto_front"));
  module.def(
      "judge_target",
      [](const Target& target, const HeightField& before, const HeightField& now, double touched_share,
         double clarity_light, double contrast) {
        return judge_target(target, before, now, touched_share, clarity_light, contrast);
      },
      "target"_a, py::kw_only(), "before"_a, "now"_a, "touched_share"_a, "clarity_light"_a = 1.0,
      "contrast"_a = 1.0, doc("judge_target"));
  module.def(
      "compare",
      [](const Job& job, const py::object& progress, int threads) {
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        Comparison result = compare(job, surface_of(job), work.progress());
        add_new(result.warnings, surface_notes(job));
        return result;
      },
      "job"_a, py::kw_only(), LONG_WORK_ARGUMENTS, doc("compare"));
  def_with_options<WorkLimits>(
      module, "WorkLimits", "recommend", "job: Job, *, machine: Machine = Machine(), " LONG_WORK,
      "Recommendation", doc("recommend"),
      [](const Job& job, const Machine& machine, const py::object& progress, int threads,
         const py::kwargs& given) {
        const auto limits = value_of<WorkLimits>(given, "recommend");
        const LongWork work(progress, threads);
        const py::gil_scoped_release without_lock;
        Recommendation result =
            recommend(job, surface_of(job), tools_of(job, machine), limits, work.progress());
        add_new(result.comparison.warnings, surface_notes(job));
        return result;
      },
      "job"_a, py::kw_only(), "machine"_a = Machine{}, LONG_WORK_ARGUMENTS);
}

}  // namespace libtexture::python
