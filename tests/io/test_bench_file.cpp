#include <string>

#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/bench_file.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/toml_file.hpp"

using namespace libtexture;

namespace {

Bench bench_of(std::string_view text) {
  const Folder folder;
  return read_bench(folder.file("bench.csv", text));
}

std::string error_of(std::string_view text) {
  try {
    bench_of(text);
  } catch (const InvalidInput& error) {
    const std::string what = error.what();
    return what.substr(what.find(".csv") + 4);
  }
  return "none";
}

const std::string settings =
    "# abrasive = my P2500\n# grit = P2500\n# force_n = 25\n# sliding_m_per_s = 2.6\n# seconds_per_pass = "
    "20\n"
    "# area_cm2 = 200\n# disc_area_cm2 = 177\n";

}  // namespace

TEST_CASE("rows of passes become runs of discs") {
  const Bench bench = bench_of(
      settings +
      "# wetness = damp\ndisc,repeat,pass,removed_um\nA,1,2,.8\nA,1,1,.9\nA,2,1,1\nB,1,1,1.1\nB,1,2,.9\n");
  CHECK(bench.abrasive == "my P2500");
  CHECK(bench.grit == Grit("P2500"));
  CHECK(bench.wetness == Wetness::damp);
  CHECK(bench.disc_area_cm2 == 177);
  REQUIRE(bench.runs.size() == 3);
  CHECK(bench.runs[0] == BenchRun{"A, repeat 1", {.9, .8}});
  CHECK(bench.runs[2].removed_um == std::vector<double>{1.1, .9});
}

TEST_CASE("milligrams on an area are micrometres by the density") {
  // Closed form: 1 mg at 1.2 g/cm3 is 1/1.2 mm3; on 200 cm2 = 20000 mm2 that is 1/24000 mm = .0416667 um.
  const Bench bench = bench_of(
      settings + "# density_g_per_cm3 = 1.2\ndisc,pass,removed_mg\nA,1,24\nA,2,24\nA,3,12\nA,4,12\n");
  CHECK(bench.runs[0].removed_um[0] == Catch::Approx(1).epsilon(1e-14));
  CHECK(bench.runs[0].removed_um[3] == Catch::Approx(.5).epsilon(1e-14));
}

TEST_CASE("a bad bench file is refused by line") {
  CHECK(error_of("disc,pass,removed_um\nA,1,1\n") == ":1: a line \"# abrasive = ...\" must be given");
  CHECK(error_of("# abrasive = x\n# grit = 3000\ndisc,pass,removed_um\nA,1,1\n").starts_with(":2: Grit"));
  CHECK(error_of(settings + "disc,pass\nA,1\n") ==
        ":1: one of the columns removed_um and removed_mg must be given");
  CHECK(error_of(settings + "disc,pass,removed_mg\nA,1,1\n") ==
        ":1: a line \"# density_g_per_cm3 = ...\" must be given");
  CHECK(error_of(settings + "disc,pass,removed_um\nA,1,1\nA,1,1\n") == ":10: pass 1 of disc A stands twice");
  CHECK(error_of(settings + "disc,pass,removed_um\nA,1,1\nA,3,1\n") == ":10: disc A has pass 3 but not 2");
  CHECK(error_of(settings + "disc,pass,removed_um\nA,first,1\n") ==
        ":9: pass must be a number (got \"first\")");
  CHECK(error_of(settings + "disc,pass,removed_um\nA,1,1\n") ==
        ":8: Bench: runs must hold at least four passes (got 1)");
}

TEST_CASE("a curve of force and deflection is read") {
  const Folder folder;
  const CompressionCurve curve = read_compression(folder.file(
      "curve.csv",
      "# thickness_mm = 10\n# area_cm2 = 25\ndeflection_mm;force_n\n.5;20\n1;28\n1.5;30\n2;31\n"));
  CHECK(curve.force_n == std::vector<double>{20, 28, 30, 31});
  CHECK(curve.deflection_mm == std::vector<double>{.5, 1, 1.5, 2});
}

TEST_CASE("a catalogue entry read back is the same abrasive") {
  for (const Grit& grit : {Grit("JIS 3000"), Grit::of_median_um(4.5)}) {
    Abrasive abrasive;
    abrasive.name = "my \"best\" film";
    abrasive.grit = grit;
    abrasive.made_for = {Wetness::damp, Wetness::wet};
    abrasive.wear_rate_mm3_per_n_m = 1 / 13.;
    abrasive.worn_wear_rate_mm3_per_n_m = .02;
    abrasive.loading_um = 90;
    abrasive.ranges["loading_um"] = {60, 130};
    abrasive.source = "bench, 4 discs of 12 passes, invented";
    const std::string text = catalogue_entry(abrasive);
    const Catalogue catalogue = extended({}, parse_toml(text, "entry.toml"));
    CHECK(catalogue.abrasives.at(abrasive.name) == abrasive);
    CHECK(text.find("source = \"bench, 4 discs") != std::string::npos);
  }
}
