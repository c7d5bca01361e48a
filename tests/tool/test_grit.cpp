#include <cmath>
#include <string>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/grit.hpp"

using namespace libtexture;

namespace {

// Whether the grade is refused with a message that holds `part`.
bool says(const char* name, const char* part) {
  try {
    Grit{name};
  } catch (const InvalidInput& error) {
    return std::string(error.what()).find(part) != std::string::npos;
  }
  return false;
}

}  // namespace

TEST_CASE("a P grade has the median of ISO 6344-3") {
  // ISO 6344-3 / FEPA 43-2, from memory; P2500 published elsewhere. Table values: exact.
  CHECK(Grit("P240").median_um() == 58.5);
  CHECK(Grit("P600").median_um() == 25.8);
  CHECK(Grit("P1000").median_um() == 18.3);
  CHECK(Grit("P1500").median_um() == 12.6);
  CHECK(Grit("P2000").median_um() == 10.3);
  CHECK(Grit("P2500").median_um() == 8.4);
  CHECK_FALSE(Grit("P2500").is_extrapolated());
}

TEST_CASE("finer than P2500 the median continues P1500 to P2500 as a power law, and says so") {
  // Closed form: through both ends, d = 8.4 (n/2500)^-s; the table rounds to .1 um, 1.5 % at 4.8 um with its
  // inputs'.
  const double slope = std::log(12.6 / 8.4) / std::log(2500.0 / 1500.0);
  for (const auto& [name, number] : {std::pair{"P3000", 3000.0}, {"P4000", 4000.0}, {"P5000", 5000.0}}) {
    const Grit grit(name);
    CHECK(grit.is_extrapolated());
    CHECK(grit.median_um() == Catch::Approx(8.4 * std::pow(number / 2500, -slope)).epsilon(0.015));
  }
}

TEST_CASE("JIS and CAMI grades have their own medians") {
  // JIS R 6001:1987 table, published
  CHECK(Grit("JIS 1000").median_um() == 11.5);
  CHECK(Grit("JIS 3000").median_um() == 4.0);
  CHECK(Grit("JIS 8000").median_um() == 1.2);
  // ANSI B74.18, 600 published
  CHECK(Grit("CAMI 600").median_um() == 16.0);
  CHECK(Grit("P3000").median_um() / Grit("JIS 3000").median_um() == Catch::Approx(1.8).epsilon(0.02));
}

TEST_CASE("a grit has a grade where a system names it, not where its size was given") {
  for (const char* name : {"P3000", "JIS 3000", "CAMI 600"}) CHECK(Grit(name).has_grade());
  CHECK_FALSE(Grit::of_median_um(4).has_grade());
  CHECK_FALSE(Grit::of_median_um(10.3) == Grit("P2000"));  // the same size, which nobody graded
}

TEST_CASE("a bare number names no system and is refused with an example") {
  CHECK_THROWS_WITH(
      Grit("3000"),
      "Grit: name must say its system, for example \"P3000\" (about 7 um) or \"JIS 3000\" (4 um), which "
      "differ by 1.8 times (got 3000)");
  for (const char* name : {"3", "600", "#3000"}) CHECK(says(name, "must say its system"));
}

TEST_CASE("a grade that does not exist is answered with those that do") {
  for (const char* name : {"P3", "P3001", "p1500", "CAMI 1000", "JIS3000", "F400", "", "#", "P1500 film"})
    for (const char* known : {"must be one of P240", "P1500", "JIS 3000", "CAMI 600"})
      CHECK(says(name, known));
}

TEST_CASE("a compound without a grade is known by its median") {
  const Grit grit = Grit::of_median_um(3);
  CHECK(grit.median_um() == 3);
  CHECK(grit.name() == "3 um");
  CHECK_FALSE(grit.is_extrapolated());
  CHECK(grit == Grit::of_median_um(3));
  CHECK_THROWS_WITH(Grit::of_median_um(0), "Grit: median_um must be > 0 (got 0 um)");
}
