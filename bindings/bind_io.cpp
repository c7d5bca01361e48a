// io: surface files and the catalogue of tools. A file that is missing crosses as FileNotFoundError.
#include <pybind11/stl.h>
#include <pybind11/stl/filesystem.h>

#include <utility>
#include <vector>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/readings_file.hpp"
#include "libtexture/io/surface_file.hpp"
#include "libtexture/io/toml_file.hpp"
#include "libtexture/io/whole_file.hpp"
#include "module.hpp"
#include "results.hpp"

namespace libtexture::python {

template <>
inline constexpr auto parts<Catalogue> = std::tuple{
    optional("abrasives", &Catalogue::abrasives), optional("backings", &Catalogue::backings),
    optional("motions", &Catalogue::motions), optional("backing_ranges", &Catalogue::backing_ranges),
    optional("motion_ranges", &Catalogue::motion_ranges)};
namespace {

using namespace py::literals;

void bind_files(py::module_& module) {
  py::register_exception_translator([](std::exception_ptr thrown) {
    try {
      std::rethrow_exception(thrown);
    } catch (const FileMissing& error) {
      PyErr_SetString(PyExc_FileNotFoundError, error.what());
    }
  });
  module.def("read_readings", &read_readings, "path"_a, doc("read_readings"));
  module.def("read_surface", &read_surface, "path"_a, py::kw_only(), "pixel_mm"_a = py::none(),
             doc("read_surface"));
  module.def(
      "_write_whole_files",
      [](const std::vector<std::pair<std::filesystem::path, py::bytes>>& contents) {
        std::vector<FileContent> files;
        for (const auto& [path, bytes] : contents) files.push_back({path, bytes});
        write_whole_files(files);
      },
      "contents"_a, "Writes files (path, bytes), all of them or none.");
  module.def("write_surface", &write_surface, "field"_a, "path"_a, doc("write_surface"));
}

void bind_catalogue(py::module_& module) {
  bind_result<Catalogue>(module, "Catalogue")
      .def_static("shipped", &shipped_catalogue, doc("shipped_catalogue"))
      .def(
          "extended",
          [](const Catalogue& self, const std::filesystem::path& path) {
            return extended(self, read_toml(path));
          },
          "path"_a, doc("extended"));
}

}  // namespace

void bind_io(py::module_& module) {
  bind_files(module);
  bind_catalogue(module);
}

}  // namespace libtexture::python
