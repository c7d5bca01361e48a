#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/film_map.hpp"

using namespace libtexture;

namespace {

Reading at(double x_mm, double y_mm, double total_um) {
  Reading reading;
  reading.x_mm = x_mm;
  reading.y_mm = y_mm;
  reading.total_um = total_um;
  return reading;
}

Reading somewhere(double total_um) {
  Reading reading;
  reading.total_um = total_um;
  return reading;
}

Panel panel_of(std::vector<Reading> readings) {
  Panel panel;
  panel.name = "door";
  panel.area_m2 = 0.9;
  panel.readings = std::move(readings);
  return panel;
}

Panel some_panel() {
  return panel_of({at(100, 100, 110), at(400, 150, 118), at(700, 500, 125), somewhere(104)});
}

Paint paint_of(PaintKind kind, double uncertainty_um = 2, double gain_percent = 0) {
  Paint paint;
  paint.kind = kind;
  paint.gauge.uncertainty_um = uncertainty_um;
  paint.gauge.gain_percent = gain_percent;
  return paint;
}

}  // namespace

TEST_CASE("a reading over filler moves nothing on the map, and is no safe place") {
  Panel panel = some_panel();
  const Paint paint = paint_of(PaintKind::factory);
  const FilmMap without = film_map(panel, paint);
  panel.readings.push_back(at(300, 300, 800));
  panel.readings.back().over = ReadingOver::filler;
  panel.readings.push_back(somewhere(700));
  panel.readings.back().over = ReadingOver::filler;
  const FilmMap with = film_map(panel, paint);
  CHECK(with.variation_um == without.variation_um);
  CHECK(film_at(with, {300, 300}).clear_um == film_at(without, {300, 300}).clear_um);
  CHECK(film_anywhere(with).clear_sd_um == film_anywhere(without).clear_sd_um);
}

TEST_CASE("film between readings is that of a Gaussian process with a vague mean") {
  // Reference: numpy and mpmath, conditioning the joint normal distribution of readings and film, 40 digits,
  // the mean given the prior N(115, 1e4 um): that prior still moves the answer by 1e-6. Covariance 300 mm,
  // noise 2 um.
  const FilmMap map = film_map(some_panel(), paint_of(PaintKind::factory));
  CHECK(map.variation_um == Catch::Approx(9.286929).epsilon(1e-6));
  const double reference[3][4] = {{400, 300, 117.465271, 7.344303},
                                  {100, 100, 110.263040, 1.956661},
                                  {5000, 5000, 113.488455, 10.729336}};
  for (const auto& [x, y, mean, sd] : reference) {
    const Film film = film_at(map, {x, y});
    CHECK(film.total_um == Catch::Approx(mean).epsilon(1e-6));
    CHECK(film.total_sd_um == Catch::Approx(sd).epsilon(1e-5));
  }
}

TEST_CASE(
    "at a reading the film is known as well as the gauge reads, far away as badly as the panel varies") {
  const FilmMap map = film_map(some_panel(), paint_of(PaintKind::factory));
  const Film there = film_at(map, {100, 100}), near = film_at(map, {150, 100}),
             far = film_at(map, {1e5, 1e5});
  CHECK(there.total_sd_um < 2);
  CHECK(near.total_sd_um > there.total_sd_um);
  CHECK(far.total_sd_um > near.total_sd_um);
  const Film anywhere = film_anywhere(map);
  CHECK(far.total_um == Catch::Approx(anywhere.total_um).epsilon(1e-12));
  CHECK(far.total_sd_um == Catch::Approx(anywhere.total_sd_um).epsilon(1e-12));
}

TEST_CASE("a reading without a place is a place of its own") {
  // The same readings 10 km apart, where correlation is exp(-33000): the rule itself, by another way.
  const Paint paint = paint_of(PaintKind::repaint);
  const std::vector<double> totals{250, 262, 248, 255, 40, 259};
  Panel bare = panel_of({}), far = bare;
  for (std::size_t i = 0; i < totals.size(); ++i) {
    bare.readings.push_back(somewhere(totals[i]));
    far.readings.push_back(at(1e4 * static_cast<double>(i), 0, totals[i]));
  }
  const FilmMap a = film_map(bare, paint), b = film_map(far, paint);
  CHECK(a.mean_um == Catch::Approx(b.mean_um).epsilon(1e-12));
  const Film thinnest = film_at_thinnest(a, bare), same = film_at_thinnest(b, far);
  CHECK(thinnest.total_um == Catch::Approx(same.total_um).epsilon(1e-9));
  CHECK(thinnest.clear_um == Catch::Approx(same.clear_um).epsilon(1e-9));
  CHECK(thinnest.clear_sd_um == Catch::Approx(same.clear_sd_um).epsilon(1e-9));
  CHECK(thinnest.total_um == Catch::Approx(40).margin(1));  // within the gauge's 2 um
  CHECK(a.placed == 0);
  CHECK(b.placed == totals.size());
}

TEST_CASE("there is never more clear than film at the thinnest reading") {
  Paint paint = paint_of(PaintKind::repaint);
  paint.clear_um = 60;
  const Panel door = panel_of({somewhere(250), somewhere(250), somewhere(250), somewhere(40)});
  CHECK(film_at_thinnest(film_map(door, paint), door).clear_um < 15);  // 60/197 of 40
  paint.gauge.uncertainty_um = 5000;  // a gauge that says nothing leaves the mean, which is more than 40
  paint.clear_um = 150;
  CHECK(film_at_thinnest(film_map(door, paint), door).clear_um == 40);
}

TEST_CASE("the thinnest film is at the least reading, wherever that stands") {
  const Panel door = panel_of({at(0, 0, 130), at(900, 0, 95), somewhere(120)});
  const FilmMap map = film_map(door, paint_of(PaintKind::factory));
  CHECK(film_at_thinnest(map, door).total_um == film_at(map, {900, 0}).total_um);
  const Panel other = panel_of({at(0, 0, 130), at(900, 0, 120), somewhere(95)});
  CHECK(film_at_thinnest(film_map(other, paint_of(PaintKind::factory)), other).total_um < 100);
}

TEST_CASE("readings without a place move the mean, not the map") {
  const Panel with = panel_of({at(0, 0, 110), at(300, 0, 130), somewhere(90), somewhere(95)});
  const Panel without = panel_of({at(0, 0, 110), at(300, 0, 130)});
  const Paint exact = paint_of(PaintKind::factory, 0);
  CHECK(film_map(with, exact).mean_um < film_map(without, exact).mean_um - 5);
  // An exact gauge is believed at the place it read, whatever the mean; .05 um covers the least noise
  // assumed.
  CHECK(film_at(film_map(with, exact), {0, 0}).total_um == Catch::Approx(110).margin(.05).epsilon(0));
}

TEST_CASE("readings at one place average, and say little of how the panel varies") {
  const FilmMap map =
      film_map(panel_of({at(0, 0, 118), at(0, 0, 122), at(0, 0, 120)}), paint_of(PaintKind::factory, 2));
  CHECK(film_at(map, {0, 0}).total_um == Catch::Approx(120).epsilon(1e-12));
  CHECK(film_at(map, {0, 0}).total_sd_um == Catch::Approx(2 / std::sqrt(3.0)).epsilon(1e-9));  // closed form
  CHECK(map.variation_um == Catch::Approx(.08 * 120).epsilon(1e-12));  // the guess stands
}

TEST_CASE("an error of the gauge's scale reaches the total everywhere, but not a clear that was stated") {
  Paint paint = paint_of(PaintKind::factory, 0, 5);
  const Film prior = film_at(film_map(some_panel(), paint), {100, 100});
  CHECK(prior.total_sd_um == Catch::Approx(.05 * 110).margin(.01).epsilon(0));
  paint.clear_um = 45;
  paint.clear_uncertainty_um = 3;
  const FilmMap map = film_map(some_panel(), paint);
  const Film stated = film_at(map, {100, 100});
  CHECK(stated.clear_um == Catch::Approx(45 * stated.total_um / map.mean_um).epsilon(1e-12));
  CHECK(stated.clear_sd_um == Catch::Approx(3 * stated.total_um / map.mean_um).epsilon(1e-3));
}

TEST_CASE("a factory system of 5 mil is expected to have 2 mil of clear") {
  // Published: I-CAR, "Back-To-Basics: Clearcoat Film Thickness": whole system 4.0-6.0 mil, clear about 2.0
  // mil.
  const FilmMap map = film_map(panel_of({somewhere(5 * 25.4)}), paint_of(PaintKind::factory));
  const Film film = film_anywhere(map);
  CHECK(film.clear_um == Catch::Approx(2 * 25.4).epsilon(1e-12));
  CHECK(film.clear_sd_um > 5);  // hidden from the gauge (ASTM D7091): a wide guess
  CHECK(clear_share_prior(PaintKind::unknown).sd > clear_share_prior(PaintKind::factory).sd);
}

TEST_CASE("drawn panels have the mean and spread that the map states") {
  const FilmMap map = film_map(some_panel(), paint_of(PaintKind::repaint, 2, 1));
  const std::vector<Place> places{{100, 100}, {400, 300}, {2000, 2000}};
  const int draws = 4000;
  const Array2d clear = draw_clear_um(map, places, draws, 3);
  for (int i = 0; i < 3; ++i) {
    const Film film = film_at(map, places[static_cast<std::size_t>(i)]);
    const double mean = clear.col(i).mean();
    const double sd = std::sqrt((clear.col(i) - mean).square().sum() / (draws - 1));
    // Four standard errors of a mean and of a standard deviation of 4000 draws.
    CHECK(mean == Catch::Approx(film.clear_um).margin(4 * film.clear_sd_um / std::sqrt(draws)).epsilon(0));
    CHECK(sd == Catch::Approx(film.clear_sd_um).epsilon(4 / std::sqrt(2.0 * draws)));
  }
  CHECK((draw_clear_um(map, places, 10, 3) == clear.topRows(10)).all());
  CHECK(clear.minCoeff() >= 0);
}

TEST_CASE("draws at neighbouring places belong together") {
  Paint paint = paint_of(PaintKind::factory);
  paint.clear_um = 45;
  paint.clear_uncertainty_um = 1e-6;  // so that only the film varies
  const FilmMap map = film_map(panel_of({somewhere(120)}), paint);
  const Array2d clear = draw_clear_um(map, {{0, 0}, {300, 0}}, 4000, 5);
  const Array2d centred = clear.rowwise() - clear.colwise().mean();
  const double correlation = (centred.col(0) * centred.col(1)).sum() /
                             std::sqrt(centred.col(0).square().sum() * centred.col(1).square().sum());
  // Closed form: variance s^2 exp(-1) in common, and that of the mean, s^2 + u^2, on both.
  const double s2 = std::pow(map.variation_um, 2), common = s2 + 4;
  const double expected = (s2 * std::exp(-1.0) + common) / (s2 + common);
  CHECK(correlation ==
        Catch::Approx(expected).margin(4 * (1 - expected * expected) / std::sqrt(4000.)).epsilon(0));
}

TEST_CASE("a picture of the film holds the map's values at its pixels") {
  const FilmMap map = film_map(some_panel(), paint_of(PaintKind::factory));
  const FilmPicture picture = film_picture(map, 30);
  CHECK((picture.total_um.cols() == 30 && picture.total_um.rows() == 20));  // 600 mm x 400 mm
  const Place place{picture.corner.x_mm + 7 * picture.pixel_mm, picture.corner.y_mm + 3 * picture.pixel_mm};
  CHECK(picture.total_um(3, 7) == film_at(map, place).total_um);
  CHECK(picture.clear_sd_um(3, 7) == film_at(map, place).clear_sd_um);
  CHECK_THROWS_WITH(film_picture(film_map(panel_of({somewhere(120)}), Paint{})),
                    "FilmPicture: readings must have places, x_mm and y_mm (got none)");
  CHECK_THROWS_WITH(film_picture(film_map(panel_of({at(0, 0, 120), at(9, 0, 120)}), Paint{})),
                    "FilmPicture: readings must span an area (got 9 mm x 0 mm)");
}

TEST_CASE("a stated clear is thinner than the panel's film") {
  Paint paint = paint_of(PaintKind::factory);
  paint.clear_um = 130;
  CHECK_THROWS_WITH(
      film_map(panel_of({somewhere(120)}), paint),
      "Paint: clear_um must be less than the mean of the panel's readings, 120 um (got 130 um)");
}
