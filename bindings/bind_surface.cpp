// surface: height field, texture, metrology, coating, wet film, optics.
#include "arrays.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/surface/coating.hpp"
#include "libtexture/surface/gloss.hpp"
#include "libtexture/surface/height_field.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/metrology.hpp"
#include "libtexture/surface/reflection.hpp"
#include "libtexture/surface/slope.hpp"
#include "libtexture/surface/specular_share.hpp"
#include "libtexture/surface/texture.hpp"
#include "libtexture/surface/viewer.hpp"
#include "libtexture/surface/wet_film.hpp"
#include "long_work.hpp"
#include "module.hpp"
#include "results.hpp"

namespace libtexture::python {
namespace {

using namespace py::literals;
using WithoutLock = py::call_guard<py::gil_scoped_release>;  // other Python threads run on

HeightField height_field(const py::object& height_um, double pixel_mm, bool periodic) {
  require(periodic, "HeightField", "periodic",
          "must be True: waves are worked in Fourier space; mirror or detrend the map first", "False");
  return HeightField(map_of(height_um, "HeightField", "height_um"), pixel_mm);
}

void bind_height_field(py::module_& module) {
  py::class_<HeightField> bound(module, "HeightField", doc("HeightField"));
  def_html(bound);
  def_to_xarray(bound);
  bound
      .def(py::init(&height_field), py::kw_only(), "height_um"_a, "pixel_mm"_a, "periodic"_a = true,
           doc("HeightField::HeightField"))
      .def_property_readonly(
          "height_um",
          [](const py::object& self) { return view(self.cast<const HeightField&>().height_um(), self); },
          doc("HeightField::height_um"))
      .def_property_readonly("pixel_mm", &HeightField::pixel_mm, doc("HeightField::pixel_mm"))
      .def_property_readonly("grid", &HeightField::grid, doc("HeightField::grid"))
      .def_property_readonly("mean_um", &HeightField::mean_um, doc("HeightField::mean_um"))
      .def_property_readonly("rms_um", &HeightField::rms_um, doc("HeightField::rms_um"))
      .def_property_readonly("peak_to_valley_um", &HeightField::peak_to_valley_um,
                             doc("HeightField::peak_to_valley_um"))
      .def_property_readonly("valley_depth_um", &HeightField::valley_depth_um,
                             doc("HeightField::valley_depth_um"))
      .def("to_dict", &plain_field, "The heights, as a list of rows, and the pixel, as plain values.")
      .def_static(
          "from_dict",
          [](const py::dict& fields) { return from_plain<HeightField>(fields, "HeightField", "fields"); },
          "fields"_a, "The field of such a dict; ValueError where it is wrong.")
      .def(py::self == py::self)
      .def("__repr__",
           [](const HeightField& self) {
             return "<HeightField: " + std::to_string(self.grid().rows) + " x " +
                    std::to_string(self.grid().cols) + " pixels of " + to_text(self.pixel_mm()) +
                    " mm, rms " + to_text(self.rms_um()) + " um>";
           })
      .def(py::pickle(
          [](const py::object& self) {
            return py::make_tuple(self.attr("height_um"), self.attr("pixel_mm"));
          },
          [](const py::tuple& state) { return height_field(state[0], state[1].cast<double>(), true); }));
}

void bind_texture(py::module_& module) {
  bind_fields<TextureBand>(module, "TextureBand");
  module.def(
      "synthesize",
      [](const std::vector<TextureBand>& bands, const Grid& grid, Seed seed) {
        return synthesize(bands, grid, seed.value);
      },
      py::kw_only(), "bands"_a, "grid"_a, "seed"_a, doc("synthesize"), WithoutLock());
}

void bind_metrology(py::module_& module) {
  module.def(
      "band_rms_um",
      [](const HeightField& field, const std::vector<double>& edges_mm) {
        return array_of(without_lock([&] { return band_rms_um(field, edges_mm); }));
      },
      "field"_a, py::kw_only(), "edges_mm"_a, doc("band_rms_um"));
}

void bind_coating(py::module_& module) {
  bind_fields<Coat>(module, "Coat");
  bind_fields<Coating>(module, "Coating")
      .def_property_readonly("total_um", &Coating::total_um, doc("Coating::total_um"));
}

void bind_wet_film(py::module_& module) {
  bind_fields<WetFilm>(module, "WetFilm");
  module.def("dry", &dry, py::kw_only(), "base"_a, "wet_film"_a, doc("dry"), WithoutLock());
  module.def(
      "dry_amplitude_share",
      [](const WetFilm& wet_film, const Numbers& wavelength_mm) {
        return each(wavelength_mm, [&](double one_mm) { return dry_amplitude_share(wet_film, one_mm); });
      },
      "wet_film"_a, py::kw_only(), "wavelength_mm"_a, doc("dry_amplitude_share"));
  module.def(
      "wet_amplitude_share",
      [](const WetFilm& wet_film, const Numbers& wavelength_mm, double time_s) {
        return each(wavelength_mm,
                    [&](double one_mm) { return wet_amplitude_share(wet_film, one_mm, time_s); });
      },
      "wet_film"_a, py::kw_only(), "wavelength_mm"_a, "time_s"_a, doc("wet_amplitude_share"));
  module.def(
      "levelling_rate_per_s",
      [](const Numbers& wavelength_mm, double thickness_um, double surface_tension_mn_per_m,
         double viscosity_pa_s, bool exact) {
        const FilmDepth depth = exact ? FilmDepth::any : FilmDepth::thin;
        return each(wavelength_mm, [&](double one_mm) {
          return levelling_rate_per_s(one_mm, thickness_um, surface_tension_mn_per_m, viscosity_pa_s, depth);
        });
      },
      py::kw_only(), "wavelength_mm"_a, "thickness_um"_a, "surface_tension_mn_per_m"_a, "viscosity_pa_s"_a,
      "exact"_a = false, doc("levelling_rate_per_s"));
}

void bind_slope(py::module_& module) {
  module.def(
      "slope",
      [](const HeightField& field, Direction direction, double footprint_mm) {
        return array_of(without_lock([&] { return slope(field, direction, footprint_mm); }));
      },
      "field"_a, py::kw_only(), "direction"_a = Direction::rows, "footprint_mm"_a = 0.0, doc("slope"));
  module.def("rms_slope", &rms_slope, "field"_a, py::kw_only(), "direction"_a = Direction::rows,
             "footprint_mm"_a = 0.0, doc("rms_slope"), WithoutLock());
}

/// A figure that its formula does not carry is a figure with a warning.
double gloss_gu_or_warning(double angle_deg, double refractive_index, double roughness_nm) {
  const double gloss = gloss_gu(angle_deg, refractive_index, roughness_nm);
  if (!gloss_knows_roughness(angle_deg, roughness_nm)) {
    const std::string warning =
        "gloss_gu: roughness_nm of " + to_text(roughness_nm) + " nm at " + to_text(angle_deg) +
        " degrees is beyond what the formula knows (docs/physics.md, equation 47): use "
        "specular_share of the scratches and gloss_of_share_gu";
    if (PyErr_WarnEx(PyExc_UserWarning, warning.c_str(), 1) != 0) throw py::error_already_set();
  }
  return gloss;
}

void bind_gloss(py::module_& module) {
  bind_fields<GroovePopulation>(module, "GroovePopulation");
  module.def("fresnel", &fresnel, py::kw_only(), "angle_deg"_a, "refractive_index"_a, doc("fresnel"));
  module.def("gloss_gu", &gloss_gu_or_warning, py::kw_only(), "angle_deg"_a, "refractive_index"_a,
             "roughness_nm"_a = 0.0, doc("gloss_gu"));
  module.def("gloss_knows_roughness", &gloss_knows_roughness, py::kw_only(), "angle_deg"_a, "roughness_nm"_a,
             doc("gloss_knows_roughness"));
  module.def("gloss_of_share_gu", &gloss_of_share_gu, py::kw_only(), "angle_deg"_a, "refractive_index"_a,
             "specular_share"_a, doc("gloss_of_share_gu"));
  module.def("specular_share", &specular_share, "grooves"_a, py::kw_only(), "angle_deg"_a,
             "wavelength_nm"_a = light_wavelength_nm, doc("specular_share"));
  module.def("haze_share", &haze_share, "grooves"_a, py::kw_only(), "angle_deg"_a, "from_deg"_a, "to_deg"_a,
             "flank_deg"_a = 75.0, doc("haze_share"));
  module.def("lamp_visibility", &lamp_visibility, "specular_share"_a, py::kw_only(), "fill"_a = 0.1,
             doc("lamp_visibility"));
}

void bind_image_clarity(py::module_& module) {
  def_with_options<ClarityOptions>(
      module, "ClarityOptions", "image_clarity_percent", "field: HeightField", "float",
      doc("image_clarity_percent"),
      [](const HeightField& field, const py::kwargs& given) {
        const auto options = value_of<ClarityOptions>(given, "image_clarity_percent");
        return without_lock([&] { return image_clarity_percent(field, options); });
      },
      "field"_a);
  def_with_options<ClarityOptions>(
      module, "ClarityOptions", "image_clarity_by_comb_percent", "field: HeightField", "list[float]",
      doc("image_clarity_by_comb_percent"),
      [](const HeightField& field, const py::kwargs& given) {
        const auto options = value_of<ClarityOptions>(given, "image_clarity_by_comb_percent");
        return without_lock([&] { return image_clarity_by_comb_percent(field, options); });
      },
      "field"_a);
  module.def("gaussian_comb_contrast", &gaussian_comb_contrast, py::kw_only(), "shift_sd_mm"_a, "comb_mm"_a,
             doc("gaussian_comb_contrast"));
  module.def("image_wander_arcmin",
             py::overload_cast<const HeightField&, Direction, double>(&image_wander_arcmin), "field"_a,
             py::kw_only(), "direction"_a = Direction::rows, "footprint_mm"_a = 0.0,
             doc("image_wander_arcmin"), WithoutLock());
  module.def("smallest_letter_mm", &smallest_letter_mm, py::kw_only(), "wander_arcmin"_a, "distance_m"_a,
             "contrast"_a = 1.0, doc("smallest_letter_mm"));
  module.def("limit_of_sight_mm", &limit_of_sight_mm, "distance_m"_a, doc("limit_of_sight_mm"));
}

void bind_viewer(py::module_& module) {
  bind_fields<Viewer>(module, "Viewer");
  module.def("seen_wander_arcmin", py::overload_cast<const HeightField&, const Viewer&>(&seen_wander_arcmin),
             "field"_a, "viewer"_a, doc("seen_wander_arcmin"), WithoutLock());
  module.def("seen_smear_arcmin", py::overload_cast<const HeightField&, const Viewer&>(&seen_smear_arcmin),
             "field"_a, "viewer"_a, doc("seen_smear_arcmin"), WithoutLock());
  module.def("seen_letter_mm", &seen_letter_mm, "wander_arcmin"_a, "viewer"_a, "contrast"_a = 1.0,
             doc("seen_letter_mm"));
  module.def("viewer_along", &viewer_along, "distance_m"_a, "eye_to_paint_m"_a = py::none(),
             doc("viewer_along"));
}

void bind_reflection(py::module_& module) {
  def_with_options<ReflectionView>(
      module, "ReflectionView", "render_reflection",
      "field: HeightField, *, specular_share: float | numpy.ndarray = 1.0, " LONG_WORK, "numpy.ndarray",
      doc("render_reflection"),
      [](const HeightField& field, const py::object& specular_share, const py::object& progress, int threads,
         const py::kwargs& given) {
        const auto view = value_of<ReflectionView>(given, "render_reflection");
        const bool is_map = py::isinstance<py::array>(specular_share);
        const Array2d share =
            is_map ? Array2d(map_of(specular_share, "render_reflection", "specular_share"))
                   : Array2d(Array2d::Constant(
                         1, 1, from_python<double>(specular_share, "render_reflection", "specular_share")));
        const LongWork work(progress, threads);
        return array_of(without_lock(
            [&] { return render_reflection(field, share, view, shelf_scene(), work.progress()); }));
      },
      "field"_a, py::kw_only(), "specular_share"_a = 1.0, LONG_WORK_ARGUMENTS);
}

}  // namespace

void bind_surface(py::module_& module) {
  bind_height_field(module);
  bind_texture(module);
  bind_metrology(module);
  bind_coating(module);
  bind_wet_film(module);
  bind_slope(module);
  bind_gloss(module);
  bind_image_clarity(module);
  bind_viewer(module);
  bind_reflection(module);
}

}  // namespace libtexture::python
