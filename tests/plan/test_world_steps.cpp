#include <cmath>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/world_steps.hpp"

using namespace libtexture;

namespace {

Step step_on(const Backing& backing) {
  Step step;
  step.abrasive = shipped_catalogue().abrasives.at("P2000 film");
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.backing = backing;
  step.passes = 4;
  return step;
}

std::vector<WorldStep> on(const Backing& backing, const std::optional<Crown>& crown = {}) {
  const Job job = door::job();
  const Worlds worlds = worlds_of(job);
  const Step step = step_on(backing);
  const DiscContact nominal = disc_contact(step, job.patch, crown);
  return world_steps(worlds, step, step_worlds(worlds, step, 0), {job.patch, 2.5, crown}, nominal);
}

}  // namespace

TEST_CASE("on springs S/p goes with stiffness and texture over the force, in every world") {
  // Closed form: S = k and p = F/(pi a^2), so that the factor is k'/k s F/F'.
  const Worlds worlds = worlds_of(door::job());
  const Step step = step_on(Backing::on_springs(.5));
  const StepWorlds drawn = step_worlds(worlds, step, 0);
  const std::vector<WorldStep> all = on(step.backing);
  REQUIRE(all.size() == worlds.person.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    CHECK(all[i].stiffness_factor ==
          Catch::Approx(drawn.stiffness_factor[i] * worlds.texture_scale[i] / drawn.force_factor[i])
              .epsilon(1e-9));
    CHECK(all[i].pressure_kpa == Catch::Approx(pressure_kpa(all[i].step.motion)).epsilon(1e-12));
  }
}

TEST_CASE("a block of 64 worlds tells how far the work is") {
  const Job job = door::job();
  const Worlds worlds = worlds_of(job);
  const Step step = step_on(Backing::rigid());
  std::size_t told = 0;
  world_steps(worlds, step, step_worlds(worlds, step, 0), {job.patch, 2.5, {}},
              disc_contact(step, job.patch, {}), [&](double) { ++told; });
  CHECK(told == (worlds.person.size() + 63) / 64);
}

TEST_CASE("a rigid face has the clock alone, and a crown presses harder") {
  for (const WorldStep& one : on(Backing::rigid())) CHECK(one.stiffness_factor == 1);
  const Backing firm = shipped_catalogue().backings.at("film on firm interface");
  const std::vector<WorldStep> flat = on(firm), crowned = on(firm, Crown{2, {}});
  for (std::size_t i = 0; i < flat.size(); ++i) CHECK(crowned[i].pressure_kpa > flat[i].pressure_kpa);
}
