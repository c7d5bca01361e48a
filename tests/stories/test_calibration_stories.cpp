// Three users end to end, from what each has in hand to what the plan says then. All scenarios are invented.
#include <cmath>

#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/io/bench_file.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/io/test_spot_file.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/test_spot.hpp"

using namespace libtexture;

namespace {

const std::string job_head =
    "schema = 1\n"
    "patch = { rows = 48, cols = 48, pixel_mm = 0.4 }\n"
    "[[panel]]\nname = \"bonnet\"\narea_m2 = 1.2\nedge_length_m = 4\n"
    "readings = [ { total_um = 182 }, { total_um = 190 } ]\n"
    "[coating]\nkind = \"repaint\"\nclear_um = 70\nclear_uncertainty_um = 4\ngauge = { uncertainty_um = 1.0 "
    "}\n"
    "[target]\npreset = \"full\"\n";

std::string texture(const std::string& source) {
  return "[texture]\n" + source + "\n";
}

std::string sequence(const std::string& abrasive, const std::string& motion = "150 mm light") {
  return "[[sequence]]\nname = \"" + abrasive +
         " first\"\n[[sequence.step]]\nname = \"level\"\nabrasive = \"" + abrasive +
         "\"\nbacking = \"film on firm interface\"\nmotion = \"" + motion +
         "\"\npasses = 60\nlook_every_passes = 2\nstop = { touched_share = 0.995 }\n";
}

const std::string bands = "bands = [ { wavelength_mm = 3, rms_um = 0.6 } ]";

Job job_of(const Folder& folder, const std::string& text) {
  folder.file("job.toml", text);
  return load_job(folder.path / "job.toml");
}

PanelPrediction plan_of(const Job& job) {
  return predict(job, surface_of(job)).prediction.panels.front();
}

}  // namespace

TEST_CASE(
    "the detailer, with a gauge and eyes alone, gets from a factor of two to a plan that can be trusted") {
  const Folder folder;
  const Job job = job_of(folder, job_head +
                                     texture("seen = { wavelength_mm = 3, letter_mm = 25, distance_m = 2, "
                                             "eye_to_paint_m = 0.5 }") +
                                     sequence("P2000 film"));
  // One pass is less than the gauge can tell: said, with what would do.
  folder.file("spot.csv", "# passes = 1\nwhen,total_um\nbefore,186\nafter,185\n");
  const TestSpotResult weak = judge_test_spot(job, read_test_spot(folder.path / "spot.csv"));
  REQUIRE_FALSE(weak.is_useful);
  CHECK(weak.passes_needed > 5);
  CHECK(weak.after.log_sd > 0.5);

  // Eight passes, six readings, and a look for the last glossy valley.
  std::string text = "# passes = 8\n# gloss_gone_passes = 6\nwhen,total_um\n";
  for (int i = 0; i < 6; ++i) text += "before,186\nafter,180.5\n";
  folder.file("spot.csv", text);
  const TestSpot spot = read_test_spot(folder.path / "spot.csv");
  const SpotCurves curves = curves_of(job, spot, surface_of(job));
  const TestSpotResult result = judge_test_spot(job, spot, curves);
  CHECK(result.is_useful);
  CHECK(result.after.log_sd < 0.25);
  // By eye a factor of 2.2 either way; with the last glossy valley less than half of that.
  CHECK(result.texture_before->log_sd == Catch::Approx(0.39).margin(0.01).epsilon(0));
  CHECK(result.texture_after->log_sd < 0.5 * result.texture_before->log_sd);

  // Saved and read again it is the same job; the plan works with it.
  save_job(calibrate(job, spot, curves).job, folder.path / "calibrated.json");
  const Job calibrated = load_job(folder.path / "calibrated.json");
  CHECK(calibrated == calibrate(job, spot, curves).job);
  const PanelPrediction before = plan_of(job), after = plan_of(calibrated);
  CHECK(after.start.rms_um == Catch::Approx(result.texture_after->median).epsilon(1e-9));
  // The first pass goes as the wear rate does, but for loading.
  CHECK(after.passes.front().removed_um / before.passes.front().removed_um ==
        Catch::Approx(result.after.median / result.before.median).epsilon(0.05));
}

TEST_CASE("the product tester's bench becomes a catalogue entry that a plan is made with") {
  const Folder folder;
  std::string text =
      "# abrasive = film under test\n# grit = P2000\n# force_n = 25\n# sliding_m_per_s = 2.6\n"
      "# seconds_per_pass = 20\n# area_cm2 = 200\n# disc_area_cm2 = 177\ndisc,pass,removed_um\n";
  // Twice the catalogue's rate for P2000, discs that differ by 4 %.
  const double usual = shipped_catalogue().abrasives.at("P2000 film").wear_rate_mm3_per_n_m;
  for (const double disc : {0.96, 1.0, 1.04})
    for (int pass = 1; pass <= 6; ++pass)
      text += to_text(disc) + "," + std::to_string(pass) + "," +
              std::to_string(2 * usual * disc * 65 * (1 + 0.002 * (pass % 2))) + "\n";
  folder.file("bench.csv", text);
  const Bench bench = read_bench(folder.path / "bench.csv");
  const BenchResult result = judge_bench(bench);
  CHECK(result.disc_log_sd == Catch::Approx(0.04).epsilon(0.05));
  CHECK(runs_needed(10, result.disc_log_sd) <= 6);
  const Abrasive abrasive =
      abrasive_of(bench, result, shipped_catalogue().abrasives.at("P2000 film"), "bench.csv, invented");
  folder.file("mine.toml", catalogue_entry(abrasive));

  const std::string rest = job_head + texture(bands);
  const Job job = job_of(folder, "catalogue = \"mine.toml\"\n" + rest + sequence("film under test"));
  CHECK(job.sequence[0].step[0].abrasive == abrasive);
  const HistoryRow quick = plan_of(job).steps.front();
  const HistoryRow slow = plan_of(job_of(folder, rest + sequence("P2000 film"))).steps.front();
  // Wear rate moves passes, not clear: half the passes but for looks and loading, clear to the next look.
  CHECK(quick.passes < 0.75 * slow.passes);
  CHECK(quick.removed_um == Catch::Approx(slow.removed_um).epsilon(0.5));
}

TEST_CASE("the trainer shows what a small disc costs in time, and what overhang costs at the edge") {
  const Folder folder;
  const std::string head = job_head + texture(bands);
  const PanelPrediction large = plan_of(job_of(folder, head + sequence("P2000 film")));
  const PanelPrediction small = plan_of(job_of(folder, head + sequence("P2000 film", "75 mm light")));
  // Common practice, no source: small machines are for spots. Masking and cleaning do not depend on the disc.
  CHECK(small.labour.total_minutes > 1.3 * large.labour.total_minutes);
  CHECK(small.labour.masking_minutes == large.labour.masking_minutes);
  CHECK(small.labour.cleaning_minutes == large.labour.cleaning_minutes);

  const PanelPrediction over =
      plan_of(job_of(folder, head + "[edge]\noverhang = \"straddle\"\n" + sequence("P2000 film")));
  REQUIRE((large.edge && over.edge));
  CHECK(over.edge->peak_removal_um > 1.5 * large.edge->peak_removal_um);
  CHECK(over.edge->removed_area_mm2 > 3 * large.edge->removed_area_mm2);
  REQUIRE((large.edge->sure_margin_mm && over.edge->sure_margin_mm));
  CHECK(*over.edge->sure_margin_mm >= *large.edge->sure_margin_mm);
}
