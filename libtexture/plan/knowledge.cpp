#include "libtexture/plan/knowledge.hpp"

#include <algorithm>

namespace libtexture {

namespace {

bool is_well_read(const Panel& panel) {
  return std::count_if(panel.readings.begin(), panel.readings.end(), teaches) >= least_own_readings;
}

bool was_tried(const Step& step) {
  return step.abrasive.wear_rate_of == FigureOf::this_hand;
}

}  // namespace

Knowledge knowledge_of(const Job& job, const Sequence& sequence) {
  if (std::any_of(sequence.step.begin(), sequence.step.end(), was_tried)) return Knowledge::own_test_spot;
  if (job.coating.clear_um || std::all_of(job.panel.begin(), job.panel.end(), is_well_read))
    return Knowledge::own_readings;
  return Knowledge::estimates;
}

}  // namespace libtexture
