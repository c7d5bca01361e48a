#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/compare.hpp"
#include "libtexture/plan/first_step.hpp"
#include "libtexture/plan/predict.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// A prediction made by hand: a panel whose worlds are given.
void add_panel(Predicted& predicted, RiskDraws draws) {
  const std::size_t worlds = draws.levelling_um.size();
  draws.removed_um.resize(worlds);
  for (std::size_t i = 0; i < worlds; ++i)
    draws.removed_um[i] = draws.levelling_um[i] + draws.overshoot_um[i] + draws.debt_um[i];
  for (std::vector<double>* figure :
       {&draws.rms_um, &draws.minutes, &draws.discs, &draws.is_struck_through, &draws.is_budget_exceeded,
        &draws.is_target_missed, &draws.is_broken_by_work, &draws.is_short_before})
    if (figure->empty()) figure->assign(worlds, 0);
  const HeightField flat(Array2d::Zero(4, 4), 1);
  History history{.start = {},
                  .passes = {},
                  .steps = {HistoryRow{}},
                  .band_edges_mm = {},
                  .before = flat,
                  .surfaces = {flat},
                  .scratches = {},
                  .warnings = {}};
  predicted.draws.push_back(std::move(draws));
  predicted.histories.push_back(std::move(history));
  predicted.prediction.panels.emplace_back();
}

Predicted of_one_panel(const std::vector<double>& levelling_um, double debt_um) {
  RiskDraws draws;
  draws.levelling_um = levelling_um;
  draws.overshoot_um.assign(levelling_um.size(), 0);
  draws.debt_um.assign(levelling_um.size(), debt_um);
  Predicted predicted;
  add_panel(predicted, draws);
  return predicted;
}

std::vector<StatementKind> kinds_of(const std::vector<Statement>& statements) {
  std::vector<StatementKind> kinds;
  for (const Statement& one : statements) kinds.push_back(one.kind);
  return kinds;
}

const Statement& of_kind(const std::vector<Statement>& statements, StatementKind kind) {
  const auto found = std::find_if(statements.begin(), statements.end(),
                                  [&](const Statement& one) { return one.kind == kind; });
  REQUIRE(found != statements.end());
  return *found;
}

Job with_sequences(int count) {
  const Tools tools = tools_of(door::job());
  Job job = door::job();
  for (int i = 0; i < count; ++i) {
    Step step;
    step.abrasive = tools.abrasives.front();
    job.sequence.push_back({"way " + std::to_string(i + 1), {step}});
  }
  return job;
}

}  // namespace

TEST_CASE("differences are taken world by world: what both share does not blur them") {
  const Job job = with_sequences(2);
  const Comparison both = comparison_of(job, {of_one_panel({1, 5, 9}, 0.5), of_one_panel({1, 5, 9}, 1.5)});
  CHECK(both.best == "way 1");
  const Difference& more = both.alternatives[1].more;
  CHECK(more.removed_um.p05 == Approx(1));
  CHECK(more.removed_um.p95 == Approx(1));
  CHECK(more.debt_um.p50 == Approx(1));
  CHECK(more.levelling_um.p50 == 0);
  CHECK_FALSE(more.is_drowned);
  REQUIRE(kinds_of(both.findings) ==
          std::vector<StatementKind>{StatementKind::spends_more, StatementKind::cheaper_in});
  CHECK(both.findings[0].sequence == "way 2");
  CHECK(both.findings[0].other_sequence == "way 1");
  CHECK(both.findings[0].figures.at("more_um") == Approx(1));
  CHECK(both.findings[1].sequence == "way 1");
  CHECK(both.findings[1].figures.at("cheaper_probability") == 1);
}

TEST_CASE("a difference whose sign the worlds do not agree on is said to drown") {
  const Job job = with_sequences(2);
  const Comparison both = comparison_of(job, {of_one_panel({1, 5, 9}, 0), of_one_panel({9, 5, 1}, 0.1)});
  CHECK(both.alternatives[1].more.is_drowned);
  const Statement& unsure = of_kind(both.findings, StatementKind::difference_unsure);
  CHECK(unsure.figures.at("levelling_width_um") > unsure.figures.at("debt_width_um"));
}

TEST_CASE("clear is the panels' mean by area, time their sum, trouble what happens on any of them") {
  Job job = with_sequences(1);
  job.panel.push_back(job.panel[0]);
  job.panel[1].area_m2 = 3 * job.panel[0].area_m2;
  Predicted predicted;
  RiskDraws small, large;
  small.levelling_um = {2, 2};
  large.levelling_um = {6, 6};
  small.overshoot_um = large.overshoot_um = small.debt_um = large.debt_um = {0, 0};
  small.minutes = {10, 10};
  large.minutes = {30, 30};
  small.is_budget_exceeded = {1, 1};
  small.is_broken_by_work = {1, 0};
  small.is_short_before = {0, 1};
  large.is_target_missed = {1, 0};
  add_panel(predicted, small);
  add_panel(predicted, large);
  const Comparison comparison = comparison_of(job, {predicted});
  CHECK(comparison.short_before_probability == Approx(0.5));
  const Alternative one = comparison.alternatives[0];
  CHECK(one.removed_um.p50 == Approx(5));  // (2 + 3 x 6)/4
  CHECK(one.minutes.p50 == Approx(40));
  CHECK(one.trouble_probability == Approx(0.5));
  CHECK(one.budget_exceeded_probability == 1);
  CHECK(one.broken_by_work_probability == 1);  // in the one world that is not short before any work
  CHECK(one.target_missed_probability == Approx(0.5));
  CHECK(one.strike_through_probability == 0);
}

TEST_CASE("a sequence that misses the target in most worlds is not the best, however little it spends") {
  const Job job = with_sequences(2);
  Predicted idle = of_one_panel({0.1, 0.1}, 0);
  idle.draws[0].is_target_missed = {1, 1};
  const Comparison both = comparison_of(job, {idle, of_one_panel({4, 4}, 0)});
  CHECK(both.best == "way 2");
  CHECK(both.findings.front().kind == StatementKind::misses_target);
  CHECK(both.findings.front().sequence == "way 1");
  CHECK(both.headline ==
        Statement{.kind = StatementKind::alone_reaches, .sequence = "way 2", .figures = {{"sequences", 2}}});
  CHECK((both.alternatives[0].rank == 2 && both.alternatives[1].rank == 1));
  CHECK(both.alternatives[0].is_on_front);  // it spends least clear all the same
}

TEST_CASE(
    "the headline says what was ranked: least clear among those that reach the target, else least missed") {
  const Job job = with_sequences(3);
  const auto missed_in = [](Predicted one, int worlds) {
    one.draws[0].is_target_missed.assign(10, 0);
    std::fill_n(one.draws[0].is_target_missed.begin(), worlds, 1.0);
    return one;
  };
  const Predicted dear = of_one_panel(std::vector<double>(10, 5), 0),
                  cheap = of_one_panel(std::vector<double>(10, 2), 0),
                  idle = of_one_panel(std::vector<double>(10, 1), 0);
  const Comparison all = comparison_of(job, {dear, cheap, idle});
  CHECK(all.headline ==
        Statement{.kind = StatementKind::spends_least, .sequence = "way 3", .figures = {{"sequences", 3}}});
  const Comparison some = comparison_of(job, {dear, cheap, missed_in(idle, 6)});
  CHECK(some.best == "way 2");
  CHECK(some.headline.kind == StatementKind::spends_least);
  CHECK(some.headline.figures.at("reaching") == 2);
  CHECK((some.alternatives[0].rank == 2 && some.alternatives[1].rank == 1 && some.alternatives[2].rank == 3));
  CHECK_FALSE(some.alternatives[2].is_reaching);
  // The dearest misses least: it comes first, and nothing says that it spends least.
  const Comparison none = comparison_of(job, {missed_in(dear, 4), missed_in(cheap, 6), missed_in(idle, 9)});
  CHECK(none.best == "way 1");
  CHECK(none.headline.kind == StatementKind::none_reaches);
  CHECK(none.headline.figures.at("target_missed_probability") == Approx(0.4));
  CHECK(of_kind(none.findings, StatementKind::spends_less).sequence == "way 2");
  // Findings follow the ranking.
  CHECK(none.findings.front().sequence == "way 2");
  // The least median, and yet dearer in two worlds of three: nobody can say.
  const Comparison even =
      comparison_of(with_sequences(2), {of_one_panel({1, 5, 9}, 0), of_one_panel({0.9, 9, 8.9}, 0)});
  CHECK(even.best == "way 1");
  CHECK(even.headline.kind == StatementKind::difference_unsure);
  CHECK(even.headline.sequence == "way 2");
  // Printed as 20 of 100 is 20 of 100.
  const Job two = with_sequences(2);
  Predicted often = of_one_panel(std::vector<double>(1000, 1), 0);
  often.draws[0].is_target_missed.assign(1000, 0);
  std::fill_n(often.draws[0].is_target_missed.begin(), 196, 1.0);
  CHECK_FALSE(
      comparison_of(two, {often, of_one_panel(std::vector<double>(1000, 3), 0)}).alternatives[0].is_reaching);
}

TEST_CASE("giving up early is not saving: clear is compared where both meet the target") {
  const Job job = with_sequences(2);
  Predicted hasty = of_one_panel({1, 1, 5, 5, 5, 5, 5, 5, 5, 5}, 0);
  hasty.draws[0].is_target_missed = {1, 1, 0, 0, 0, 0, 0, 0, 0, 0};
  const Comparison both = comparison_of(job, {of_one_panel(std::vector<double>(10, 4), 0), hasty});
  const Difference& more = both.alternatives[1].more;
  CHECK(more.worlds == 8);
  CHECK(more.cheaper_worlds == 8);
  CHECK(more.removed_um.p05 == Approx(1));
  CHECK_FALSE(more.is_drowned);
  const Statement& cheaper = of_kind(both.findings, StatementKind::cheaper_in);
  CHECK(cheaper.sequence == "way 1");
  CHECK(cheaper.figures.at("cheaper_probability") == 1);
  CHECK(cheaper.figures.at("fair_worlds") == 8);
}

TEST_CASE("steps of the same caution share a statement, named by their abrasives") {
  Job job = with_sequences(3);
  job.sequence[1].step[0].abrasive.name = "another";
  job.sequence[2].step[0].wetness = Wetness::damp;
  const Predicted one = of_one_panel({1, 1}, 0);
  const Comparison all = comparison_of(job, {one, one, one});
  const std::string& abrasive = job.sequence[0].step[0].abrasive.name;
  CHECK(all.step_cautions ==
        std::vector<Statement>{{.kind = StatementKind::dust_harms, .abrasives = {abrasive, "another"}},
                               {.kind = StatementKind::water_conducts, .abrasives = {abrasive}},
                               {.kind = StatementKind::slurry_harms, .abrasives = {abrasive}}});
}

TEST_CASE("paired worlds tell two first grits apart better than unpaired ones") {
  Job job = door::job();
  for (const Weighed& one : weigh_first_steps(job, surface_of(job), tools_of(job)))
    if (one.first.abrasive == "P3000 film" || one.first.abrasive == "P1200 film")
      job.sequence.push_back(one.sequence.value());
  REQUIRE(job.sequence.size() == 2);
  const HeightField surface = surface_of(job);
  std::vector<double> a, b;
  const RiskDraws all_a = predict(job, surface, job.sequence[0].name).draws[0],
                  all_b = predict(job, surface, job.sequence[1].name).draws[0];
  for (std::size_t i = 0; i < all_a.removed_um.size(); ++i)
    if (all_a.is_target_missed[i] == 0 && all_b.is_target_missed[i] == 0) {
      a.push_back(all_a.removed_um[i]);
      b.push_back(all_b.removed_um[i]);
    }
  const std::size_t n = a.size();
  REQUIRE(n > 100);
  std::vector<double> paired(n), unpaired(n);
  for (std::size_t i = 0; i < n; ++i) {
    paired[i] = b[i] - a[i];
    unpaired[i] = b[(i + n / 2) % n] - a[i];
  }
  const auto width = [](const std::vector<double>& draws) {
    const Spread spread = spread_of(draws);
    return spread.p95 - spread.p05;
  };
  CHECK(width(paired) < width(unpaired));
  const Comparison both = compare(job, surface);
  for (std::size_t i = 0; i < 2; ++i) {
    const Alternative& one = both.alternatives[i];
    const std::size_t other = 1 - i;
    if (both.alternatives[other].sequence != both.best) continue;
    CHECK(std::abs(one.more.removed_um.p50) == Approx(std::abs(spread_of(paired).p50)));
  }
}

TEST_CASE("the split adds up in every world") {
  Job job = door::job();
  const auto all = weigh_first_steps(job, surface_of(job), tools_of(job));
  const auto reaching =
      std::find_if(all.begin(), all.end(), [](const Weighed& one) { return one.sequence.has_value(); });
  REQUIRE(reaching != all.end());
  job.sequence = {*reaching->sequence};
  const RiskDraws draws = predict(job, surface_of(job)).draws[0];
  for (std::size_t i = 0; i < draws.removed_um.size(); ++i)
    CHECK(draws.levelling_um[i] + draws.overshoot_um[i] + draws.debt_um[i] ==
          Approx(draws.removed_um[i]).epsilon(1e-9));
}

TEST_CASE("a job without sequences has nothing to compare") {
  const Job job = door::job();
  CHECK_THROWS_WITH(compare(job, surface_of(job)),
                    "Job: sequence must hold at least one sequence (got none)");
}

TEST_CASE("what is compared is what predict says of each sequence, to the byte, on nodes that are shared") {
  Job job = door::job();
  const std::vector<Weighed> weighed = weigh_first_steps(job, surface_of(job), tools_of(job));
  const auto reaching = std::find_if(weighed.begin(), weighed.end(),
                                     [](const Weighed& one) { return one.sequence.has_value(); });
  REQUIRE(reaching != weighed.end());
  // The same first disc, looked at less often.
  job.sequence = {*reaching->sequence, *reaching->sequence};
  job.sequence.back().name = "fewer looks";
  job.sequence.back().step.front().look_every_passes = 4;
  const Comparison comparison = compare(job, surface_of(job));
  int solves = 0;
  std::vector<Predicted> alone;
  for (const Sequence& sequence : job.sequence) {
    alone.push_back(predict(job, surface_of(job), sequence.name));
    solves += alone.back().prediction.panels.front().risk.node_solves;
  }
  Comparison expected = comparison_of(job, alone);
  expected.node_solves = comparison.node_solves;
  CHECK(comparison == expected);
  CHECK(comparison.node_solves < solves);
  CHECK(comparison.samples == job.uncertainty.samples);
}
