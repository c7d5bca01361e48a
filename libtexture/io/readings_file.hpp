#pragma once
// Readings files: what a film gauge or a spreadsheet wrote, as .csv.

#include <filesystem>
#include <vector>

#include "libtexture/plan/panel.hpp"

namespace libtexture {

/// The readings of a file, one per row. Columns: total_um or total_mil, and where they are known x_mm, y_mm
/// and over (panel or filler); a gauge's own columns, number and date say, are left out, and so are rows
/// without a reading. A column reading, thickness or value counts with its unit: "Thickness (um)", or a
/// column unit beside it. Cells and numbers may be written as CsvTable says. InvalidInput names the file and
/// the line; FileMissing the file.
std::vector<Reading> read_readings(const std::filesystem::path& path);

}  // namespace libtexture
