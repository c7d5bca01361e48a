#include "catch.hpp"
#include "libtexture/plan/texture_source.hpp"

using namespace libtexture;

namespace {

TextureBand some_band() {
  TextureBand band;
  band.wavelength_mm = 3;
  band.rms_um = 1;
  return band;
}

Grid some_grid() {
  Grid grid;
  grid.rows = grid.cols = 64;
  grid.pixel_mm = 0.4;
  return grid;
}

WetFilm some_film() {
  WetFilm film;
  film.thickness_um = 60;
  film.surface_tension_mn_per_m = 30;
  film.viscosity_pa_s = 0.2;
  film.viscosity_rise_s = 20;
  film.solids_share = 0.55;
  return film;
}

}  // namespace

TEST_CASE("letters at the limit of sight tell the amplitude of the waves that blur them") {
  // Closed form: a mirror tilt of .5 arcmin moves a distant image by 1 arcmin, the stroke of a 5 arcmin
  // letter (ISO 8596); 5 arcmin at 2 m are 2.9089 mm. Amplitudes that reach it, to the four digits they are
  // stated in.
  const double amplitude_um[4][2] = {{1, .0231}, {2, .0463}, {5, .1157}, {10, .2315}};
  for (const auto& [wavelength_mm, amplitude] : amplitude_um) {
    SeenTexture seen;
    seen.wavelength_mm = wavelength_mm;
    seen.letter_mm = 2.9089;
    seen.distance_m = 2;
    CHECK(band_of(seen).rms_um * std::sqrt(2.0) == Catch::Approx(amplitude).margin(6e-5).epsilon(0));
  }
}

TEST_CASE("a texture comes from exactly one source") {
  TextureSource source;
  CHECK_THROWS_WITH(source.validate(),
                    "TextureSource: bands, file, seen, wet_film must be exactly one of them (got 0)");
  source.bands = {some_band()};
  CHECK_NOTHROW(source.validate());
  source.file = "door.npy";
  CHECK_THROWS_AS(source.validate(), InvalidInput);
  source.bands.clear();
  CHECK_NOTHROW(source.validate());
}

TEST_CASE("the starting surface is that of the source") {
  TextureSource bands;
  bands.bands = {some_band()};
  CHECK(starting_surface(bands, some_grid(), 5) == synthesize(bands.bands, some_grid(), 5));

  TextureSource wet;
  wet.wet_film = WetTexture{some_film(), bands.bands};
  CHECK(starting_surface(wet, some_grid(), 5) == dry(synthesize(bands.bands, some_grid(), 5), some_film()));

  TextureSource file;
  file.file = "door.npy";
  CHECK_THROWS_AS(starting_surface(file, some_grid(), 5), InvalidInput);
}
