#pragma once
// Surface files: heights in um as .npy (numpy's format) or .csv.

#include <filesystem>
#include <optional>

#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The surface of a file; the ending names the format.
///   .npy  format 1 or 2, float32 or float64, little-endian, C order, shape (rows, cols), or (cols) for a
///   profile. .csv  one line per row, numbers apart by comma, semicolon or tab (decimal point; a decimal
///   comma too where commas do not part them), '#' lines are comments; one number
///         per line is a profile. A comment "# pixel_mm = 0.1" gives the pixel.
/// pixel_mm: side of a pixel [mm]; must be given where the file has none (.npy never has), and must be the
/// file's own where it has one. InvalidInput names the file and the line or byte; FileMissing names a file
/// that is not there.
HeightField read_surface(const std::filesystem::path& path, std::optional<double> pixel_mm = {});

/// Writes a surface so that read_surface gives the same numbers back, whole or not at all.
void write_surface(const HeightField& field, const std::filesystem::path& path);

}  // namespace libtexture
