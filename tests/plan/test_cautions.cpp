#include <algorithm>
#include <string>

#include "catch.hpp"
#include "libtexture/plan/cautions.hpp"

using namespace libtexture;

namespace {

Step step_of(Wetness wetness, Carrier carrier) {
  Step step;
  step.name = "level";
  step.wetness = wetness;
  step.abrasive.carrier = carrier;
  return step;
}

bool holds(const std::vector<Statement>& list, StatementKind kind) {
  return std::any_of(list.begin(), list.end(), [&](const Statement& one) { return one.kind == kind; });
}

bool says(const std::vector<Statement>& list, const std::string& words) {
  return std::any_of(list.begin(), list.end(),
                     [&](const Statement& one) { return one.text().find(words) != std::string::npos; });
}

}  // namespace

// Common practice, no source, but for the figures: docs/physics.md, cautions.

TEST_CASE("a job's cautions name what hurts on every job, and that local codes prevail") {
  const auto cautions = general_cautions();
  for (const StatementKind kind : {StatementKind::local_codes_prevail, StatementKind::clear_does_not_return,
                                   StatementKind::old_paint_harms, StatementKind::solvent_burns,
                                   StatementKind::vibration_harms, StatementKind::noise_harms})
    CHECK(holds(cautions, kind));
  CHECK(says(cautions, "licensed practice prevail"));
  CHECK(says(cautions, "Add up the time of the whole day"));
  CHECK(says(cautions, "gloves"));
}

TEST_CASE("water brings electricity, slurry in the eyes, and dust once the slurry is dry") {
  for (const Wetness wetness : {Wetness::damp, Wetness::wet}) {
    const auto wet = cautions_of(step_of(wetness, Carrier::foam_disc));
    CHECK(holds(wet, StatementKind::water_conducts));
    CHECK(says(wet, "eye protection"));
    CHECK(says(wet, "once dry it is dust"));
    for (const Statement& one : wet) CHECK(one.step == "level");
  }
}

TEST_CASE("dry sanding makes dust, compound flings") {
  const auto dry = cautions_of(step_of(Wetness::dry, Carrier::film_disc)),
             compound = cautions_of(step_of(Wetness::dry, Carrier::compound));
  CHECK((holds(dry, StatementKind::dust_harms) && !holds(dry, StatementKind::slurry_harms)));
  CHECK((holds(compound, StatementKind::compound_flings) && !holds(compound, StatementKind::dust_harms)));
  for (const auto& list : {dry, compound}) CHECK(says(list, "eye protection"));
}

TEST_CASE("a bench has the cautions of its work, and of what hurts all day") {
  const auto dry = bench_cautions(Wetness::dry), wet = bench_cautions(Wetness::wet);
  for (const auto& list : {dry, wet})
    for (const StatementKind kind :
         {StatementKind::local_codes_prevail, StatementKind::vibration_harms, StatementKind::noise_harms})
      CHECK(holds(list, kind));
  CHECK((holds(dry, StatementKind::dust_harms) && !holds(dry, StatementKind::slurry_harms)));
  CHECK((holds(wet, StatementKind::slurry_harms) && !holds(wet, StatementKind::dust_harms)));
}
