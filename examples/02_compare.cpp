// Three first grits on one door (invented), in the same possible worlds: what each spends on levelling, on
// overshoot and on the scratches that its first disc leaves, and how sure the differences are.
#include <cstdio>

#include "libtexture/io/job_file.hpp"
#include "libtexture/plan/compare.hpp"

using namespace libtexture;

int main() {
  Job job = load_job("examples/jobs/rear_door.toml");
  job.patch = {.rows = 64, .cols = 64, .pixel_mm = 0.4};  // coarse, so that this takes seconds
  job.uncertainty.samples = 1000;
  const Comparison comparison = compare(job, surface_of(job));
  for (const Alternative& one : comparison.alternatives)
    std::printf(
        "%s: %.1f um of clear (5 to 95 %%: %.1f to %.1f): levelling %.1f, overshoot %.1f, debt %.1f; %.0f "
        "minutes%s\n",
        one.sequence.c_str(), one.removed_um.p50, one.removed_um.p05, one.removed_um.p95,
        one.levelling_um.p50, one.overshoot_um.p50, one.debt_um.p50, one.minutes.p50,
        one.is_on_front ? "" : "; beaten in everything");
  for (const Statement& finding : comparison.findings) std::printf("%s\n", finding.text().c_str());
}
