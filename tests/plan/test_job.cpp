#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/job.hpp"

using namespace libtexture;

namespace {

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
  CHECK(error_of(door::job()) == "none");
}

TEST_CASE("a job refuses a texture that its patch cannot resolve or hold") {
  Job job = door::job();
  job.texture.bands[0].wavelength_mm = 0.3;
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith(
                                "Job: texture.bands[0]: TextureBand: wavelength_mm must be >= 4 pixels"));
  job.texture.bands[0].wavelength_mm = 13;
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith(
                                "Job: texture.bands[0]: TextureBand: wavelength_mm must be <= half"));
}

TEST_CASE("a clear coat is thinner than the film that it lies on top of") {
  Job job = door::job();
  job.coating.clear_um = 300;
  CHECK(error_of(job) ==
        "Job: coating.clear_um must be less than the mean of the readings, 250 um (got 300 um)");
}

TEST_CASE("a target names something to reach, and each part of it whole") {
  Job job = door::job();
  job.target = {};
  CHECK_THAT(error_of(job),
             Catch::Matchers::StartsWith(
                 "Target: rms_um, preset, image_clarity_percent, letter_mm or defect must be given"));
  job.target.letter_mm = 5;
  CHECK(error_of(job) ==
        "Target: letter_mm and distance_m must be given both or neither (got letter_mm alone)");
  job.target.distance_m = 2;
  CHECK(error_of(job) == "none");
  job.target.eye_to_paint_m = 2;
  CHECK(error_of(job) == "Target: eye_to_paint_m must be >= 0 and less than distance_m (got 2 m)");
  job.target.eye_to_paint_m = 0;
  CHECK(error_of(job) == "none");
  job.target.band_mm = {1, 8};
  CHECK(error_of(job) == "Target: band_mm must come with rms_um (got 1 to 8 mm alone)");
  job.target.rms_um = 0.1;
  job.target.band_mm = {8, 1};
  CHECK(error_of(job) == "Target: band_mm must be two wavelengths > 0, the shorter first (got 8 to 1 mm)");
  job.target = {.rms_um = 0.1, .eye_to_paint_m = 1};
  CHECK(error_of(job) == "Target: eye_to_paint_m must come with letter_mm and distance_m (got 1 m)");
  job.target = {};
  job.target.image_clarity_percent = 101;
  CHECK(error_of(job) == "Target: image_clarity_percent must be between 0 and 100 (got 101 %)");
}

TEST_CASE(
    "results are for the job's viewer, or for the eye that judged the texture, or that the target is for") {
  Job job = door::job();
  CHECK(viewer_of(job) == Viewer{});
  job.target.letter_mm = 10;
  job.target.distance_m = 6;
  CHECK(viewer_of(job) == viewer_along(6));
  job.texture = {.seen = SeenTexture{.wavelength_mm = 3, .letter_mm = 25, .distance_m = 2}};
  CHECK(viewer_of(job) == viewer_along(2));
  job.viewer = Viewer{.viewer_m = 4};
  CHECK(viewer_of(job) == *job.viewer);
  job.viewer->scene_m = 0;
  CHECK(error_of(job) == "Viewer: scene_m must be > 0 (got 0 m)");
}

TEST_CASE("a job refuses absurd numbers") {
  Job job = door::job();
  job.schema = 2;
  CHECK(error_of(job) == "Job: schema must be 1 (got 2)");
  job = door::job();
  job.patch.rows = job.patch.cols = 16384;
  CHECK_THAT(error_of(job), Catch::Matchers::StartsWith("Job: patch must have at most 16777216 pixels"));
  job = door::job();
  job.panel.clear();
  CHECK(error_of(job) == "Job: panel must hold at least one panel (got none)");
  job = door::job();
  job.coating.gauge.gain_percent = 60;
  CHECK(error_of(job) == "Gauge: gain_percent must be between 0 and 50 (got 60 %)");
  job = door::job();
  job.budget.reserve_um = -1;
  CHECK(error_of(job) == "Budget: reserve_um must be between 0 and 5000 (got -1 um)");
  job = door::job();
  job.sequence = {Sequence{"empty", {}}};
  CHECK(error_of(job) == "Sequence: step must hold at least one step (got none)");
}
