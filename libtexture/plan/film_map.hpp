#pragma once
// FilmMap: total film and clear between the readings of a panel, with an uncertainty that grows away from
// them.

#include <Eigen/Core>
#include <cstdint>
#include <vector>

#include "libtexture/numerics/array.hpp"
#include "libtexture/plan/paint.hpp"
#include "libtexture/plan/panel.hpp"

namespace libtexture {

/// The clear's share of the total film, as a beta distribution.
struct ClearShare {
  double mean = 0;  ///< > 0 to < 1
  double sd = 0;    ///< standard deviation, >= 0; 0 = known
};

/// What is assumed before anything is known of the clear. A whole factory system of 4.0 to 6.0 mil with about
/// 2.0 mil of clear gives .40 (published, docs/physics.md, film map and budget); its spread, and
/// repaint and unknown, are estimates, wide on purpose.
ClearShare clear_share_prior(PaintKind kind);

/// How film thickness varies over a panel.
struct FilmVariation {
  double length_mm = 300;  ///< over which it forgets (1/e) [mm], > 0; estimate
  double sd_percent = 8;   ///< of the mean, before readings are seen [%], > 0 to 100; estimate
  double sd_weight = 4;    ///< so many readings weigh as much as that guess, > 0; estimate

  void validate() const;
};

/// A place on a panel.
struct Place {
  double x_mm = 0;
  double y_mm = 0;
};

/// Thickness at a place.
struct Film {
  double total_um = 0;     ///< expected total film [um]
  double total_sd_um = 0;  ///< its standard deviation, error of the gauge's scale included [um]
  double clear_um = 0;     ///< expected clear [um]
  double clear_sd_um = 0;  ///< its standard deviation [um]
};

/// Ordinary kriging of the readings of one panel, those over filler left out: total film = an unknown mean +
/// variation with the covariance sd^2 exp(-distance/length), + the gauge's noise; a reading without a place
/// has one of its own, far from all others. Clear = share x total film, the share the same all over the
/// panel.
struct FilmMap {
  double mean_um = 0;                 ///< total film, mean of the panel [um]
  double mean_sd_um = 0;              ///< its standard deviation, without the error of the scale [um]
  double variation_um = 0;            ///< standard deviation of places on the panel [um]
  double gain_sd = 0;                 ///< relative standard uncertainty of the gauge's scale
  double clear_gain_sd = 0;           ///< what of it reaches the clear: none where clear_um was given
  ClearShare share = {};              ///< clear's share of the total film
  double length_mm = 0;               ///< covariance length [mm]
  std::vector<Place> places = {};     ///< of the readings, as places_of() has them
  std::size_t placed = 0;             ///< so many of them, the first, are on the panel
  Eigen::MatrixXd precision = {};     ///< inverse covariance of the readings [1/um2]
  Eigen::VectorXd weights = {};       ///< precision times (reading - mean) [1/um]
  Eigen::VectorXd mean_weights = {};  ///< precision times ones [1/um2]
};

/// Places of a panel's readings, those over filler left out: those that state one first; then, for each
/// reading without, a place of its own that no other comes near.
std::vector<Place> places_of(const Panel& panel);

/// The map of a panel. The standard deviation of places is the readings' own, pulled towards
/// variation.sd_percent where there are few. With paint.clear_um the share is that over the panel's mean:
/// InvalidInput where it is not less.
FilmMap film_map(const Panel& panel, const Paint& paint, const FilmVariation& variation = {});

/// Film at a place.
Film film_at(const FilmMap& map, const Place& place);

/// Film at a place nobody has named: the panel's mean, with the variation of places.
Film film_anywhere(const FilmMap& map);

/// Film where the least reading was taken, with or without a place, those over filler left out; never more
/// clear than that reading.
Film film_at_thinnest(const FilmMap& map, const Panel& panel);

/// Clear [um] drawn at random, shape (draws, places): one row is one possible panel, its places, share and
/// scale error belonging together. The same seed gives the same rows.
Array2d draw_clear_um(const FilmMap& map, const std::vector<Place>& places, int draws, std::uint64_t seed);

/// The map as pictures, over the rectangle that holds the readings' places.
struct FilmPicture {
  Place corner = {};         ///< centre of the pixel of row 0, column 0 [mm]; rows run along y
  double pixel_mm = 0;       ///< [mm]
  Array2d total_um = {};     ///< expected total film [um]
  Array2d total_sd_um = {};  ///< its standard deviation [um]
  Array2d clear_um = {};     ///< expected clear [um]
  Array2d clear_sd_um = {};  ///< its standard deviation [um]
};

/// Pictures of `pixels` along the longer side, 2 to 1000. InvalidInput where the readings' places span no
/// area.
FilmPicture film_picture(const FilmMap& map, int pixels = 64);

}  // namespace libtexture
