// plan: a job as plain values; its files are read on the io floor.
#include <pybind11/stl/filesystem.h>

#include "libtexture/io/job_file.hpp"
#include "libtexture/plan/job.hpp"
#include "module.hpp"
#include "values.hpp"

namespace libtexture::python {

using namespace py::literals;

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
  bind_fields<Job, "Job">(module).def_static("load", &load_job, "path"_a, doc<"load_job">);
}

}  // namespace libtexture::python
