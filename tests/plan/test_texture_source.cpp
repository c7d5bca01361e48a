#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/plan/texture_source.hpp"
#include "libtexture/surface/image_clarity.hpp"

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

TEST_CASE("the slope that letters tell is the one that makes them unreadable") {
  // The other way round, through the surface floor: a synthesised texture, the wander of its mirror image and
  // the smallest letter of it give the rms back. A patch of 64 waves a side; its slope scatters by 1 %.
  for (const double bandwidth : {0.5, 1.0, 2.0}) {
    TextureBand band = some_band();
    band.bandwidth_octaves = bandwidth;
    band.rms_um = 2;
    const HeightField field = synthesize({band}, {512, 512, 0.375}, 4);
    SeenTexture seen;
    seen.wavelength_mm = band.wavelength_mm;
    seen.distance_m = 4;
    seen.bandwidth_octaves = bandwidth;
    seen.eye_to_paint_m = 0;
    seen.letter_mm = *smallest_letter_mm(image_wander_arcmin(field, Direction::rows), seen.distance_m);
    CHECK(band_of(seen).rms_um == Catch::Approx(2).epsilon(0.03));
  }
  // Closed form: a mirror tilt of .5 arcmin moves a distant image by 1 arcmin, the stroke of a letter of 5
  // arcmin (ISO 8596); 5 arcmin at 2 m are 2.9089 mm.
  SeenTexture seen;
  seen.wavelength_mm = 3;
  seen.letter_mm = 2.9089;
  seen.distance_m = 2;
  seen.eye_to_paint_m = 0;
  CHECK(seen_slope(seen) == Catch::Approx(1.454441e-4).epsilon(1e-4));
  // Half the path before the paint: the tilt has half the lever.
  seen.eye_to_paint_m = 1;
  CHECK(seen_slope(seen) == Catch::Approx(2 * 1.454441e-4).epsilon(1e-4));
}

TEST_CASE("letters that were read are those that its own surface lets be read, from where they were read") {
  // A band's rms slope is that of its spectrum's integral; the patch has whole waves only, 17 of 3 mm to a
  // side and 8 of 6 mm, whose sum differs from it by up to 1 %.
  for (const double wavelength_mm : {1.5, 3.0, 6.0})
    for (const std::optional<double>& eye_to_paint_m :
         {std::optional<double>(), std::optional(0.0), std::optional(2.5)}) {
      TextureSource source;
      source.seen = SeenTexture{
          .wavelength_mm = wavelength_mm, .letter_mm = 15, .distance_m = 3, .eye_to_paint_m = eye_to_paint_m};
      const HeightField field = starting_surface(source, {256, 256, 0.2}, 7);
      const Viewer eye = eye_of(*source.seen);
      CHECK(*seen_letter_mm(seen_smear_arcmin(field, eye), eye) == Catch::Approx(15).epsilon(0.01));
    }
}

TEST_CASE("the eye stands a third of the way before the paint where nothing is said") {
  // As Viewer does; an eye at the paint would see the image move by 3/2 as much for the same slope.
  SeenTexture seen{.wavelength_mm = 3, .letter_mm = 15, .distance_m = 3};
  const double rms_um = band_of(seen).rms_um;
  CHECK(eye_of(seen) == Viewer{});
  seen.eye_to_paint_m = 0;
  CHECK(rms_um / band_of(seen).rms_um == Catch::Approx(1.5).epsilon(1e-12));
  seen.eye_to_paint_m = 3;
  CHECK_THROWS_WITH(seen.validate(),
                    "SeenTexture: eye_to_paint_m must be >= 0 and less than distance_m (got 3 m)");
}

TEST_CASE("letters as fine as eyes read say that the texture is at most so") {
  // 5 arcmin at 3 m are 4.363 mm (ISO 8596).
  SeenTexture seen{.wavelength_mm = 3, .letter_mm = 4.4, .distance_m = 3};
  CHECK(is_at_limit_of_sight(seen));
  seen.letter_mm = 3;
  CHECK(is_at_limit_of_sight(seen));
  seen.letter_mm = 5;
  CHECK_FALSE(is_at_limit_of_sight(seen));
}

TEST_CASE("the rms of panels lies in the interval of what is seen in them in 95 % of 1000 cases") {
  // Truth: a panel of its own, seen through its own slope. Errors as stated beside seen_log_sd: readers .35,
  // waves counted to .15, and a spectrum as broad as it likes between half an octave and two.
  boost::random::mt19937_64 generator(20);
  boost::random::normal_distribution<> normal;
  int held = 0;
  for (std::uint64_t trial = 0; trial < 1000; ++trial) {
    TextureBand band;
    band.wavelength_mm = 2.5 * std::exp(.2 * normal(generator));
    band.rms_um = .5 * std::exp(.7 * normal(generator));
    band.bandwidth_octaves = .5 * std::pow(4, uniform_at({trial}));
    const HeightField field = synthesize({band}, {64, 64, 0.2}, trial);
    SeenTexture seen;
    seen.distance_m = 3;
    seen.eye_to_paint_m = 1;
    seen.letter_mm = 5 * 2e3 * 2 * rms_slope(field, Direction::rows) * std::exp(.35 * normal(generator));
    seen.wavelength_mm = band.wavelength_mm * std::exp(.15 * normal(generator));
    const Estimate rms_um = seen_rms_um(seen);
    held += rms_um.least <= band.rms_um && band.rms_um <= rms_um.most;
  }
  CHECK((held >= 930 && held <= 970));  // 95 % +- 2 %
}

TEST_CASE("a texture's scale multiplies its heights, and says how sure it is by where it comes from") {
  // 0.1 where stated: estimate, docs/physics.md, risk. Heights are in proportion: exact.
  TextureSource source;
  source.bands = {some_band()};
  CHECK(scale_log_sd(source) == 0.1);
  const HeightField whole = starting_surface(source, some_grid(), 5);
  source.scale = 1.5;
  source.scale_log_sd = 0.25;
  CHECK(scale_log_sd(source) == 0.25);
  CHECK(starting_surface(source, some_grid(), 5).rms_um() ==
        Catch::Approx(1.5 * whole.rms_um()).epsilon(1e-12));
  source.scale = -1;
  CHECK_THROWS_WITH(source.validate(), "TextureSource: scale must be > 0 (got -1)");
  source.scale = 1;
  source.scale_log_sd = 3;
  CHECK_THROWS_WITH(source.validate(), "TextureSource: scale_log_sd must be between 0 and 2 (got 3)");
  TextureSource seen;
  seen.seen = SeenTexture{.wavelength_mm = 3, .letter_mm = 12, .distance_m = 3};
  CHECK(scale_log_sd(seen) == seen_log_sd());
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
