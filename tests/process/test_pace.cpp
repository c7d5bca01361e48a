#include <cmath>

#include "catch.hpp"
#include "libtexture/process/pace.hpp"
#include "machine.hpp"

using namespace libtexture;

namespace {

constexpr double hardness_mpa = 200;
constexpr double area_m2 = 0.9;

// Film on a disc of 150 mm that loads fast: several discs a panel.
Step some_step() {
  Step step;
  step.abrasive.name = "some film";
  step.abrasive.grit = Grit("P1500");
  step.abrasive.wear_rate_mm3_per_n_m = 0.1;
  step.abrasive.worn_wear_rate_mm3_per_n_m = 0.02;
  step.abrasive.loading_um = 20;
  step.backing = Backing::rigid();
  step.motion = machine::orbital_150_mm();
  step.passes = 1;
  return step;
}

double fresh_um(const Step& step) {
  const double wear = step.abrasive.wear_rate_mm3_per_n_m * hardness_wear_factor(hardness_mpa);
  return removal_per_pass_um(step.motion, wear);
}

struct Pass {
  double removed_um = 0;
  int discs = 1;
};

// The pass in many small parts, each with the wear rate that the disc has by then; discs changed as they go.
Pass in_parts(const Step& step) {
  constexpr int parts = 2'000'000;
  const double areas = area_m2 / disc_area_m2(step.motion), fresh = fresh_um(step);
  const double worn = step.abrasive.worn_wear_rate_mm3_per_n_m / step.abrasive.wear_rate_mm3_per_n_m;
  Pass pass;
  double on_disc_um = 0;
  for (int k = 0; k < parts; ++k) {
    const double share = worn + (1 - worn) * std::exp(-on_disc_um / step.abrasive.loading_um);
    if (share <= step.change_disc_below_share) {
      ++pass.discs;
      on_disc_um = 0;
      --k;
      continue;
    }
    pass.removed_um += fresh * share / parts;
    on_disc_um += fresh * share * areas / parts;
  }
  return pass;
}

}  // namespace

TEST_CASE("a pass of discs that load and are changed removes what small parts of it remove, one by one") {
  for (const double share : {.3, .5, .9})
    for (const double worn : {0.0, .02}) {
      Step step = some_step();
      step.change_disc_below_share = share;
      step.abrasive.worn_wear_rate_mm3_per_n_m = worn;
      DiscUse use;
      const double removed_um = removal_of_pass_um(step, area_m2, hardness_mpa, use);
      const Pass parts = in_parts(step);
      // Each disc of the sum overshoots its change by half a part in 2 million.
      CHECK(removed_um == Catch::Approx(parts.removed_um).epsilon(1e-5));
      CHECK(use.discs == parts.discs);
    }
}

TEST_CASE("passes one after the other on one disc remove what one pass over their areas together removes") {
  Step step = some_step();
  step.change_disc_below_share = 0;
  DiscUse one_by_one, together;
  double sum_um = 0;
  for (int k = 0; k < 4; ++k) sum_um += removal_of_pass_um(step, area_m2, hardness_mpa, one_by_one);
  const double mean_um = removal_of_pass_um(step, 4 * area_m2, hardness_mpa, together);
  CHECK(sum_um ==
        Catch::Approx(4 * mean_um).epsilon(1e-12));  // closed form: V depends on the area passed alone
  CHECK(one_by_one.removed_um == Catch::Approx(together.removed_um).epsilon(1e-12));
  CHECK(one_by_one.discs == 1);
}

TEST_CASE("a disc that never loads removes as a fresh one, and one that loads at once is changed at once") {
  Step step = some_step();
  step.abrasive.loading_um = 1e6;  // of which a disc of this pass uses 2e-5
  DiscUse use;
  CHECK(removal_of_pass_um(step, area_m2, hardness_mpa, use) == Catch::Approx(fresh_um(step)).epsilon(3e-5));
  CHECK(use.discs == 1);

  step.abrasive.loading_um = .1;
  step.change_disc_below_share = .95;
  use = {};
  const double removed_um = removal_of_pass_um(step, area_m2, hardness_mpa, use);
  // Closed form: each disc spends V = loading ln((1 - w)/(share - w)); thousands of them are counted, not
  // gone through.
  const double disc_um = .1 * std::log(.8 / .75);
  CHECK(removed_um <= fresh_um(step));
  CHECK(removed_um >= .95 * fresh_um(step));
  CHECK(use.discs == Catch::Approx(removed_um * area_m2 / disc_area_m2(step.motion) / disc_um).margin(1));
}

TEST_CASE(
    "a disc whose cut ends at once removes no more than a loaded disc does, however hard it is driven") {
  // Closed form: the loaded rate is 0.2 of the fresh one, as some_step() states.
  Step step = some_step();
  step.abrasive.loading_um = .1;
  step.change_disc_below_share = 0;
  DiscUse use;
  const double removed_um = removal_of_pass_um(step, area_m2, hardness_mpa, use);
  CHECK(removed_um ==
        Catch::Approx(.2 * fresh_um(step)).epsilon(.02));  // all but the first tenths of a um of a disc
}

TEST_CASE("a disc has lived when a panel of its life's minutes has used it up") {
  const Step step = some_step();
  const double life = disc_life_minutes(step, hardness_mpa);
  const double least_m2 = .999 * life / pass_minutes(step.motion, 1),
               most_m2 = 1.001 * life / pass_minutes(step.motion, 1);
  DiscUse before, after;
  removal_of_pass_um(step, least_m2, hardness_mpa, before);
  removal_of_pass_um(step, most_m2, hardness_mpa, after);
  CHECK(before.discs == 1);
  CHECK(after.discs == 2);
}
