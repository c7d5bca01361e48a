#include <algorithm>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/first_step.hpp"

using namespace libtexture;

namespace {

std::vector<Weighed> weighed(const Job& job, const WorkLimits& limits = {}) {
  return weigh_first_steps(job, surface_of(job), tools_of(job), limits);
}

const FirstStep& of(const std::vector<Weighed>& all, const std::string& abrasive) {
  for (const Weighed& one : all)
    if (one.first.abrasive == abrasive) return one.first;
  FAIL(abrasive << " was not weighed");
  return all.front().first;
}

bool holds(const FirstStep& first, StatementKind kind) {
  return std::any_of(first.reasons.begin(), first.reasons.end(),
                     [&](const Statement& one) { return one.kind == kind; });
}

Job with_texture(double wavelength_mm, double rms_um, double wanted_um) {
  Job job = door::job();
  job.patch.pixel_mm = wavelength_mm / 8;
  job.texture.bands[0].wavelength_mm = wavelength_mm;
  job.texture.bands[0].rms_um = rms_um;
  job.target.rms_um = wanted_um;
  return job;
}

}  // namespace

TEST_CASE("every disc of the catalogue is weighed, finest first, and no compound") {
  const std::vector<Weighed> all = weighed(door::job());
  const Tools tools = tools_of(door::job());
  const auto discs = std::count_if(tools.abrasives.begin(), tools.abrasives.end(),
                                   [](const Abrasive& one) { return one.carrier != Carrier::compound; });
  CHECK(static_cast<long>(all.size()) == discs);
  for (std::size_t i = 1; i < all.size(); ++i) CHECK(all[i - 1].first.grain_um <= all[i].first.grain_um);
  for (const Weighed& one : all) CHECK(one.first.is_reaching == one.sequence.has_value());
}

TEST_CASE("a first step has the clear of the thinnest place, not the panel's mean") {
  Job even = with_texture(8, 2.5, 0.1);
  even.panel[0].readings.assign(6, {.total_um = 250});
  Job uneven = even;
  uneven.panel[0].readings[3].total_um = 25;  // clear is a share of the film: 80/212.5 of it, 9.4 um
  CHECK_FALSE(holds(of(weighed(even), "P2000 film"), StatementKind::clear_runs_out));
  const std::vector<Weighed> all = weighed(uneven);
  const FirstStep& first = of(all, "P2000 film");
  REQUIRE(first.reasons.size() > 0);
  const Statement& runs_out = first.reasons.front();
  CHECK(runs_out.kind == StatementKind::clear_runs_out);
  CHECK(runs_out.figures.at("clear_um") == Catch::Approx(80 / 212.5 * 25).epsilon(0.02));
}

TEST_CASE("a finer disc takes more passes and minutes for the same texture") {
  const std::vector<Weighed> all = weighed(with_texture(5, 0.6, 0.15));
  // Weighed by the coarsest grain, which spends most.
  CHECK(of(all, "P3000 film").levelling_um == of(all, "P1000 film").levelling_um);
  CHECK(of(all, "P3000 film").passes > of(all, "P1000 film").passes);
  CHECK(of(all, "P3000 film").minutes > of(all, "P1000 film").minutes);
}

TEST_CASE("long texture on a tight crown stops the finest discs before the coarsest: they take too long") {
  Job job = with_texture(8, 0.5, 0.15);
  job.panel[0].crown_radius_m = 3;
  const std::vector<Weighed> all = weighed(job);
  CHECK_FALSE(of(all, "P3000 film").is_reaching);
  CHECK((holds(of(all, "P3000 film"), StatementKind::too_many_passes) ||
         holds(of(all, "P3000 film"), StatementKind::too_many_minutes)));
  CHECK(of(all, "P1000 film").is_reaching);
}

TEST_CASE("a limit of patience that is named in the reason is what stops a disc") {
  WorkLimits limits;
  limits.passes_most = 2;
  const FirstStep first = of(weighed(with_texture(5, 0.6, 0.15), limits), "P3000 film");
  CHECK_FALSE(first.is_reaching);
  REQUIRE(holds(first, StatementKind::too_many_passes));
  CHECK(first.reasons.front().figures.at("limit") == 2);
  CHECK(first.reasons.front().figures.at("passes") == first.passes);
}

TEST_CASE("a firm backing is chosen on a flat panel for long waves, a softer one where the crown is tight") {
  // The trade's interface pads (levelling stories): on a crown of 3 m the hard pad touches within 31 mm and
  // presses 8.1 kPa (closed form), so that the interface levels 8 mm waves for less.
  Job flat = with_texture(8, 0.4, 0.15), crowned = flat;
  crowned.panel[0].crown_radius_m = 3;
  CHECK(of(weighed(flat), "P2000 film").backing == "film on hard pad");
  CHECK(of(weighed(crowned), "P2000 film").backing.find("interface") != std::string::npos);
}

TEST_CASE("what is out of reach is told with the waves in the way and what would help") {
  const std::vector<Weighed> all = weighed(with_texture(10, 0.6, 0.05));
  const FirstStep foam = of(all, "P3000 foam-backed");
  CHECK_FALSE(foam.is_reaching);
  std::vector<StatementKind> kinds;
  for (const Statement& one : foam.reasons) kinds.push_back(one.kind);
  CHECK(kinds == std::vector<StatementKind>{StatementKind::clear_runs_out, StatementKind::rms_unmet,
                                            StatementKind::waves_resist,
                                            StatementKind::stiffer_backing_helps});
  CHECK(foam.reasons[2].backing == foam.backing);
  // The band is an octave about 10 mm.
  CHECK(foam.reasons[2].figures.at("wavelength_mm") == Catch::Approx(10).epsilon(0.5));
}

TEST_CASE("a sequence begins with its disc, stops by the target and allows three times the expected passes") {
  for (const Weighed& one : weighed(door::job())) {
    if (!one.sequence) continue;
    one.sequence->validate();
    const Step& level = one.sequence->step.front();
    CHECK(one.sequence->name == one.first.abrasive + " first");
    CHECK(level.stop.rms_um == 0.15);
    CHECK(level.passes == 3 * one.first.passes);
    CHECK(level.passes % level.look_every_passes == 0);
  }
}

TEST_CASE("limits out of range are refused") {
  WorkLimits limits;
  limits.discs_per_m2_most = 0;
  CHECK_THROWS_WITH(weighed(door::job(), limits), "WorkLimits: discs_per_m2_most must be > 0 (got 0)");
}
