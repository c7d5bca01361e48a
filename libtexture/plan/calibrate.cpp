#include "libtexture/plan/calibrate.hpp"

#include "libtexture/plan/belief_moved.hpp"

namespace libtexture {

Calibration calibrate(const Job& job, const TestSpot& spot, const SpotCurves& curves) {
  Calibration calibration;
  calibration.result = judge_test_spot(job, spot, curves);
  calibration.moved = what_moved_belief(job, spot, curves);
  calibration.job = learned_from(job, spot, calibration.result);
  return calibration;
}

}  // namespace libtexture
