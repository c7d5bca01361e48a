#include "catch.hpp"
#include "libtexture/process/step.hpp"
#include "machine.hpp"

using namespace libtexture;

namespace {

Step some_step() {
  Step step;
  step.abrasive.name = "some film";
  step.abrasive.wear_rate_mm3_per_n_m = 0.1;
  step.abrasive.worn_wear_rate_mm3_per_n_m = 0.03;
  step.abrasive.loading_um = 150;
  step.backing = Backing::rigid();
  step.motion = machine::orbital_150_mm();
  step.passes = 8;
  return step;
}

}  // namespace

TEST_CASE("a step with a valid tool and some passes is valid") {
  CHECK_NOTHROW(some_step().validate());
}

TEST_CASE("a step refuses passes and forces that nobody works with") {
  Step step = some_step();
  step.passes = 0;
  CHECK_THROWS_WITH(step.validate(), "Step: passes must be between 1 and 1000 (got 0)");
  step.passes = 1001;
  CHECK_THROWS_AS(step.validate(), InvalidInput);
  step = some_step();
  step.motion.force_n = 501;
  CHECK_THROWS_WITH(step.validate(), "Motion: force_n must be between 0.001 and 500 (got 501 N)");
  step.motion.force_n = 0;
  CHECK_THROWS_WITH(step.validate(), "Motion: force_n must be > 0 (got 0 N)");
  step = some_step();
  step.look_every_passes = 0;
  CHECK_THROWS_AS(step.validate(), InvalidInput);
}

TEST_CASE("a step does not change its discs while they are all but fresh") {
  Step step = some_step();
  step.change_disc_below_share = 1;
  CHECK_THROWS_WITH(step.validate(), "Step: change_disc_below_share must be between 0 and 0.95 (got 1)");
  step.change_disc_below_share = 0.95;
  CHECK_NOTHROW(step.validate());
}

TEST_CASE("a step's name is one line, or none") {
  Step step = some_step();
  step.name = "level\ntwice";
  CHECK_THROWS_WITH(step.validate(),
                    "Step: name must be one line without control characters (got \"level?twice\")");
}

TEST_CASE("a step refuses an abrasive that is not made for its wetness") {
  Step step = some_step();
  step.wetness = Wetness::wet;
  CHECK_THROWS_AS(step.validate(), InvalidInput);
  step.abrasive.made_for = {Wetness::dry, Wetness::wet};
  CHECK_NOTHROW(step.validate());
}

TEST_CASE("a stop's shares, lengths and bands are within their rules") {
  const auto error_of = [](const Stop& stop) -> std::string {
    try {
      stop.validate();
    } catch (const InvalidInput& error) {
      return error.what();
    }
    return "none";
  };
  Stop stop;
  CHECK(error_of(stop) == "none");
  stop.touched_share = 99.0;  // a percentage, by mistake
  CHECK(error_of(stop) == "Stop: touched_share must be > 0 and <= 1 (got 99)");
  stop = Stop();
  stop.rms_um = 0.1;
  stop.band_mm = {8, 1};
  CHECK(error_of(stop) == "Stop: band_mm must be two wavelengths > 0, the shorter first (got 8 to 1 mm)");
  stop.band_mm = {1, 8};
  CHECK(error_of(stop) == "none");
  stop.rms_um.reset();
  CHECK(error_of(stop) ==
        "Stop: band_mm must come with rms_um, which it is the band of (got 1 to 8 mm alone)");
  stop = Stop();
  stop.removed_um = 10000.0;
  CHECK(error_of(stop) == "Stop: removed_um must be between 0 and 1000 (got 10000 um)");
  stop = Stop();
  stop.clear_owed_um = -1.0;
  CHECK(error_of(stop) == "Stop: clear_owed_um must be >= 0 (got -1 um)");
}
