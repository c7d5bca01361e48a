#include <array>
#include <string>

#include "catch.hpp"
#include "libtexture/base/error.hpp"

using namespace libtexture;

TEST_CASE("an error names the owner, the field, the rule, the value and the unit") {
  CHECK_THROWS_WITH(require_positive(-3, "Motion", "force_n"), "Motion: force_n must be > 0 (got -3 N)");
  CHECK_THROWS_WITH(require_within(200, 0, 90, "Gloss", "angle_deg"),
                    "Gloss: angle_deg must be between 0 and 90 (got 200 degrees)");
}

TEST_CASE("a number that was never given breaks every rule") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(require_positive(nan, "Grid", "pixel_mm"), InvalidInput);
  CHECK_THROWS_AS(require_not_negative(nan, "Grid", "pixel_mm"), InvalidInput);
  CHECK_THROWS_AS(require_within(nan, 0, 1, "Grid", "pixel_mm"), InvalidInput);
}

TEST_CASE("a failed solve carries its numbers") {
  const NotConverged error("press", 7, 1e-3, 1e-6);
  CHECK(error.iterations == 7);
  CHECK(std::string(error.what()) ==
        "press did not converge: residual 0.001 after 7 iterations (asked: 1e-06)");
}

TEST_CASE("an error of some work gets its place before it, and stays what it was") {
  CHECK(working_at("step level: ", [] { return 7; }) == 7);
  CHECK_THROWS_WITH(working_at("step level: ", [] { require_positive(-3, "Motion", "force_n"); }),
                    "step level: Motion: force_n must be > 0 (got -3 N)");
  try {
    working_at("step level: ", [] { throw NotConverged("press", 7, 1e-3, 1e-6); });
    FAIL("nothing was thrown");
  } catch (const NotConverged& error) {
    CHECK(error.iterations == 7);
    CHECK(error.residual == 1e-3);
    CHECK(error.tolerance == 1e-6);
    CHECK(std::string(error.what()).starts_with("step level: press did not converge"));
  }
}

TEST_CASE("a name is one line that is not empty") {
  CHECK_NOTHROW(require_name("Tür, vorn", "Panel", "name"));
  CHECK_THROWS_WITH(require_name("", "Panel", "name"), "Panel: name must not be empty (got \"\")");
  CHECK_THROWS_WITH(require_name("a\nb", "Panel", "name"),
                    "Panel: name must be one line without control characters (got \"a?b\")");
  CHECK_THROWS_WITH(require_name("door\xe2\x80\xae", "Panel", "name"),  // U+202E turns the direction
                    "Panel: name must be one line without control characters (got \"door?\")");
  CHECK_THROWS_WITH(require_name(std::string(201, 'x'), "Panel", "name"),
                    Catch::Matchers::StartsWith("Panel: name must be at most 200 letters long (got \"xxx"));
}

TEST_CASE("whatever bytes an error quotes, it is one line of at most 1000 letters") {
  CHECK(std::string(InvalidInput("a\nb\x1b[31m").what()) == "a?b?[31m");
  CHECK(std::string(InvalidInput(std::string(1000000, 'x')).what()).size() == 1003);
  CHECK_THROWS_WITH(require(false, "Job", "kind", "must be known", std::string(1000, 'x')),
                    std::string("Job: kind must be known (got ").append(120, 'x') + "...)");
}

TEST_CASE("a misspelt word is answered with the nearest known one") {
  const std::array<std::string, 3> known{"wavelength_mm", "rms_um", "bandwidth_octaves"};
  CHECK(nearest_word("wavelenght_mm", known.begin(), known.end()) == "wavelength_mm");
  CHECK(nearest_word("zzz", known.begin(), known.end()).empty());
}
