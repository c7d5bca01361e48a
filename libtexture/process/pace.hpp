#pragma once
// Pace: how much clear a pass removes while its discs load and are changed.

#include "libtexture/process/step.hpp"

namespace libtexture {

/// The discs of a step so far.
struct DiscUse {
  int discs = 1;          ///< discs used, the present one included
  double removed_um = 0;  ///< clear that the present disc has removed, per disc area [um]
};

/// Mean clear [um] that the next pass of a step removes from an area [m2] of clear of a hardness [MPa]; `use`
/// moves on. The wear rate falls along the pass as the disc loads, w_end + (w_0 - w_end) exp(-V/V_0), and a
/// fresh disc is taken where it has fallen to step.change_disc_below_share: exact integral (docs/physics.md,
/// how fast R runs).
double removal_of_pass_um(const Step& step, double area_m2, double hardness_mpa, DiscUse& use);

/// Sanding [min] after which a fresh disc is to be changed, on any area: its wear rate has fallen to
/// step.change_disc_below_share of the fresh one. Infinite where it never does.
double disc_life_minutes(const Step& step, double hardness_mpa);

}  // namespace libtexture
