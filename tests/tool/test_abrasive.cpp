#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/abrasive.hpp"

using namespace libtexture;

namespace {

Abrasive p1200_film() {
  Abrasive film;
  film.name = "P1200 film";
  film.grit = Grit("P1200");
  film.wear_rate_mm3_per_n_m = 0.1;
  film.worn_wear_rate_mm3_per_n_m = 0.03;
  film.loading_um = 150;
  return film;
}

Abrasive p3000_foam() {
  Abrasive foam = p1200_film();
  foam.name = "P3000 foam-backed";
  foam.carrier = Carrier::foam_disc;
  foam.made_for = {Wetness::damp, Wetness::wet};
  return foam;
}

}  // namespace

TEST_CASE("a disc's cut falls from fresh to worn by 1/e over its loading") {
  // closed form: w_end + (w_0 - w_end) exp(-V/V_0)
  CHECK(wear_rate_mm3_per_n_m(p1200_film(), 0) == 0.1);
  CHECK(wear_rate_mm3_per_n_m(p1200_film(), 150) ==
        Catch::Approx(0.03 + 0.07 * std::exp(-1.0)).epsilon(1e-14));
  CHECK(wear_rate_mm3_per_n_m(p1200_film(), 1e6) == Catch::Approx(0.03).epsilon(1e-14));
}

TEST_CASE("grooves are proportional to the grain where the abrasive states no depth") {
  Abrasive film = p1200_film();
  // Closed form of the cone groove: 0.164 um at 10.3 um; grains of ISO 6344-3, from memory.
  CHECK(reference_groove_depth_um(film) == Catch::Approx(0.164 * 15.3 / 10.3).epsilon(1e-14));
  film.grit = Grit("P2000");
  CHECK(reference_groove_depth_um(film) == Catch::Approx(0.164).epsilon(1e-14));
  film.groove_depth_um = 0.15;
  CHECK(reference_groove_depth_um(film) == 0.15);
}

TEST_CASE(
    "the same product in a finer grit cuts slower, loads sooner and marks less deep, in proportion to its "
    "grains") {
  Abrasive film = p1200_film();
  film.groove_depth_um = 0.18;
  film.ranges = {
      {"wear_rate_mm3_per_n_m", {0.03, 0.3}}, {"groove_depth_um", {0.12, 0.3}}, {"loading_um", {50, 400}}};
  const double size = 8.4 / 15.3;  // P2500 over P1200: ISO 6344-3, the one from memory
  const Abrasive finer = at_grit(film, Grit("P2500"));
  CHECK(finer.name == "P2500 film");
  CHECK(finer.grit == Grit("P2500"));
  CHECK(finer.wear_rate_mm3_per_n_m == Catch::Approx(0.1 * size));
  CHECK(finer.worn_wear_rate_mm3_per_n_m == Catch::Approx(0.03 * size));
  CHECK(*finer.groove_depth_um == Catch::Approx(0.18 * size));
  CHECK(finer.loading_um == Catch::Approx(150 * size));  // room for swarf goes with the grain: estimate
  CHECK(finer.ranges.at("wear_rate_mm3_per_n_m")[0] == Catch::Approx(0.03 * size));
  CHECK(finer.ranges.at("groove_depth_um")[1] == Catch::Approx(0.3 * size));
  CHECK(finer.ranges.at("loading_um")[1] == Catch::Approx(400 * size));
  CHECK(at_grit(film, Grit("P2500"), 0.5).wear_rate_mm3_per_n_m == Catch::Approx(0.1 * std::sqrt(size)));
  const Abrasive back = at_grit(finer, Grit("P1200"));
  CHECK(back.wear_rate_mm3_per_n_m == Catch::Approx(0.1).epsilon(1e-14));
  CHECK(back.name == film.name);
}

TEST_CASE("a rate that was carried over from another grain remembers it, whichever way it came") {
  const Abrasive film = p1200_film();
  CHECK(log_size(film) == 0);
  // ln of the ratio of grains, ISO 6344-3, from memory: 7.3 over 15.3 um.
  const double log_ratio = std::log(7.3 / 15.3);
  CHECK(log_size(at_grit(film, Grit("P3000"))) == Catch::Approx(log_ratio).epsilon(1e-14));
  CHECK(log_size(at_grit(at_grit(film, Grit("P800")), Grit("P3000"))) ==
        Catch::Approx(log_ratio).epsilon(1e-14));
  CHECK(log_size(at_grit(at_grit(film, Grit("P3000")), Grit("P1200"))) == Catch::Approx(0).margin(1e-14));
}

TEST_CASE("a film disc made for dry work is refused damp or wet, with the reason") {
  // common practice, no source
  CHECK_THROWS_WITH(
      wetness_effect(p1200_film(), Wetness::damp),
      "P1200 film: wetness must be what the abrasive is made for, dry: water turns the dust into slurry, "
      "which packs under the film and hides the cut (got damp)");
  CHECK_THROWS_AS(wetness_effect(p1200_film(), Wetness::wet), InvalidInput);
  CHECK(wetness_effect(p1200_film(), Wetness::dry).wear_rate == 1);
}

TEST_CASE("a foam-backed disc made for damp or wet work is refused dry, with the reason") {
  // common practice, no source
  CHECK_THROWS_WITH(
      wetness_effect(p3000_foam(), Wetness::dry),
      "P3000 foam-backed: wetness must be what the abrasive is made for, damp or wet: without water it "
      "loads and heats (got dry)");
}

TEST_CASE(
    "water slows the cut, delays loading and makes shallower grooves, counted from the stated wetness") {
  const WetnessEffect stated = wetness_effect(p3000_foam(), Wetness::damp);
  CHECK(stated.wear_rate == 1);
  CHECK(stated.loading == 1);
  CHECK(stated.groove_depth == 1);
  Abrasive any = p1200_film();
  any.made_for = {Wetness::dry, Wetness::damp, Wetness::wet};
  const WetnessEffect damp = wetness_effect(any, Wetness::damp), wet = wetness_effect(any, Wetness::wet);
  const WetnessEffect wetter = wetness_effect(p3000_foam(), Wetness::wet);
  CHECK(damp.wear_rate < 1);
  CHECK(wet.wear_rate < damp.wear_rate);
  CHECK(wet.loading > damp.loading);
  CHECK(wet.groove_depth < damp.groove_depth);
  CHECK(wetter.wear_rate * damp.wear_rate == Catch::Approx(wet.wear_rate));
  CHECK(wetter.loading * damp.loading == Catch::Approx(wet.loading));
  CHECK(wetter.groove_depth * damp.groove_depth == Catch::Approx(wet.groove_depth));
}

TEST_CASE("clear hardness acts within 4 % of the classes soft, medium and hard") {
  // estimate: factor 1.5/1/.6 at 150/200/300 MPa
  CHECK(hardness_wear_factor(150) == Catch::Approx(1.5).epsilon(0.04));
  CHECK(hardness_wear_factor(200) == 1);
  CHECK(hardness_wear_factor(300) == Catch::Approx(0.6).epsilon(0.04));
  CHECK_THROWS_AS(hardness_wear_factor(0), InvalidInput);
}

TEST_CASE("an abrasive names what is wrong with it") {
  const auto message_of = [](auto change) {
    Abrasive abrasive = p1200_film();
    change(abrasive);
    try {
      abrasive.validate();
    } catch (const InvalidInput& error) {
      return std::string(error.what());
    }
    return std::string("valid");
  };
  CHECK(message_of([](Abrasive&) {}) == "valid");
  CHECK(message_of([](Abrasive& a) { a.wear_rate_mm3_per_n_m = -1; }) ==
        "Abrasive: wear_rate_mm3_per_n_m must be > 0 (got -1 mm3/(N m))");
  CHECK(message_of([](Abrasive& a) { a.worn_wear_rate_mm3_per_n_m = 0.2; }) ==
        "Abrasive: worn_wear_rate_mm3_per_n_m must be between 0 and 0.1 (got 0.2 mm3/(N m))");
  CHECK(message_of([](Abrasive& a) { a.loading_um = unset; }) ==
        "Abrasive: loading_um must be > 0 (got nan um)");
  CHECK(message_of([](Abrasive& a) { a.made_for = {}; }) ==
        "Abrasive: made_for must name at least one of dry, damp, wet (got none)");
  CHECK(message_of([](Abrasive& a) {
          a.ranges = {{"groove_dept_um", {0, 1}}};
        }) ==
        "Abrasive: ranges must name numbers of an abrasive (nearest: groove_depth_um) (got groove_dept_um)");
  CHECK(message_of([](Abrasive& a) {
          a.ranges = {{"loading_um", {400, 50}}};
        }) == "Abrasive: ranges must be [least, most] of loading_um (got 400 to 50)");
}

TEST_CASE("equal abrasives compare equal, also without a stated groove depth") {
  CHECK(p1200_film() == p1200_film());
}
