#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/refinement.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

Step first_with(const std::string& abrasive, const Tools& tools) {
  Step step;
  for (const Abrasive& one : tools.abrasives)
    if (one.name == abrasive) step.abrasive = one;
  for (const Backing& one : tools.backings)
    if (carrier_of(one) == step.abrasive.carrier) step.backing = one;
  step.motion = tools.disc;
  step.wetness = step.abrasive.made_for.front();
  step.passes = 1;
  return step;
}

}  // namespace

TEST_CASE("the skin tells what a backing carries") {
  const Tools tools = tools_of(door::job());
  int film = 0, foam = 0, compound = 0;
  for (const Backing& backing : tools.backings) {
    const Carrier carrier = carrier_of(backing);
    const Carrier by_name = backing.name.rfind("film", 0) == 0          ? Carrier::film_disc
                            : backing.name.rfind("foam-backed", 0) == 0 ? Carrier::foam_disc
                                                                        : Carrier::compound;
    CHECK(carrier == by_name);
    ++(carrier == Carrier::film_disc ? film : carrier == Carrier::foam_disc ? foam : compound);
  }
  CHECK((film > 0 && foam > 0 && compound > 0));
}

TEST_CASE(
    "the clear owed is that of the reference table: about 2 um by P1000, 1.1 by P2000, 0.5 by foam-backed "
    "P3000, "
    "nothing by compound") {
  const Job job = door::job();
  const Tools tools = tools_of(job);
  // Seven mean depths less 0.1 um (closed form, docs/physics.md (37)) of the table's depths, which are
  // estimates at 1.4 kPa: 0.29, 0.164, 0.085, 0.0125 um, rounded to a digit or two.
  CHECK(finished_owed_um(job, first_with("P1000 film", tools)) == Approx(1.94).epsilon(0.05));
  CHECK(finished_owed_um(job, first_with("P2000 film", tools)) == Approx(1.05).epsilon(0.05));
  CHECK(finished_owed_um(job, first_with("P3000 foam-backed", tools)) == Approx(0.5).epsilon(0.05));
  CHECK(finished_owed_um(job, first_with("compound", tools)) == Approx(0).margin(0.02));
  CHECK(finished_owed_um(job, first_with("finishing polish", tools)) == 0);
}

TEST_CASE("a coarser first grit never lowers the debt at equal backing and pressure") {
  const Job job = door::job();
  const Tools tools = tools_of(job);
  double finer = 0;
  for (const char* name :
       {"P3000 film", "P2500 film", "P2000 film", "P1500 film", "P1200 film", "P1000 film"}) {
    const double owed = finished_owed_um(job, first_with(name, tools));
    CHECK(owed >= finer);
    finer = owed;
  }
}

TEST_CASE(
    "each refining step is finer than the last, takes no more passes than it may, and the last leaves "
    "nothing") {
  const Job job = door::job();
  const Tools tools = tools_of(job);
  for (const char* name : {"P1000 film", "P2000 film", "P3000 film", "P2000 foam-backed"}) {
    const Step first = first_with(name, tools);
    const std::vector<Step> steps = refinement(job, tools, first);
    REQUIRE_FALSE(steps.empty());
    double grain_um = first.abrasive.grit.median_um(), owed_um = finished_owed_um(job, first);
    for (const Step& step : steps) {
      step.validate();
      CHECK(step.abrasive.grit.median_um() < grain_um);
      if (owed_um > 0)  // what a compound leaves is haze, which owes no clear
        CHECK(passes_to_remove(job, step, 0.9, owed_um) <= WorkLimits{}.refine_passes_most);
      grain_um = step.abrasive.grit.median_um();
      owed_um = finished_owed_um(job, step);
    }
    CHECK(owed_um == 0);
    CHECK(steps.back().abrasive.name == "finishing polish");
  }
}

TEST_CASE("a compound reaches the grooves of fine discs only, and a polish those of a compound") {
  // Common practice, no source: compound after P1500 to P3000, never straight after P1200. The ratio of 3.5
  // is an estimate; medians of ISO 6344-3: P1200 15.3 um, P1500 12.6, compound 4.
  const Job job = door::job();
  const Tools tools = tools_of(job);
  const auto reaches = [&](const char* next, const char* last) {
    return reaches_grooves(first_with(next, tools).abrasive, first_with(last, tools).abrasive, {});
  };
  CHECK(reaches("compound", "P1500 film"));
  CHECK(reaches("compound", "P3000 film"));
  CHECK_FALSE(reaches("compound", "P1200 film"));
  CHECK_FALSE(reaches("finishing polish", "P3000 film"));
  CHECK(reaches("finishing polish", "compound"));
  CHECK_FALSE(reaches("P1200 film", "P2000 film"));
  WorkLimits patient;
  patient.refine_passes_most = 100;
  for (const char* first : {"P1000 film", "P1200 film"})
    CHECK(refinement(job, tools, first_with(first, tools), patient).front().abrasive.carrier !=
          Carrier::compound);
}

TEST_CASE("fewer passes of patience make a longer chain: a finer step cannot take out deep grooves at once") {
  const Job job = door::job();
  const Tools tools = tools_of(job);
  WorkLimits patient, hasty;
  patient.refine_passes_most = 12;
  hasty.refine_passes_most = 3;
  const Step first = first_with("P1000 film", tools);
  CHECK(refinement(job, tools, first, patient).size() < refinement(job, tools, first, hasty).size());
}

TEST_CASE(
    "passes are counted from the fresh disc: one of .5 um asks for one pass of .87 um, twice that for more") {
  // 0.1 mm3/(N m) at 25 N, 2.618 m/s, 0.1 m/s, 75 mm removes 0.873 um a pass while fresh (closed form; spin
  // and loading change it by a few per cent).
  const Job job = door::job();
  const Tools tools = tools_of(job);
  Step step = first_with("P2000 film", tools);
  step.abrasive.wear_rate_mm3_per_n_m = 0.1;
  CHECK(passes_to_remove(job, step, 0.1, 0.5) == 1);
  CHECK(passes_to_remove(job, step, 0.1, 1.0) == 2);
  CHECK_THROWS_AS(passes_to_remove(job, step, 0.1, 0), InvalidInput);
}

TEST_CASE("a machine that the catalogue does not know is refused with the nearest name") {
  Machine machine;
  machine.disc = "150 mm lihgt";
  try {
    tools_of(door::job(), machine);
    FAIL("accepted");
  } catch (const InvalidInput& error) {
    CHECK(std::string(error.what()).find("nearest known: \"150 mm light\"") != std::string::npos);
  }
}
