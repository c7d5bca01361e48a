#include "catch.hpp"
#include "libtexture/plan/checklist.hpp"

using namespace libtexture;

namespace {

Step step_of(Wetness wetness, Carrier carrier) {
  Step step;
  step.name = "level";
  step.wetness = wetness;
  step.abrasive.carrier = carrier;
  return step;
}

bool says(const std::vector<std::string>& list, const std::string& word) {
  for (const std::string& line : list)
    if (line.find(word) != std::string::npos) return true;
  return false;
}

}  // namespace

TEST_CASE("before the plan comes what the trade does first") {
  // Common practice, no source: wash, strip wax and polish, mask, light, test spot.
  Panel panel;
  panel.edge_length_m = 3.8;
  const auto list = checklist_of({panel, panel}, {step_of(Wetness::dry, Carrier::film_disc)});
  CHECK(list.front().substr(0, 4) == "Wash");
  for (const char* word : {"Strip wax", "Mask 7.6 m", "light", "Test spot", "\"level\""}) {
    INFO(word);
    CHECK(says(list, word));
  }
}

TEST_CASE("extraction is for dry sanding, a residual-current device for water") {
  const auto dry = checklist_of({}, {step_of(Wetness::dry, Carrier::film_disc)});
  const auto damp = checklist_of({}, {step_of(Wetness::damp, Carrier::foam_disc)});
  const auto compound = checklist_of({}, {step_of(Wetness::dry, Carrier::compound)});
  CHECK((says(dry, "extraction") && !says(dry, "residual-current")));
  CHECK((!says(damp, "extraction") && says(damp, "residual-current")));
  CHECK((!says(compound, "extraction") && !says(compound, "residual-current")));
}
