#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/io/surface_file.hpp"
#include "libtexture/io/whole_file.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
namespace fs = std::filesystem;

namespace {

const char* const good_job = R"(schema = 1
seed = 7
patch = { rows = 128, cols = 128, pixel_mm = 0.1 }
[[panel]]
name = "door"
area_m2 = 0.9
readings = [
  { x_mm = 1, y_mm = 2, total_um = 262 },
  { total_mil = 10.1 },
]
[coating]
kind = "repaint"
clear_um = 60
[texture]
bands = [
  { wavelength_mm = 2.2, rms_um = 0.7 },
]
[target]
rms_um = 0.15
band_mm = [1, 8]
[[sequence]]
name = "first"
[[sequence.step]]
abrasive = "P2000 film"
backing = "film on firm interface"
motion = "150 mm light"
passes = 12
stop = { touched_share = 0.99 }
[[sequence.step]]
abrasive = "P3000 foam-backed"
backing = "foam-backed disc on pad"
motion = { like = "150 mm light", force_n = 20 }
wetness = "damp"
passes = 6
)";

/// The job that `job.toml` with this text describes.
Job load(const Folder& folder, const std::string& text) {
  return load_job(folder.file("job.toml", text));
}

/// The good job with one piece of text put in place of another.
std::string with(const std::string& old_text, const std::string& new_text) {
  std::string text = good_job;
  const std::size_t place = text.find(old_text);
  REQUIRE(place != std::string::npos);
  return text.replace(place, old_text.size(), new_text);
}

/// What a changed job is refused with, less the folder of the file.
std::string refusal(const std::string& old_text, const std::string& new_text) {
  const Folder folder;
  try {
    load(folder, with(old_text, new_text));
  } catch (const InvalidInput& error) {
    const std::string message = error.what();
    REQUIRE(message.find('\n') == std::string::npos);
    REQUIRE(message.find(folder.path.string()) == 0);
    return message.substr(folder.path.string().size() + 1);
  }
  return "none";
}

}  // namespace

TEST_CASE("readings may be plain numbers, or the name of a file") {
  const Folder folder;
  folder.file("door.csv", "total_um\n262\n248\n");
  const std::string tables = R"([
  { x_mm = 1, y_mm = 2, total_um = 262 },
  { total_mil = 10.1 },
])";
  for (const char* readings : {"[262, 248]", "[262, { total_um = 248 }]", "\"door.csv\""}) {
    const Job job = load(folder, with(tables, readings));
    CHECK(job.panel[0].readings == std::vector<Reading>{{.total_um = 262}, {.total_um = 248}});
  }
  CHECK_THROWS_WITH(
      load(folder, with(tables, "[262, 9.8]")),
      Catch::Matchers::ContainsSubstring("job.toml:7: panel[0].readings[1]: Reading: total_um must be "
                                         "at least 15: is it mil or mm? (got 9.8 um)"));
  CHECK_THROWS_WITH(
      load(folder, with(tables, "\"lid.csv\"")),
      Catch::Matchers::ContainsSubstring("job.toml:7: panel[0].readings: must be a file that is there"));
}

TEST_CASE("a number in quotes is answered with what to write") {
  const Folder folder;
  CHECK_THROWS_WITH(load(folder, with("area_m2 = 0.9", "area_m2 = \"0,9\"")),
                    Catch::Matchers::EndsWith("must be a number: write 0.9, without quotes (got \"0,9\")"));
}

TEST_CASE("more than anybody works is refused") {
  const Folder folder;
  std::string many = "readings = [";
  for (int i = 0; i < 2001; ++i) many += "262,";
  CHECK_THROWS_WITH(load(folder, with("readings = [", many)),
                    Catch::Matchers::ContainsSubstring("Panel: readings must hold at most 2000 (got 2003)"));
}

TEST_CASE("a job file becomes a job with its tools in full") {
  const Job job = load(Folder(), good_job);
  CHECK(job.seed == 7);
  CHECK(job.patch.cols == 128);
  CHECK(total_um(job.panel.at(0).readings.at(1)) == Catch::Approx(10.1 * 25.4));
  CHECK(job.texture.bands.at(0).rms_um == 0.7);
  CHECK(job.target.band_mm == std::array<double, 2>{1, 8});
  const Step& step = job.sequence.at(0).step.at(0);
  CHECK(step.abrasive.grit == Grit("P2000"));
  CHECK(step.name.empty());
  CHECK(titles_of(job.sequence.at(0).step).at(0) == "P2000 film");
  CHECK(step.backing.skin->thickness_um > 0);
  CHECK(step.stop.touched_share == 0.99);
  CHECK(job.sequence.at(0).step.at(1).motion.force_n == 20);
}

TEST_CASE("a job reads back the same from its JSON") {
  const Job job = load(Folder(), good_job);
  CHECK(job_from_json(job_to_json(job)) == job);
  CHECK_THROWS_AS(job_from_json("schema = 1"), InvalidInput);
}

TEST_CASE("keys that are missing or unknown are named, with their line") {
  CHECK(refusal("passes = 12", "passses = 12") ==
        "job.toml:27: sequence[0].step[0]: unknown key 'passses'; nearest known: passes");
  CHECK(refusal("passes = 12", "") == "job.toml:23: sequence[0].step[0]: missing key 'passes'");
  CHECK(refusal("[target]", "[taget]") == "job.toml:18: unknown key 'taget'; nearest known: target");
  CHECK(refusal("schema = 1", "") ==
        "job.toml:1: missing key 'schema': write schema = 1, the version of this layout");
  CHECK(refusal("schema = 1", "schema = 2") == "job.toml:1: Job: schema must be 1 (got 2)");
}

TEST_CASE("a wrong unit is an unknown key; the known one is named") {
  CHECK(refusal("total_um = 262", "total_mm = 0.262") ==
        "job.toml:8: panel[0].readings[0]: unknown key 'total_mm'; nearest known: total_um");
  CHECK(refusal("force_n = 20", "force_lbf = 5") ==
        "job.toml:32: sequence[0].step[1].motion: unknown key 'force_lbf'; nearest known: force_n");
  CHECK(refusal("pixel_mm = 0.1", "pixel_um = 100") ==
        "job.toml:3: patch: unknown key 'pixel_um'; nearest known: pixel_mm");
}

TEST_CASE("negative and absurd values are refused with rule, value, unit and line") {
  CHECK(refusal("passes = 12", "passes = -1") ==
        "job.toml:27: sequence[0].step[0]: Step: passes must be between 1 and 1000 (got -1)");
  CHECK(refusal("passes = 12", "passes = 5000") ==
        "job.toml:27: sequence[0].step[0]: Step: passes must be between 1 and 1000 (got 5000)");
  CHECK(refusal("force_n = 20", "force_n = 0") ==
        "job.toml:32: sequence[0].step[1].motion: Motion: force_n must be > 0 (got 0 N)");
  CHECK(
      refusal("force_n = 20", "force_n = 2000") ==
      "job.toml:32: sequence[0].step[1].motion: Motion: force_n must be between 0.001 and 500 (got 2000 N)");
  CHECK(refusal("total_um = 262", "total_um = 1e7") ==
        "job.toml:8: panel[0].readings[0]: Reading: total_um must be at most 5000 (got 1e+07 um)");
  CHECK(refusal("total_um = 262", "total_um = nan") ==
        "job.toml:8: panel[0].readings[0].total_um: must be a finite number (got nan)");
  CHECK(refusal("area_m2 = 0.9", "area_m2 = -0.9") ==
        "job.toml:6: panel[0]: Panel: area_m2 must be > 0 (got -0.9 m2)");
  CHECK(refusal("clear_um = 60", "clear_um = 400") ==
        "job.toml:13: Job: coating.clear_um must be less than the mean of the readings, 259.27 um (got 400 "
        "um)");
  CHECK(refusal("touched_share = 0.99", "touched_share = 99") ==
        "job.toml:28: sequence[0].step[0].stop: Stop: touched_share must be > 0 and <= 1 (got 99)");
}

TEST_CASE("a grit without a system is refused: a number alone names no size") {
  CHECK_THAT(refusal("abrasive = \"P2000 film\"", "abrasive = { like = \"P2000 film\", grit = 3 }"),
             Catch::Matchers::StartsWith("job.toml:24: sequence[0].step[0].abrasive.grit: must be a grade"));
  CHECK_THAT(refusal("abrasive = \"P2000 film\"", "abrasive = { like = \"P2000 film\", grit = \"3\" }"),
             Catch::Matchers::StartsWith("job.toml:24: sequence[0].step[0].abrasive.grit: Grit"));
}

TEST_CASE("a band that the patch cannot hold is refused, with its line: such a rule would be met at once") {
  // 128 pixels of .1 mm
  CHECK(
      refusal("band_mm = [1, 8]", "band_mm = [100, 800]") ==
      "job.toml:20: Job: target.band_mm must overlap the waves that the patch holds, 0.2 to 12.8 mm (got 100 "
      "to 800 mm)");
  CHECK(refusal("{ touched_share = 0.99 }", "{ rms_um = 0.2, band_mm = [0.01, 0.1] }") ==
        "job.toml:28: Job: sequence[0].step[0].stop.band_mm must overlap the waves that the patch holds, 0.2 "
        "to "
        "12.8 mm (got 0.01 to 0.1 mm)");
  CHECK(refusal("band_mm = [1, 8]", "band_mm = [10, 800]") == "none");
}

TEST_CASE("absurd tools are refused by their own line") {
  CHECK(refusal("\"P2000 film\"", "{ like = \"P2000 film\", grit = { median_um = 1e9 } }") ==
        "job.toml:24: sequence[0].step[0].abrasive.grit: Grit: median_um must be between 0.01 and 2000 (got "
        "1e+09 um)");
  CHECK(refusal("force_n = 20", "dwell_cv = 50") ==
        "job.toml:32: sequence[0].step[1].motion: Motion: dwell_cv must be between 0 and 1 (got 50)");
  CHECK(refusal("area_m2 = 0.9", "area_m2 = 0.9\nsheet = { thickness_mm = 700 }") ==
        "job.toml:7: panel[0].sheet: Sheet: thickness_mm must be between 0.1 and 100 (got 700 mm)");
  CHECK(refusal("area_m2 = 0.9", "area_m2 = 0.9\ncrown_radius_m = 1e-9") ==
        "job.toml:7: panel[0]: Panel: crown_radius_m must be between 0.05 and 1e+06 (got 1e-09 m)");
}

TEST_CASE("names are one line, and differ where results go by them") {
  CHECK(refusal("name = \"door\"", "name = \"\"") ==
        "job.toml:5: panel[0]: Panel: name must not be empty (got \"\")");
  CHECK(refusal("name = \"door\"", "name = \"door\\nleft\"") ==
        "job.toml:5: panel[0]: Panel: name must be one line without control characters (got \"door?left\")");
  CHECK(refusal("[coating]",
                "[[panel]]\nname = \"door\"\narea_m2 = 0.9\nreadings = [{ total_um = 250 }]\n"
                "[coating]") ==
        "job.toml:4: Job: panel must have names that differ (got \"door\" "
        "twice)");
  CHECK(refusal("stop = { touched_share = 0.99 }\n[[sequence.step]]",
                "name = \"one\"\n[[sequence.step]]\nname = \"one\"") ==
        "job.toml:23: sequence[0]: Sequence: step must have names that differ (got \"one\" twice)");
}

TEST_CASE("a tool that is neither a name nor a table is told both") {
  CHECK(refusal("\"P2000 film\"", "3") ==
        "job.toml:24: sequence[0].step[0].abrasive: must be a name of the catalogue, or a table (got 3)");
}

TEST_CASE("a tool that the catalogue has not is answered with the nearest one that it has") {
  CHECK(refusal("\"150 mm light\"", "\"150mm light\"") ==
        "job.toml:26: sequence[0].step[0].motion: must be a name of the catalogue; nearest known: \"150 mm "
        "light\", "
        "\"75 mm light\"; the command \"libtexture tools\" lists all (got \"150mm light\")");
}

TEST_CASE("an abrasive that is not made for the wetness is refused, with the line of the wetness") {
  CHECK_THAT(refusal("wetness = \"damp\"", "wetness = \"dry\""),
             Catch::Matchers::StartsWith("job.toml:33: sequence[0].step[1]: "));
  CHECK(refusal("wetness = \"damp\"", "wetness = \"moist\"") ==
        "job.toml:33: sequence[0].step[1].wetness: must be one of dry, damp, wet (got \"moist\")");
}

TEST_CASE("readings that are empty, half placed or without a thickness are refused") {
  CHECK(refusal("  { x_mm = 1, y_mm = 2, total_um = 262 },\n  { total_mil = 10.1 },\n", "") ==
        "job.toml:7: panel[0]: Panel: readings must hold at least one reading (got none)");
  CHECK(refusal("x_mm = 1, ", "") ==
        "job.toml:8: panel[0].readings[0]: Reading: x_mm and y_mm must be given both or neither (got y_mm "
        "alone)");
  CHECK(refusal("{ total_mil = 10.1 }", "{}") ==
        "job.toml:9: panel[0].readings[1]: Reading: total_um or total_mil must be given, exactly one of them "
        "(got neither)");
}

TEST_CASE("a patch of one pixel, and textures that a patch cannot resolve or hold, are refused") {
  CHECK(refusal("rows = 128, cols = 128", "rows = 1, cols = 1") ==
        "job.toml:3: patch: Grid: cols must be between 4 and 16384 (got 1)");
  CHECK_THAT(refusal("wavelength_mm = 2.2", "wavelength_mm = 0.3"),
             Catch::Matchers::StartsWith(
                 "job.toml:16: Job: texture.bands[0]: TextureBand: wavelength_mm must be >= 4 pixels"));
  CHECK_THAT(refusal("wavelength_mm = 2.2", "wavelength_mm = 9"),
             Catch::Matchers::StartsWith(
                 "job.toml:16: Job: texture.bands[0]: TextureBand: wavelength_mm must be <= half"));
}

TEST_CASE("a texture has one source") {
  CHECK_THAT(refusal("[target]", "seen = { wavelength_mm = 3, letter_mm = 5, distance_m = 2 }\n[target]"),
             Catch::Matchers::StartsWith(
                 "job.toml:14: texture: TextureSource: bands, file, seen, wet_film must be exactly one"));
}

TEST_CASE("a syntax error names its line") {
  CHECK_THAT(refusal("seed = 7", "seed = "), Catch::Matchers::StartsWith("job.toml:2: "));
}

TEST_CASE("files that a job names are found from its own folder") {
  const Folder folder;
  write_whole_file(folder.path / "mine.toml",
                   "[motion.\"my hand\"]\nlike = \"150 mm light\"\nforce_n = 18\n");
  std::string text = with("schema = 1", "schema = 1\ncatalogue = \"mine.toml\"");
  text.replace(text.find("\"150 mm light\""), 14, "\"my hand\"");
  const Job job = load(folder, text);
  CHECK(job.sequence.at(0).step.at(0).motion.force_n == 18);
  CHECK(fs::equivalent(*job.catalogue, folder.path / "mine.toml"));

  CHECK(refusal("schema = 1", "schema = 1\ncatalogue = \"none.toml\"") ==
        "job.toml:2: catalogue: must be a file that is there; paths start at the job's folder (got "
        "\"none.toml\")");
  CHECK(refusal("bands = [\n  { wavelength_mm = 2.2, rms_um = 0.7 },\n]", "file = \"none.npy\"") ==
        "job.toml:15: texture.file: must be a file that is there; paths start at the job's folder (got "
        "\"none.npy\")");
  write_whole_file(folder.path / "mine.toml",
                   "[motion.\"my hand\"]\nlike = \"150 mm light\"\nforce_n = -1\n");
  CHECK_THROWS_WITH(load(folder, text), (folder.path / "mine.toml").string() +
                                            ":3: motion.\"my hand\": Motion: force_n must be > 0 (got -1 N)");
}

TEST_CASE("a saved job finds its files from wherever it is loaded, and says what it is by its name") {
  const Folder folder;
  write_whole_file(folder.path / "mine.toml",
                   "[motion.\"my hand\"]\nlike = \"150 mm light\"\nforce_n = 18\n");
  const Job job = load(folder, with("schema = 1", "schema = 1\ncatalogue = \"mine.toml\""));
  fs::create_directory(folder.path / "saved");
  save_job(job, folder.path / "saved" / "job.json");
  CHECK(job_from_json(read_whole_file(folder.path / "saved" / "job.json")).catalogue == "../mine.toml");
  CHECK(load_job(folder.path / "saved" / "job.json") == job);
  CHECK_THROWS_WITH(save_job(job, folder.path / "job.toml"),
                    "Job: path must end in .json, as load_job() tells the kinds by it (got job.toml)");
}

TEST_CASE("a missing job file is a missing file") {
  CHECK_THROWS_AS(load_job("/nowhere/job.toml"), FileMissing);
}

TEST_CASE("the example jobs load") {
  const fs::path jobs = fs::path(LIBTEXTURE_SOURCE_DIR) / "examples/jobs";
  const Job door = load_job(jobs / "rear_door.toml");
  CHECK(door.sequence.size() == 3);
  for (const Reading& reading : door.panel.at(0).readings) {
    CHECK(total_um(reading) >= 230);
    CHECK(total_um(reading) <= 290);
  }
  CHECK(load_job(jobs / "factory_lid.toml").sequence.size() == 2);
  CHECK(load_job(jobs / "bonnet.toml").sequence.size() == 2);
}

namespace {

const Grid map_grid{48, 64, 0.2};

HeightField measured_map() {
  return synthesize({{.wavelength_mm = 2.2, .rms_um = 0.7}}, map_grid, 3);
}

// The good job with a measured map for its texture, and a line for its patch ("" = none).
std::string measured_job(const std::string& file, const std::string& patch, const std::string& more = "") {
  std::string text =
      with("bands = [\n  { wavelength_mm = 2.2, rms_um = 0.7 },\n]", "file = \"" + file + "\"\n" + more);
  const std::string old_patch = "patch = { rows = 128, cols = 128, pixel_mm = 0.1 }";
  return text.replace(text.find(old_patch), old_patch.size(), patch);
}

const std::string map_patch = "patch = { rows = 48, cols = 64, pixel_mm = 0.2 }";

HeightField times(const HeightField& field, double factor) {
  return {factor * field.height_um(), field.pixel_mm()};
}

}  // namespace

TEST_CASE("a measured map's own pixel and pixel count are used, and a contradiction is refused") {
  const Folder folder;
  write_surface(measured_map(), folder.path / "map.csv");
  write_surface(measured_map(), folder.path / "map.npy");
  // Left out, the patch is the file's.
  const Job job = load(folder, measured_job("map.csv", ""));
  CHECK(job.patch == map_grid);
  CHECK(surface_of(job).grid() == map_grid);
  CHECK(surface_of(load(folder, measured_job("map.npy", map_patch))).grid() == map_grid);
  // Stated otherwise, both are named: a pixel four times as large once made the slopes a quarter.
  const std::string map = (folder.path / "map.csv").string();
  CHECK_THROWS_WITH(
      surface_of(load(folder, measured_job("map.csv",
                                           "patch = { rows = 48, cols = 64, pixel_mm = "
                                           "0.8 }"))),
      map +
          ": the file states pixel_mm = 0.2, and 0.8 is asked for (a job's patch, or pixel_mm): "
          "mend the one that is wrong");
  CHECK_THROWS_WITH(
      surface_of(load(folder, measured_job("map.csv",
                                           "patch = { rows = 32, cols = 32, pixel_mm = "
                                           "0.2 }"))),
      map +
          ": the file holds rows = 48, cols = 64, and the job's patch states rows = 32, cols = 32: "
          "write patch = { rows = 48, cols = 64, pixel_mm = 0.2 }");
  // A .npy states no pixel.
  CHECK_THROWS_WITH(load(folder, measured_job("map.npy", "")),
                    Catch::Contains("texture.file: ") && Catch::Contains("pixel_mm must be given"));
}

TEST_CASE("a measured map's tilt and form are taken out and told") {
  const Folder folder;
  Array2d tilted = measured_map().height_um();
  for (Eigen::Index i = 0; i < tilted.cols(); ++i) tilted.col(i) += 20.0 * static_cast<double>(i) / 63;
  write_surface({tilted, 0.2}, folder.path / "map.csv");
  const Job job = load(folder, measured_job("map.csv", map_patch));
  const HeightField surface = surface_of(job);
  const std::vector<Statement> notes = surface_notes(job);
  CHECK(surface.rms_um() == Catch::Approx(0.7).epsilon(0.05));  // 6 of some 90 waves go with the form
  REQUIRE(!notes.empty());
  CHECK(notes[0].kind == StatementKind::form_removed);
  CHECK(notes[0].figures.at("tilt_um") == Catch::Approx(20).epsilon(0.05));
  const Job kept = load(folder, measured_job("map.csv", map_patch, "form = \"kept\""));
  CHECK(surface_of(kept).height_um().isApprox(tilted));
  REQUIRE(!surface_notes(kept).empty());
  CHECK(surface_notes(kept).back().kind == StatementKind::map_not_periodic);
  CHECK(surface_notes(load(Folder(), good_job)).empty());
}

TEST_CASE("heights that no paint has are asked for their unit") {
  const Folder folder;
  const auto said = [&](double factor) {
    write_surface(times(measured_map(), factor), folder.path / "map.csv");
    try {
      surface_of(load(folder, measured_job("map.csv", map_patch)));
    } catch (const InvalidInput& error) {
      return std::string(error.what()).substr((folder.path / "map.csv").string().size());
    }
    return std::string("taken");
  };
  CHECK(said(1) == "taken");
  CHECK(said(0) == "taken");  // a flat panel
  CHECK_THAT(said(1e-3),
             Catch::StartsWith(": heights: texture.file.rms_um must be at least 0.01: is it mm? then "
                               "write 0.6"));
  CHECK_THAT(said(1e-6), Catch::Contains("must be at least 0.01: is it m? then write 0.6"));
  CHECK_THAT(said(1e3), Catch::Contains("must be at most 100: is it nm? then write 0.6"));
}

TEST_CASE("thicknesses of clear are read in mil too") {
  const Job job = load(Folder(), with("clear_um = 60", "clear_mil = 2.4") +
                                     "[budget]\nclear_left_least_mil = 1.4\nreserve_um = 3\n");
  CHECK(*job.coating.clear_um == Catch::Approx(2.4 * 25.4));
  CHECK(*job.budget.clear_left_least_um == Catch::Approx(1.4 * 25.4));
  CHECK(job.budget.reserve_um == 3);
  CHECK(refusal("clear_um = 60", "clear_um = 60\nclear_mil = 2.4") ==
        "job.toml:14: coating.clear_mil: must be left out, as clear_um is given too (got 2.4)");
  CHECK(refusal("clear_um = 60", "clear_um = 2.4") ==
        "job.toml:13: Job: coating.clear_um must be at least 8: is it mil? then write 60.96, or clear_mil = "
        "2.4 in a "
        "job file (got 2.4 um)");
}
