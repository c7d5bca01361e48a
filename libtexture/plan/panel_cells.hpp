#pragma once
// PanelCells: a panel as cells of a disc's footprint, each with its clear, its dwell and its deepest valley.

#include <cstdint>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The cells of a panel. They do not depend on the tools, so that sequences share their worlds.
struct PanelCells {
  std::vector<Place> places = {};  ///< centres
  double area_m2 = 0;              ///< of one cell [m2]
};

/// About as many cells as footprints of a 150 mm disc, 1 to 100, on a rectangle of the panel's area about the
/// readings' places, in the proportions of the rectangle that holds them (a square where they span none).
/// Each reading without a place is one of the cells.
PanelCells cells_of(const Panel& panel);

/// Valleys expected to lie deeper than `depth_in_sd` standard deviations, >= 1, on an area: A (2 pi/l)^2/2
/// /(2 pi)^1.5 u exp(-u^2/2) (isotropic Gaussian field of wavelength l, docs/physics.md, risk).
double deep_valleys(double area_m2, double wavelength_mm, double depth_in_sd);

/// Depth, in standard deviations, that `expected` valleys (> 0) exceed on an area; at least 1.
double deepest_valley_in_sd(double area_m2, double wavelength_mm, double expected = 1);

/// Gamma-distributed dwell of mean 1 at a standard normal number (cube-root law, docs/physics.md, risk;
/// within .2 % at the usual coefficient of variation of .2).
double dwell_at(double normal, double cv);

/// Wavelength [mm] of the isotropic texture that has the field's rms height and rms slope; 0 where it is
/// flat.
double mean_wavelength_mm(const HeightField& field);

/// What is worst somewhere on the panel, one value per world.
struct PanelExtremes {
  std::vector<double> clear_before_um = {};      ///< thinnest cell before any work, mean over it [um]
  std::vector<double> clear_left_um = {};        ///< thinnest cell, mean over the cell [um]
  std::vector<double> clear_left_least_um = {};  ///< thinnest point: the deepest valley of any cell [um]
};

/// How a sequence has worked the panel, one value per world.
struct PanelWork {
  std::vector<double> removed_um = {};        ///< mean removal [um]
  std::vector<double> dwell_cv = {};          ///< coefficient of variation of the local removal
  std::vector<double> valley_depth_um = {};   ///< of the patch, after [um]
  std::vector<double> valley_before_um = {};  ///< of the patch, before [um]
};

/// Each world's cells: clear drawn from the map, removal times a dwell factor (gamma distribution; the
/// longest of as many footprints [m2] as the cell holds), and a deepest valley drawn from its distribution
/// over the cell's area, scaled from the patch's own [m2].
PanelExtremes extremes_of(const PanelCells& cells, const FilmMap& film, const PanelWork& work,
                          double footprint_m2, double patch_m2, double wavelength_mm, std::uint64_t seed,
                          const Progress& progress = {});

}  // namespace libtexture
