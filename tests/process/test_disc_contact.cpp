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

std::vector<Statement> warnings_of(const Step& step, std::optional<double> crown_radius_m = {}) {
  std::vector<Statement> warnings;
  const std::optional<Crown> crown =
      crown_radius_m ? std::optional(Crown{*crown_radius_m, {}}) : std::nullopt;
  disc_contact(step, patch, crown, &warnings);
  return warnings;
}

int count(const std::vector<Statement>& warnings, StatementKind kind) {
  return static_cast<int>(std::count_if(warnings.begin(), warnings.end(),
                                        [&](const Statement& warning) { return warning.kind == kind; }));
}

}  // namespace

TEST_CASE("a grit whose median is not the standard's says so, by the abrasive's name, whatever the step's") {
  Step step = step_of("P3000 film", "film on firm interface");
  step.name = "level";
  // ISO 6344-3 as remembered goes to P2500; the rest is our power law
  const std::vector<Statement> warnings = warnings_of(step, std::nullopt);
  REQUIRE(count(warnings, StatementKind::grain_extrapolated) == 1);
  CHECK(warnings.back().abrasives == std::vector<std::string>{"P3000 film"});
  CHECK(warnings.back().step.empty());
  CHECK(warnings.back().figures.at("grain_um") == step.abrasive.grit.median_um());
  CHECK(count(warnings_of(step_of("P2500 film", "film on firm interface"), std::nullopt),
              StatementKind::grain_extrapolated) == 0);
}

TEST_CASE("inertia is warned of once, whatever the number of soft layers") {
  Step step = step_of("P2000 film", "film on firm interface");
  for (Layer& layer : step.backing.layers) layer = {.modulus_mpa = 1e-3, .thickness_mm = 5, .poisson = 0};
  CHECK(count(warnings_of(step, std::nullopt), StatementKind::inertia_left_out) == 1);
}

TEST_CASE("a foam whose middle comes near its plateau on a crown is warned of; its mean stays below") {
  const Step step = step_of("P3000 foam-backed", "foam-backed disc on pad");  // plateau 3 kPa: estimate
  CHECK(count(warnings_of(step, 1.5), StatementKind::foam_near_plateau) == 1);
  CHECK(count(warnings_of(step, 20.0), StatementKind::foam_near_plateau) == 0);
  CHECK(disc_contact(step, patch, Crown{1.5, {}}).pressure_kpa < 0.9 * 3);
}

TEST_CASE("a contact that is narrow for its lanes is warned of, with the share that a pass misses") {
  Step step = step_of("P2500 film", "film on hard pad");
  CHECK(count(warnings_of(step, std::nullopt), StatementKind::lanes_miss) == 0);
  // 25 N on 2.0e8 Pa/m and a door's sheet of 0.7 mm steel: 36 mm, 72 of lanes of 75 mm (test_crown_contact).
  const std::vector<Statement> warnings = warnings_of(step, 4.0);
  REQUIRE(count(warnings, StatementKind::lanes_miss) == 1);
  const auto missed = std::find_if(warnings.begin(), warnings.end(),
                                   [](const Statement& one) { return one.kind == StatementKind::lanes_miss; });
  CHECK(missed->figures.at("untouched_share") == Catch::Approx(1 - 72. / 75).margin(.005));
  CHECK(missed->figures.at("even_lanes_mm") == Catch::Approx(36).margin(.5));
  step.motion.step_over_mm = 36;
  CHECK(count(warnings_of(step, 4.0), StatementKind::lanes_miss) == 0);
}

TEST_CASE("lanes so wide that they leave cusps are warned of on a flat panel too") {
  Step step = step_of("P2500 film", "film on firm interface");
  step.motion.step_over_mm = 150;
  // Between lanes a whole disc apart the chord is nothing (closed form).
  const std::vector<Statement> warnings = warnings_of(step, std::nullopt);
  REQUIRE(count(warnings, StatementKind::lanes_leave_stripes) == 1);
  step.motion.step_over_mm = 75;
  CHECK(count(warnings_of(step, std::nullopt), StatementKind::lanes_leave_stripes) == 0);
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
