#pragma once
// Bench files: a tester's passes as .csv, and the catalogue entry that comes of them.

#include <filesystem>
#include <string>

#include "libtexture/plan/bench.hpp"
#include "libtexture/plan/compression.hpp"

namespace libtexture {

/// The bench of a file:
///
///   # abrasive = my P2500          needed, as are the next six
///   # grit = P2500                 with its system: P2500, JIS 3000, CAMI 600
///   # force_n = 25
///   # sliding_m_per_s = 2.6
///   # seconds_per_pass = 20
///   # area_cm2 = 200
///   # disc_area_cm2 = 177
///   # wetness = dry                optional, as is hardness_mpa
///   disc,repeat,pass,removed_um
///   A,1,1,0.92
///
/// Each disc, and each repeat of it, is a fresh disc; its passes count 1, 2, 3 ... in any order of rows.
/// repeat may be left out. Instead of removed_um: removed_mg, with the setting density_g_per_cm3 of the
/// clear. InvalidInput names the file and the line; FileMissing the file.
Bench read_bench(const std::filesystem::path& path);

/// A curve of force and deflection: settings thickness_mm and area_cm2, columns force_n and deflection_mm.
CompressionCurve read_compression(const std::filesystem::path& path);

/// An abrasive as a table of a catalogue file (TOML), its source line in it; read back it is the same
/// abrasive.
std::string catalogue_entry(const Abrasive& abrasive);

}  // namespace libtexture
