// KnownTools: recommendations work with the figures that the job has, and that its test spots taught.
#include <algorithm>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/known_tools.hpp"
#include "libtexture/plan/teach.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "steps.hpp"

using namespace libtexture;
using steps::step_of;

namespace {

Tools shipped() {
  Tools tools;
  for (const auto& [name, abrasive] : shipped_catalogue().abrasives) tools.abrasives.push_back(abrasive);
  for (const auto& [name, backing] : shipped_catalogue().backings) tools.backings.push_back(backing);
  tools.disc = shipped_catalogue().motions.at("150 mm light");
  tools.compound = shipped_catalogue().motions.at("150 mm compound");
  tools.polish = shipped_catalogue().motions.at("150 mm finishing");
  return tools;
}

Job job_with(const std::vector<Step>& steps) {
  Job job = door::job();
  job.sequence = {{"one", steps}};
  return job;
}

template <class Tool>
const Tool& named(const std::vector<Tool>& tools, const std::string& name) {
  return *std::find_if(tools.begin(), tools.end(), [&](const Tool& one) { return one.name == name; });
}

/// A job after a spot with P2000 film that taught wear and grooves, and whose other steps are as given.
Job taught_job(const std::vector<Step>& others) {
  std::vector<Step> steps{step_of("P2000 film")};
  steps.insert(steps.end(), others.begin(), others.end());
  Job job = job_with(steps);
  const Step tried = steps.front();
  teach_wear(job, tried, {wear_spread(tried, job.uncertainty), -0.5, 0.2});
  teach_grooves(job, tried, {groove_spread(tried, job.uncertainty), 0.3, 0.1});
  return job;
}

}  // namespace

TEST_CASE("the tools of a job that no spot has taught, and that changes none, are those at hand") {
  const Tools tools = known_tools(shipped(), job_with({step_of("P2000 film")}));
  CHECK(tools.abrasives == shipped().abrasives);
  CHECK(tools.backings == shipped().backings);
  CHECK(tools.disc == shipped().disc);
}

TEST_CASE("a tool that a step of the job uses has the figures of that step") {
  Step step = step_of("P2000 film");
  step.abrasive.wear_rate_mm3_per_n_m = 0.1;
  step.backing.stiffness_factor = 1.3;
  step.motion.force_n = 20;
  const Tools tools = known_tools(shipped(), job_with({step}));
  CHECK(named(tools.abrasives, "P2000 film") == step.abrasive);
  CHECK(named(tools.abrasives, "P3000 film") == named(shipped().abrasives, "P3000 film"));
  CHECK(named(tools.backings, step.backing.name) == step.backing);
  CHECK(tools.disc == step.motion);
  CHECK(tools.compound == shipped().compound);
}

TEST_CASE(
    "a disc that no step uses learns from a test spot what it would have learned as a step of the job") {
  // The closed form of two correlated normal figures stands behind both (docs/physics.md (66d)).
  const Tools tools = known_tools(shipped(), taught_job({}));
  for (const char* name : {"P1500 film", "P3000 film", "P3000 foam-backed", "compound"}) {
    INFO(name);
    Step other = step_of(name);
    other.motion = step_of("P2000 film").motion;  // the same hand
    const Abrasive expected = taught_job({other}).sequence.front().step.back().abrasive;
    const Abrasive& known = named(tools.abrasives, name);
    CHECK(known.wear_rate_mm3_per_n_m == Catch::Approx(expected.wear_rate_mm3_per_n_m).epsilon(1e-12));
    CHECK(known.wear_rate_log_sd == Catch::Approx(expected.wear_rate_log_sd).epsilon(1e-12));
    CHECK(known.wear_rate_of == expected.wear_rate_of);
    CHECK(*known.groove_depth_um == Catch::Approx(*expected.groove_depth_um).epsilon(1e-12));
    CHECK(*known.groove_depth_log_sd == Catch::Approx(*expected.groove_depth_log_sd).epsilon(1e-12));
  }
}
