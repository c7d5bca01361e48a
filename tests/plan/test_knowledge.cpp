// What figures rest on: by what a job states, and by a test spot that it has learned from.
#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/knowledge.hpp"
#include "libtexture/plan/predict.hpp"
#include "steps.hpp"

using namespace libtexture;
using steps::step_of;

namespace {

/// One reading, and nothing known of the clear.
Job unread() {
  Job job = door::job();
  job.coating.clear_um.reset();
  job.sequence = {{"fine first", {step_of("P3000 film")}},
                  {"compound alone", {step_of("compound", "compound on fibre")}}};
  return job;
}

Knowledge knowledge_of_first(const Job& job) {
  return knowledge_of(job, job.sequence.front());
}

void read_often(Panel& panel, int readings) {
  panel.readings.assign(static_cast<std::size_t>(readings), {.total_um = 250});
}

}  // namespace

TEST_CASE("figures rest on estimates until the film was read three times on every panel") {
  Job job = unread();
  CHECK(knowledge_of_first(job) == Knowledge::estimates);
  read_often(job.panel[0], 2);
  CHECK(knowledge_of_first(job) == Knowledge::estimates);
  read_often(job.panel[0], 3);
  CHECK(knowledge_of_first(job) == Knowledge::own_readings);
  job.panel[0].readings[1].over = ReadingOver::filler;
  CHECK(knowledge_of_first(job) == Knowledge::estimates);
  read_often(job.panel[0], 3);
  job.panel.push_back(unread().panel[0]);
  CHECK(knowledge_of_first(job) == Knowledge::estimates);
}

TEST_CASE("a clear that is known counts as readings do") {
  Job job = unread();
  job.coating.clear_um = 60;
  CHECK(knowledge_of_first(job) == Knowledge::own_readings);
}

TEST_CASE("a job that learned from a test spot rests on it, by the sequences that use what was tried") {
  Job job = unread();
  TestSpot spot{.passes = 8, .before_um = {250, 251, 249}, .after_um = {247, 248, 246}};
  const Job learned = calibrate(job, spot).job;
  CHECK(knowledge_of(learned, learned.sequence[0]) == Knowledge::own_test_spot);
  CHECK(knowledge_of(learned, learned.sequence[1]) == Knowledge::estimates);
  CHECK(predict(learned, surface_of(learned), "fine first").prediction.knowledge == Knowledge::own_test_spot);
  CHECK(predict(job, surface_of(job), "fine first").prediction.knowledge == Knowledge::estimates);
}
