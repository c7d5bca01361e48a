#include "libtexture/plan/belief_moved.hpp"

#include <cmath>

namespace libtexture {

namespace {

// Median of the wear rate with a spot, over that before it.
double ratio_of(const TestSpotResult& result) {
  return result.after.median / result.before.median;
}

TestSpot without_texture(TestSpot spot) {
  spot.rms_left_um.reset();
  return spot;
}

TestSpot readings_of(TestSpot spot) {
  spot = without_texture(std::move(spot));
  spot.gloss_gone_passes.reset();
  spot.gloss_left_passes.reset();
  return spot;
}

}  // namespace

Statement what_moved_belief(const Job& job, const TestSpot& spot, const SpotCurves& curves) {
  const double readings = ratio_of(judge_test_spot(job, readings_of(spot)));
  Statement moved{.kind = StatementKind::belief_by_readings, .figures = {{"readings_ratio", readings}}};
  if (!tells_texture(spot)) return moved;
  const double all = ratio_of(judge_test_spot(job, spot, curves));
  const bool has_looks = spot.gloss_gone_passes || spot.gloss_left_passes;
  const double with_looks =
      has_looks ? ratio_of(judge_test_spot(job, without_texture(spot), curves)) : readings;
  const double by_readings = std::abs(std::log(readings)),
               by_looks = std::abs(std::log(with_looks / readings)),
               by_texture = std::abs(std::log(all / with_looks));
  moved.figures["all_ratio"] = all;
  if (by_looks > by_readings && by_looks >= by_texture) moved.kind = StatementKind::belief_by_looks;
  if (by_texture > by_readings && by_texture > by_looks) moved.kind = StatementKind::belief_by_texture;
  return moved;
}

}  // namespace libtexture
