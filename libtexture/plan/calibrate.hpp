#pragma once
// Calibrate: what a test spot says, and the job that has learned it, from the same curves.

#include "libtexture/base/fields.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/test_spot.hpp"

namespace libtexture {

/// What a test spot says, and the job that has learned it.
struct Calibration {
  TestSpotResult result = {};  ///< what is believed before and after the spot
  Statement moved = {};        ///< what of the spot moved the belief in the wear rate most
  Job job = {};                ///< the job as learned_from() has it

  bool operator==(const Calibration&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("result", &Calibration::result), optional("moved", &Calibration::moved),
                      optional("job", &Calibration::job)};
  }
};

/// Judges a test spot as judge_test_spot() does, and teaches the job what it says: result, job, and what
/// moved the belief, all from one set of curves.
Calibration calibrate(const Job& job, const TestSpot& spot, const SpotCurves& curves = {});

}  // namespace libtexture
