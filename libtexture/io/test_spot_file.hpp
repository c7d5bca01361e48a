#pragma once
// Test spot files: readings before and after, as .csv.

#include <filesystem>

#include "libtexture/plan/test_spot.hpp"

namespace libtexture {

/// The test spot of a file:
///
///   # passes = 6                  needed
///   # step = level                optional, as are sequence, area_m2 and spot_cv: see TestSpot
///   # gloss_gone_passes = 5       optional: no glossy valley was left (and gloss_left_passes)
///   # rms_left_um = 0.3           optional: texture left, where it was measured
///   # marks_gone_passes = 4       optional: passes of the next step, made after the film was read, at which
///                                 no mark of this one was left (and marks_left_passes)
///   when,total_um
///   before,262
///   before,260
///   after,256
///   after,254
///
/// Columns: when (before or after), and total_um or total_mil, or both with one filled in per row. Or side by
/// side: before and after, in um, or before_mil and after_mil; the shorter one ends in empty cells. How cells
/// and numbers may be written: CsvTable. InvalidInput names the file and the line; FileMissing the file.
TestSpot read_test_spot(const std::filesystem::path& path);

}  // namespace libtexture
