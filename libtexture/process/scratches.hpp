#pragma once
// Scratches: the debt a step leaves: grooves far below the pixel, a state beside the height field.
//
// The whole state is what each step removed at each pixel. A pixel's grooves of step i follow exactly from
// its own removal r_i and from what the later steps removed there (docs/physics.md, scratches), so areas that
// a pass does not reach keep their old state, and area means need no products of means.
//
// Limits: groove depths are exponential; the cap enters counts, the deepest groove and the clear owed, but
// not the coverage. At the default cap of 7 mean depths and coverage of 5 that states a finished population's
// mean depth 4 % and rms 10 % too high, and survivors' coverage too high: of what is stated, the cap takes
// 4 % after two mean depths of later removal, 9 % after three, 20 % after four, 41 % after five (the debt is
// on the safe side). Grooves have no direction, grains do not wear within a step, and grooves do not change
// what is removed later.

#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/numerics/array.hpp"
#include "libtexture/surface/depth_law.hpp"
#include "libtexture/tool/abrasive.hpp"
#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// The grooves that an abrasive cuts under given conditions.
struct GrooveFigures {
  int step = 0;                       ///< which step of the sequence cuts them, from 0
  double depth_um = unset;            ///< mean groove depth delta [um], > 0
  double coverage = 5;                ///< mean coverage K_inf once finished, > 0; estimate 2-10
  double depth_cap = 7;               ///< deepest regular groove in mean depths, > 0; estimate 5-9
  double half_angle_deg = 75;         ///< half-angle of the triangle [degrees], > 0 to < 90; estimate
  double groove_length_mm = unset;    ///< length of one groove [mm], > 0
  double stray_marks_per_dm2_um = 0;  ///< rare deep marks per dm2 and um removed, >= 0

  void validate() const;
  bool operator==(const GrooveFigures&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("step", &GrooveFigures::step),
                      required("depth_um", &GrooveFigures::depth_um),
                      optional("coverage", &GrooveFigures::coverage),
                      optional("depth_cap", &GrooveFigures::depth_cap),
                      optional("half_angle_deg", &GrooveFigures::half_angle_deg),
                      required("groove_length_mm", &GrooveFigures::groove_length_mm),
                      optional("stray_marks_per_dm2_um", &GrooveFigures::stray_marks_per_dm2_um)};
  }
};

/// The grooves of one step, with what the step has removed so far.
struct ScratchPopulation {
  GrooveFigures figures;  ///< its grooves
  Array2d removal_um;     ///< (rows, cols) clear removed by these grooves, >= 0 [um]; 1 x 1 = uniform
};

/// All scratches of a patch, oldest step first; all maps have one shape. Empty = unmarked.
struct Scratches {
  std::vector<ScratchPopulation> populations;  ///< one per kind of groove
};

/// What counts as a visible scratch.
struct ScratchLimits {
  double visible_depth_um = 0.10;  ///< shallower grooves are not seen [um], >= 0; estimate
  double marks_per_cm2 = 1;        ///< so few deeper grooves are let pass [1/cm2], > 0; estimate

  void validate() const;
  bool operator==(const ScratchLimits&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("visible_depth_um", &ScratchLimits::visible_depth_um),
                      optional("marks_per_cm2", &ScratchLimits::marks_per_cm2)};
  }
};

/// Which populations a question is about: all, or those of other steps than the last one's.
enum class Marks { all, earlier };

/// Mean groove depth [um] at a mean pressure [kPa], contact share (0 to 1] and clear hardness [MPa],
/// docs/physics.md (29). InvalidInput where the abrasive is not made for the wetness.
double groove_depth_um(const Abrasive& abrasive, Wetness wetness, double pressure_kpa, double contact_share,
                       double hardness_mpa);

/// Length of a groove [mm]: about the orbit; on a rotary disc about the disc's diameter (estimates).
double groove_length_mm(const Motion& motion);

/// How many more stray marks a backing makes than the one with a soft interface that an abrasive's figures
/// mean: 2 where no layer lets a stray grain sink in (stiffness of its layers from .06 kPa/um), else 1
/// (estimates).
double stray_marks_factor(const Backing& backing);

/// The figures of the grooves of a step, from 0, with an abrasive; its stray marks as on a soft interface.
GrooveFigures groove_figures(int step, const Abrasive& abrasive, const Motion& motion, double depth_um);

/// Works the patch: the removal map (>= 0 [um]) wears down what is there and marks with the new figures. The
/// same figures as the last population's add to it; others open a new one. Exact in any split into passes.
void scratch(Scratches& scratches, const GrooveFigures& figures, const Array2d& removal_um);

/// Mean coverage at each pixel of population `index`, same shape as the maps, docs/physics.md (32).
Array2d coverage_map(const Scratches& scratches, int index);

/// Share of a population that later removal leaves [0..1]: exp(-R/delta), or its mean over gamma-distributed
/// local dwell of mean 1 and coefficient of variation dwell_cv, docs/physics.md (31). removal_um >= 0,
/// depth_um > 0.
double surviving_share(double removal_um, double depth_um, double dwell_cv = 0);

/// The depth laws of the patch's parts: pixels of like coverages (within 1/32 of the finished one) form a
/// part, with the exact area mean of each coverage; at the default coverage that grouping moves deeper_share
/// by about .001, and by .003 per population at most.
std::vector<DepthLaw> depth_laws(const Scratches& scratches);

/// Share of the mirrored light (0 to 1) that the scratches leave in the mirror direction at each pixel, by
/// the depth law of its part: what render_reflection() takes. 1 x 1 where there are no scratches.
Array2d specular_share_map(const Scratches& scratches, double angle_deg);

/// Grooves per cm2 deeper than depth_um [um], area mean, docs/physics.md (36).
double grooves_per_cm2(const Scratches& scratches, double depth_um, Marks marks = Marks::all);

/// Depth [um] that at most grooves_per_cm2 (> 0) regular grooves exceed; 0 where there are no more than that.
double depth_exceeded_um(const Scratches& scratches, double grooves_per_cm2, Marks marks = Marks::all);

/// The deepest regular groove expected on one dm2 [um]: one groove per dm2 is deeper.
double deepest_groove_um(const Scratches& scratches);

/// Clear owed [um]: the uniform removal that leaves no more than the limits allow, docs/physics.md (37).
/// `earlier` leaves out the last step's own grooves, which count after it.
double clear_owed_um(const Scratches& scratches, Marks marks = Marks::all, const ScratchLimits& limits = {});

/// The same for each population alone [um], oldest first.
std::vector<double> clear_owed_by_population_um(const Scratches& scratches, const ScratchLimits& limits = {});

/// Expected number of rare deep marks from stray grains deeper than depth_um on an area [dm2],
/// docs/physics.md (38).
double stray_marks(const Scratches& scratches, double depth_um, double area_dm2);

/// Probability of at least one of them: 1 - exp(-expected number).
double stray_mark_probability(const Scratches& scratches, double depth_um, double area_dm2);

/// What is asked after each pass, from one look at the maps: depth_laws(), deepest_groove_um(),
/// grooves_per_cm2() and stray_marks() of a dm2 beyond the visible limit, clear_owed_um() of all and of
/// earlier marks.
struct ScratchSummary {
  std::vector<DepthLaw> laws;
  double deepest_um, marks_per_cm2, stray_marks_per_dm2, clear_owed_um, earlier_clear_owed_um;
};
ScratchSummary summary_of(const Scratches& scratches, const ScratchLimits& limits = {});

}  // namespace libtexture
