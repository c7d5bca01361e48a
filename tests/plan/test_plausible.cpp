// Lengths and thicknesses of a job: what is refused as a slip of the unit, what is warned of, what passes.
#include <cmath>
#include <functional>
#include <set>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/describe.hpp"
#include "libtexture/plan/plausible.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// The paths of all numbers below a value whose names end in a unit of length.
void add_lengths(std::set<std::string>& paths, const Descriptor& descriptor, const std::string& path) {
  using Form = Descriptor::Form;
  const bool is_number = descriptor.form == Form::number ||
                         (descriptor.form == Form::array && descriptor.element->form == Form::number);
  const std::string unit = unit_of(path);
  if (is_number && (unit == "um" || unit == "mm" || unit == "m")) paths.insert(path);
  if (descriptor.form == Form::optional || descriptor.form == Form::list)
    add_lengths(paths, *descriptor.element, path);
  for (const Descriptor::Member& member : descriptor.members)
    add_lengths(paths, *member.type, path.empty() ? member.name : path + "." + member.name);
}

std::string refusal(const std::function<void(Job&)>& change) {
  Job job = door::job();
  change(job);
  try {
    job.validate();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "none";
}

Statement warned(const std::function<void(Job&)>& change) {
  Job job = door::job();
  change(job);
  job.validate();
  const std::vector<Statement> said = unusual_lengths(job);
  REQUIRE(said.size() == 1);
  return said[0];
}

}  // namespace

TEST_CASE("every thickness and length of a job is asked about") {
  std::set<std::string> paths;
  add_lengths(paths, descriptor_of<Job>(), "");
  CHECK(paths.size() > 40);
  // Not lengths, or held otherwise: places to the panel's size, grains to their table, readings in mil by
  // Reading.
  const std::set<std::string> others{"labour.edge_minutes_per_m_um",
                                     "labour.masking_minutes_per_m",
                                     "panel.readings.x_mm",
                                     "panel.readings.y_mm",
                                     "sequence.step.abrasive.stated_grain_um",
                                     "sequence.step.abrasive.stray_marks_per_dm2_um",
                                     "target.defect.x_mm",
                                     "target.defect.y_mm"};
  for (const std::string& path : paths) {
    INFO(path);
    if (others.count(path) == 0) {
      CHECK_NOTHROW(plausible_range(path));
    }
  }
  CHECK_THROWS_AS(plausible_range("budget.nothing_um"), InvalidInput);
}

TEST_CASE("mil, mm and m typed into the wrong field are refused, with what to write") {
  // 1 mil = 25.4 um exactly; the three slips are cases that once passed in silence.
  CHECK(refusal([](Job& job) { job.budget.clear_left_least_um = 1.4; }) ==
        "Job: budget.clear_left_least_um must be at least 4: is it mil? then write 35.56, or "
        "clear_left_least_mil = 1.4 in a job file (got 1.4 um)");
  CHECK(refusal([](Job& job) { job.coating.clear_um = 2.4; }) ==
        "Job: coating.clear_um must be at least 8: is it mil? then write 60.96, or clear_mil = 2.4 in a job "
        "file "
        "(got 2.4 um)");
  CHECK(refusal([](Job& job) { job.panel[0].crown_radius_m = 4000; }) ==
        "Job: panel[0].crown_radius_m must be at most 200: is it mm? then write 4 (got 4000 m)");
  CHECK(refusal([](Job& job) { job.panel[0].crown_radius_m = 400; }) ==
        "Job: panel[0].crown_radius_m must be at most 200: is it mm? then write 0.4; is it cm? then write 4 "
        "(got 400 "
        "m)");
  CHECK(refusal([](Job& job) { job.panel[0].edge_length_m = 3800; }) ==
        "Job: panel[0].edge_length_m must be at most 200: is it mm? then write 3.8 (got 3800 m)");
  CHECK(refusal([](Job& job) { job.budget.clear_left_least_um = 0.0356; }) ==
        "Job: budget.clear_left_least_um must be at least 4: is it mm? then write 35.6 (got 0.0356 um)");
  CHECK(refusal([](Job& job) { job.target.rms_um = 200; }) ==
        "Job: target.rms_um must be at most 100: is it nm? then write 0.2 (got 200 um)");
}

TEST_CASE("places of readings in m are refused, in cm warned of") {
  const auto placed = [](double factor) {
    return [factor](Job& job) {
      const Reading reading = job.panel[0].readings[0];
      job.panel[0].readings.clear();
      for (const double x_mm : {100., 500., 800.}) {
        job.panel[0].readings.push_back(reading);
        job.panel[0].readings.back().x_mm = factor * x_mm;
        job.panel[0].readings.back().y_mm = factor * 300;
      }
    };
  };
  CHECK(refusal(placed(1)) == "none");
  CHECK(refusal(placed(1e-3)) ==
        "Job: panel[0].readings must have places in mm, which no panel of this area has within so little: "
        "are x_mm "
        "and y_mm in m? (got 0.7 mm apart)");
  const Statement said = warned(placed(0.1));
  CHECK(said.kind == StatementKind::places_unusual);
  CHECK(said.panel == "door");
  CHECK(said.figures.at("apart_mm") == Approx(70));
  CHECK(said.figures.at("side_mm") == Approx(1000 * std::sqrt(0.9)));
}

TEST_CASE("what is unusual is warned of and passes") {
  // 0.5 um may be all that may go; 0.5 mil is the published rule.
  const Statement said = warned([](Job& job) { job.budget.clear_removed_most_um = 0.5; });
  CHECK(said.kind == StatementKind::length_unusual);
  CHECK(said.field == "budget.clear_removed_most_um");
  CHECK(said.figures.at("value") == 0.5);
  CHECK(said.figures.at("mil_means") == Approx(12.7));
  CHECK(said.text() ==
        "Unusual: budget.clear_removed_most_um = 0.5; usual are 2 to 150. In mil? Then write 12.7.");
  const Statement thin = warned([](Job& job) {
    job.panel[0].readings[0].total_um = 16;
    job.coating.clear_um.reset();
  });
  CHECK(thin.field == "panel[0].readings[0].total_um");
  CHECK(thin.figures.at("mil_means") == Approx(406.4));
}

TEST_CASE("usual jobs and the shipped tools are asked nothing") {
  Job job = door::job();
  CHECK(unusual_lengths(job).empty());
  const Catalogue& catalogue = shipped_catalogue();
  for (const auto& [name, backing] : catalogue.backings)
    for (const auto& [other, abrasive] : catalogue.abrasives) {
      Step step;
      step.abrasive = abrasive;
      step.backing = backing;
      step.motion = catalogue.motions.begin()->second;
      step.wetness = abrasive.made_for.front();
      step.passes = 1;
      job.sequence = {{"one", {step}}};
      INFO(name << ", " << other);
      CHECK(unusual_lengths(job).empty());
      CHECK_NOTHROW(require_plausible(job));
    }
  for (const auto& [name, motion] : catalogue.motions) {
    job.sequence[0].step[0].motion = motion;
    INFO(name);
    CHECK(unusual_lengths(job).empty());
  }
}

TEST_CASE("nothing left is nothing: 0 is left to the rule of its field") {
  CHECK(refusal([](Job& job) {
          job.budget.clear_left_least_um = 0;
          job.coating.gauge.uncertainty_um = 0;
        }) == "none");
}
