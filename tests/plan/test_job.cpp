#include "catch.hpp"
#include "libtexture/plan/job.hpp"

using namespace libtexture;

namespace {

Job some_job() {
  Reading reading;
  reading.total_um = 250;
  Panel panel;
  panel.name = "door";
  panel.area_m2 = 0.9;
  panel.readings = {reading};
  TextureBand band;
  band.wavelength_mm = 2.2;
  band.rms_um = 0.55;
  Job job;
  job.patch.rows = job.patch.cols = 128;
  job.patch.pixel_mm = 0.1;
  job.panel = {panel};
  job.texture.bands = {band};
  job.target.rms_um = 0.15;
  return job;
}

std::string error_of(const Job& job) {
  try {
    job.validate();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "none";
}

}  // namespace

TEST_CASE("a job without sequences is valid: which one to take may be the question") {
  CHECK(error_of(some_job()) == "none");
}

TEST_CASE("a job refuses a texture that its patch cannot resolve or hold") {
  Job job = some_job();
  job.texture.bands[0].wavelength_mm = 0.3;
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith(
                                "Job: texture.bands[0]: TextureBand: wavelength_mm must be >= 4 pixels"));
  job.texture.bands[0].wavelength_mm = 12;
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith(
                                "Job: texture.bands[0]: TextureBand: wavelength_mm must be <= half"));
}

TEST_CASE("a clear coat is thinner than the film that it lies on top of") {
  Job job = some_job();
  job.coating.clear_um = 300;
  CHECK(error_of(job) ==
        "Job: coating.clear_um must be less than the mean of the readings, 250 um (got 300 um)");
}

TEST_CASE("a target names something to reach, and each part of it whole") {
  Job job = some_job();
  job.target = {};
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith(
                                "Target: rms_um, preset, image_clarity_percent or letter_mm must be given"));
  job.target.letter_mm = 5;
  CHECK(error_of(job) ==
        "Target: letter_mm and distance_m must be given both or neither (got letter_mm alone)");
  job.target.distance_m = 2;
  CHECK(error_of(job) == "none");
  job.target.band_mm = {1, 8};
  CHECK(error_of(job) == "Target: band_mm must come with rms_um (got 1 to 8 mm alone)");
  job.target.rms_um = 0.1;
  job.target.band_mm = {8, 1};
  CHECK(error_of(job) == "Target: band_mm must be two wavelengths > 0, the shorter first (got 8 to 1 mm)");
  job.target = {};
  job.target.image_clarity_percent = 101;
  CHECK(error_of(job) == "Target: image_clarity_percent must be between 0 and 100 (got 101 %)");
}

TEST_CASE("a job refuses absurd numbers") {
  Job job = some_job();
  job.schema = 2;
  CHECK(error_of(job) == "Job: schema must be 1 (got 2)");
  job = some_job();
  job.patch.rows = job.patch.cols = 16384;
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith("Job: patch must have at most 16777216 pixels"));
  job = some_job();
  job.panel.clear();
  CHECK(error_of(job) == "Job: panel must hold at least one panel (got none)");
  job = some_job();
  job.coating.gauge.gain_percent = 60;
  CHECK(error_of(job) == "Gauge: gain_percent must be between 0 and 50 (got 60 %)");
  job = some_job();
  job.budget.reserve_um = -1;
  CHECK(error_of(job) == "Budget: reserve_um must be between 0 and 5000 (got -1 um)");
  job = some_job();
  job.sequence = {Sequence{"empty", {}}};
  CHECK(error_of(job) == "Sequence: step must hold at least one step (got none)");
}
