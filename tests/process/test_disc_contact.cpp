#include <algorithm>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/sequence.hpp"

using namespace libtexture;

namespace {

const Grid patch{64, 64, 0.4};

Step step_of(const char* abrasive, const char* backing) {
  const Catalogue& catalogue = shipped_catalogue();
  Step step;
  step.abrasive = catalogue.abrasives.at(abrasive);
  step.backing = catalogue.backings.at(backing);
  step.motion = catalogue.motions.at("150 mm light");
  step.wetness = step.abrasive.made_for.front();
  step.passes = 2;
  return step;
}

std::vector<std::string> warnings_of(const Step& step, std::optional<double> crown_radius_m = {}) {
  std::vector<std::string> warnings;
  const std::optional<Crown> crown =
      crown_radius_m ? std::optional(Crown{*crown_radius_m, {}}) : std::nullopt;
  disc_contact(step, patch, crown, &warnings);
  return warnings;
}

int count(const std::vector<std::string>& warnings, const std::string& part) {
  return static_cast<int>(std::count_if(warnings.begin(), warnings.end(), [&](const std::string& warning) {
    return warning.find(part) != std::string::npos;
  }));
}

}  // namespace

TEST_CASE("a grit whose median is not the standard's says so, by the abrasive's name, whatever the step's") {
  Step step = step_of("P3000 film", "film on firm interface");
  // ISO 6344-3 as remembered goes to P2500; the rest is our power law
  const std::vector<std::string> warnings = warnings_of(step, std::nullopt);
  REQUIRE(count(warnings, "power law") == 1);
  CHECK(count(warnings, "P3000 film: its grain of 7.3") == 1);
  step.name = "level";
  CHECK(count(warnings_of(step, std::nullopt), "P3000 film: its grain of") == 1);
  CHECK(count(warnings_of(step_of("P2500 film", "film on firm interface"), std::nullopt), "power law") == 0);
}

TEST_CASE("inertia is warned of once, whatever the number of soft layers") {
  Step step = step_of("P2000 film", "film on firm interface");
  for (Layer& layer : step.backing.layers) layer = {.modulus_mpa = 1e-3, .thickness_mm = 5, .poisson = 0};
  CHECK(count(warnings_of(step, std::nullopt), "P2000 film: at this speed the softest layer's inertia") == 1);
}

TEST_CASE("a foam whose middle comes near its plateau on a crown is warned of; its mean stays below") {
  const Step step = step_of("P3000 foam-backed", "foam-backed disc on pad");  // plateau 3 kPa: estimate
  CHECK(count(warnings_of(step, 1.5), "near its plateau") == 1);
  CHECK(count(warnings_of(step, 20.0), "near its plateau") == 0);
  CHECK(disc_contact(step, patch, Crown{1.5, {}}).pressure_kpa < 0.9 * 3);
}

TEST_CASE("a contact that is narrow for its lanes is warned of, with the share that a pass misses") {
  Step step = step_of("P1500 film", "film on hard pad");
  CHECK(count(warnings_of(step, std::nullopt), "stripes") == 0);
  // 25 N on 2.0e8 Pa/m and a door's sheet of 0.7 mm steel: 36 mm, 72 of lanes of 75 mm (test_crown_contact).
  CHECK(count(warnings_of(step, 4.0), "misses 4 % of the area; lanes of at most 36 mm cover evenly") == 1);
  step.motion.step_over_mm = 36;
  CHECK(count(warnings_of(step, 4.0), "stripes") == 0);
}

TEST_CASE("lanes so wide that they leave cusps are warned of on a flat panel too") {
  Step step = step_of("P1500 film", "film on firm interface");
  step.motion.step_over_mm = 150;
  // Between lanes a whole disc apart the chord is nothing (closed form).
  CHECK(count(warnings_of(step, std::nullopt), "removes only 0 % of its mean between lanes") == 1);
  step.motion.step_over_mm = 75;
  CHECK(count(warnings_of(step, std::nullopt), "stripes") == 0);
}

TEST_CASE("what fails while a step is worked names the step") {
  Step good = step_of("P2000 film", "film on firm interface");
  Step hard_pressed = step_of("P3000 foam-backed", "foam-backed disc on pad");
  hard_pressed.name = "refine";
  hard_pressed.motion.force_n = 60;  // 3.4 kPa on the whole face
  const HeightField flat(Array2d::Zero(64, 64), 0.4);
  CHECK_THROWS_WITH(simulate(flat, {{{.name = "clear", .thickness_um = 60}}}, {good, hard_pressed}),
                    Catch::Matchers::StartsWith("step refine: Backing: pressure_kpa must be < 2.7"));
}
