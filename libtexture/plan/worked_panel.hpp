#pragma once
// WorkedPanel: what of a panel is worked where a target's defect is taken out on a patch.

#include <optional>

#include "libtexture/plan/defect.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/panel.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// Width of the ring over which the work about a patch fades [mm]: as stated, or the radius of the first
/// step's disc.
double feather_mm(const Defect& defect, const Motion& first);

/// Area [m2] that takes as much work as a round patch of a diameter [mm] at full dose and a ring about it
/// [mm] in which the dose falls to nothing in a straight line: pi (a^2 + a f + f^2/3), the volume of a
/// truncated cone over its height (docs/physics.md, equation 79).
double dose_area_m2(double patch_mm, double feather_mm);

/// The panel as it is worked: with a patch it has the patch's dose area, never more than its own, and no
/// edges; without a defect or a patch it is the panel itself.
Panel worked_panel(const Panel& panel, const std::optional<Defect>& defect, const Motion& first);

/// The job with its panels as they are worked; `first`: motion of the first step.
Job worked_job(const Job& job, const Motion& first);

/// Place of the middle of a patch on the panel [mm]; none without a patch, or where it may be anywhere.
std::optional<Place> patch_place_mm(const std::optional<Defect>& defect);

/// Film where the work has least clear to spend, best estimate: at the defect where a patch has a place, else
/// film_at_thinnest().
Film film_worked(const Panel& panel, const Paint& paint, const std::optional<Defect>& defect);

}  // namespace libtexture
