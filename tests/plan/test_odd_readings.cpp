#include "catch.hpp"
#include "libtexture/plan/odd_readings.hpp"

using namespace libtexture;

namespace {

Panel panel_of(const std::vector<double>& total_um) {
  Panel panel;
  panel.name = "cab door";
  panel.area_m2 = 1;
  for (const double um : total_um) panel.readings.push_back({.total_um = um});
  return panel;
}

std::vector<double> in_um(std::vector<double> mil) {
  for (double& value : mil) value *= 25.4;
  return mil;
}

}  // namespace

TEST_CASE("a reading over filler is found among those of one coat, and thick paint of one kind is not") {
  // A door of 7.9 to 8.6 mil: 15.5 mil is not twice that, and still no coat of the same paint (common
  // practice, no source).
  std::vector<double> mil = {7.9, 8.1, 8.0, 8.3, 8.6, 8.2, 8.4, 8.1};
  CHECK(odd_readings(panel_of(in_um(mil)), {}).empty());
  mil.insert(mil.begin() + 3, 15.5);
  const std::vector<Statement> odd = odd_readings(panel_of(in_um(mil)), {});
  REQUIRE(odd.size() == 1);
  CHECK(odd[0].figures.at("reading_um") == Catch::Approx(15.5 * 25.4));
  CHECK(odd[0].figures.at("usual_um") == Catch::Approx(8.15 * 25.4));  // median of the others, by hand
  CHECK(odd[0].panel == "cab door");
  // The rear door of the examples, 230 to 290 um, is one respray.
  CHECK(odd_readings(panel_of({262, 248, 236, 279, 290, 255, 244, 251, 230}), {}).empty());
}

TEST_CASE("the limit is 3.5 scatters of the others: by hand") {
  // Others 100, 110, 120, 130, 140: median 120, absolute deviations 20, 10, 0, 10, 20, their median 10,
  // scatter 14.826, limit 51.9. 8 % of 120 is 9.6, with a gauge of 2 um 9.81: less.
  const auto with = [](double um) { return odd_readings(panel_of({100, 110, 120, 130, 140, um}), {}); };
  CHECK(with(171.8).empty());
  REQUIRE(with(172).size() == 1);
  CHECK(with(172)[0].figures.at("limit_um") == Catch::Approx(3.5 * 14.826));
  CHECK(with(68).size() == 1);
  CHECK(with(68.2).empty());
  // Readings that agree to the micrometre are no sign that others must: at least 8 % and the gauge.
  const std::vector<Statement> floor = odd_readings(panel_of({100, 100, 100, 130}), {.uncertainty_um = 6});
  REQUIRE(floor.empty());  // 3.5 x hypot(8, 6) = 35
  CHECK(odd_readings(panel_of({100, 100, 100, 136}), {.uncertainty_um = 6}).size() == 1);
}

TEST_CASE("two odd readings do not hide each other, filler that is marked is not asked about") {
  Panel panel = panel_of({200, 205, 210, 800, 203, 790});
  CHECK(odd_readings(panel, {}).size() == 2);
  panel.readings[3].over = panel.readings[5].over = ReadingOver::filler;
  CHECK(odd_readings(panel, {}).empty());
  CHECK(odd_readings(panel_of({100, 900}), {}).empty());  // which of two is odd, nobody can say
}
