#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/labour.hpp"
#include "libtexture/process/pace.hpp"

using namespace libtexture;

namespace {

Step step_of(const std::string& motion) {
  Step step;
  step.name = "level";
  step.abrasive = shipped_catalogue().abrasives.at("P2000 film");
  step.backing = shipped_catalogue().backings.at("film on firm interface");
  step.motion = shipped_catalogue().motions.at(motion);
  step.passes = 10;
  step.look_every_passes = 2;
  return step;
}

HistoryRow row_of(int passes, double removed_um, int discs, double minutes) {
  HistoryRow row;
  row.name = "level";
  row.passes = passes;
  row.removed_um = removed_um;
  row.discs = discs;
  row.minutes = minutes;
  return row;
}

/// Passes over an area until so much is removed, their minutes and discs: by the process floor.
HistoryRow worked(const Step& step, double area_m2, double removal_um) {
  HistoryRow row = row_of(0, 0, 0, 0);
  DiscUse use;
  while (row.removed_um < removal_um) {
    row.removed_um += removal_of_pass_um(step, area_m2, 200, use);
    ++row.passes;
  }
  row.discs = use.discs;
  row.minutes = row.passes * pass_minutes(step.motion, area_m2);
  return row;
}

}  // namespace

TEST_CASE("a person's minutes are looks, discs, edges, masking and cleaning at the stated rates") {
  Labour labour;
  labour.wipe_minutes_per_m2 = 2;
  labour.look_minutes = 1;
  labour.disc_change_minutes = 0.25;
  labour.edge_minutes_per_m_um = 0.5;
  labour.masking_minutes_per_m = 3;
  labour.cleaning_minutes_per_m2 = 10;
  const Step step = step_of("150 mm light");
  // By hand: 7 passes with a look every 2 are 4 looks of 1 + 2 x .5 min; 5 um and 2 m of edge at .5.
  const LabourMinutes minutes = labour_of(labour, 0.5, 2, {step}, {row_of(7, 5, 3, 12)});
  CHECK(minutes.sanding_minutes == 12);
  CHECK(minutes.looking_minutes == 8);
  CHECK(minutes.disc_change_minutes == 0.75);
  CHECK(minutes.edge_minutes == 5);
  CHECK(minutes.masking_minutes == 6);
  CHECK(minutes.cleaning_minutes == 5);
  CHECK(minutes.total_minutes == 36.75);
  LabourMinutes total = minutes;
  add(total, minutes);
  CHECK(total.total_minutes == 73.5);
  CHECK(total.edge_minutes == 10);
}

TEST_CASE("a disc is to be changed after the minutes at which the process floor takes a fresh one") {
  for (const char* motion : {"150 mm light", "75 mm light"}) {
    const Step step = step_of(motion);
    const double life = disc_life_minutes(step, 200);
    REQUIRE(std::isfinite(life));
    // An area whose one pass takes as long wears out exactly one disc: a little less keeps it.
    const double area_m2 = life / pass_minutes(step.motion, 1);
    DiscUse before, after;
    removal_of_pass_um(step, 0.999 * area_m2, 200, before);
    removal_of_pass_um(step, 1.001 * area_m2, 200, after);
    CHECK(before.discs == 1);
    CHECK(after.discs == 2);
  }
  Step lasting = step_of("150 mm light");
  lasting.change_disc_below_share = 0.1;  // below its worn rate of .3: never
  CHECK(std::isinf(disc_life_minutes(lasting, 200)));
  CHECK_FALSE(disc_lives({lasting}, {row_of(7, 5, 1, 12)}, 200).front().change_after_minutes);
}

TEST_CASE("a small disc takes longer and more discs for the same clear") {
  // Common practice, no source: 75 mm machines are for spots and edges, 150 mm machines for panels.
  const Step large = step_of("150 mm light"), small = step_of("75 mm light");
  const HistoryRow by_large = worked(large, 0.9, 4), by_small = worked(small, 0.9, 4);
  CHECK(labour_of({}, 0.9, 3, {small}, {by_small}).total_minutes >
        1.5 * labour_of({}, 0.9, 3, {large}, {by_large}).total_minutes);
  CHECK(by_small.discs > by_large.discs);
  // Loading goes by clear per disc area: a disc of a quarter of the area lives for a quarter of the clear.
  const double per_disc_large = 0.9 * 4 / by_large.discs, per_disc_small = 0.9 * 4 / by_small.discs;
  CHECK(per_disc_small < per_disc_large);
}

TEST_CASE(
    "at equal pressure a disc of half the diameter sands twice the lanes and carries a quarter of the "
    "clear") {
  // Geometry: lanes = width/step-over, and the step-over is half a diameter; area goes with its square. Steps
  // alike but for size, force by area: the same pressure.
  Step large = step_of("150 mm light"), small = large;
  large.motion.spin_rpm =
      0;  // the rim of a smaller disc that spins is slower; an orbit's speed is the same all over
  small.motion.spin_rpm = 0;
  small.motion.disc_diameter_mm = 75;
  small.motion.step_over_mm = large.motion.step_over_mm / 2;
  small.motion.force_n = large.motion.force_n / 4;
  CHECK(pressure_kpa(small.motion) == Catch::Approx(pressure_kpa(large.motion)).epsilon(1e-12));
  CHECK(pass_minutes(small.motion, 0.9) == Catch::Approx(2 * pass_minutes(large.motion, 0.9)).epsilon(1e-12));
  // A pass of twice the lanes at a quarter of the force removes half; a disc of a quarter of the area loads
  // four times as fast for the same clear: with wear rates that stay, the same depth takes four times the
  // sanding.
  small.abrasive.worn_wear_rate_mm3_per_n_m = large.abrasive.worn_wear_rate_mm3_per_n_m =
      large.abrasive.wear_rate_mm3_per_n_m;
  DiscUse by_small, by_large;
  const double removed_small = removal_of_pass_um(small, 0.9, 200, by_small);
  const double removed_large = removal_of_pass_um(large, 0.9, 200, by_large);
  CHECK(removed_small == Catch::Approx(removed_large / 2).epsilon(1e-9));
  CHECK(by_small.removed_um == Catch::Approx(2 * by_large.removed_um).epsilon(1e-9));  // per disc area

  const std::vector<DiscSizeMinutes> sizes = minutes_by_disc_size(
      {}, 0.9, {large, small, large}, {row_of(4, 2, 1, 10), row_of(8, 2, 4, 40), row_of(2, 1, 1, 5)});
  REQUIRE(sizes.size() == 2);
  CHECK(sizes[0].disc_diameter_mm == 75);
  CHECK(sizes[0].discs == 4);
  CHECK(sizes[0].sanding_minutes == 40);
  CHECK(sizes[1].discs == 2);
  CHECK(sizes[1].sanding_minutes == 15);
  CHECK(sizes[1].looking_minutes == Catch::Approx((2 + 1) * (0.5 + 0.9)));  // looks every 2 passes
  CHECK(sizes[1].disc_change_minutes == 1);
}

TEST_CASE("labour refuses figures below zero and rows that do not fit the steps") {
  Labour labour;
  labour.look_minutes = -1;
  CHECK_THROWS_WITH(labour.validate(), Catch::Matchers::StartsWith("Labour: look_minutes must be >= 0"));
  CHECK_THROWS_WITH(labour_of({}, 1, 1, {step_of("150 mm light")}, {}),
                    "Labour: rows must be one a step (got 0)");
  CHECK_THROWS_AS(labour_of({}, 1, -1, {}, {}), InvalidInput);
}
