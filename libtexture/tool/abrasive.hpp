#pragma once
// Abrasive: grains on a carrier: how fast they cut, how they load, what they are made for, what grooves they
// leave.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/tool/grit.hpp"

namespace libtexture {

/// How wet the surface is worked.
enum class Wetness { dry, damp, wet };
constexpr std::array<std::pair<Wetness, const char*>, 3> names_of(Wetness) {
  return {{{Wetness::dry, "dry"}, {Wetness::damp, "damp"}, {Wetness::wet, "wet"}}};
}

/// What carries the grains.
enum class Carrier { film_disc, foam_disc, compound };
constexpr std::array<std::pair<Carrier, const char*>, 3> names_of(Carrier) {
  return {{{Carrier::film_disc, "film_disc"},
           {Carrier::foam_disc, "foam_disc"},
           {Carrier::compound, "compound"}}};
}

/// Whose figure it is: the abrasive's in any hand, or what a test spot gave under this hand on this clear.
enum class FigureOf { any_hand, this_hand };
constexpr std::array<std::pair<FigureOf, const char*>, 2> names_of(FigureOf) {
  return {{{FigureOf::any_hand, "any_hand"}, {FigureOf::this_hand, "this_hand"}}};
}

/// Specific wear rates [mm3/(N m)] that are believed: below the least nothing is removed in a working life;
/// grooves that leave whole, at 45 degrees in a clear of 200 MPa, are 3 (2 f cot(alpha)/(pi H)); estimates.
inline constexpr double least_wear_mm3_per_n_m = 1e-6, most_wear_mm3_per_n_m = 100;

/// Groove depths, caps and rooms for swarf that are believed: beyond them, a slip of the unit; estimates.
inline constexpr double least_groove_depth_um = 1e-4, most_groove_depth_um = 100;
inline constexpr double least_groove_depth_cap = 0.1, most_groove_depth_cap = 100;
inline constexpr double least_loading_um = 0.1, most_loading_um = 1e6;

/// The abrasive side of a step. Rates hold for a clear coat of 200 MPa hardness, used as made_for[0] says.
struct Abrasive {
  std::string name;                                ///< as in the catalogue
  Grit grit = Grit::of_median_um(10.3);            ///< grain size
  Carrier carrier = Carrier::film_disc;            ///< film_disc, foam_disc, or compound on a pad
  std::vector<Wetness> made_for = {Wetness::dry};  ///< the first is the one that the rates were stated for
  double wear_rate_mm3_per_n_m = unset;  ///< specific wear rate of the clear, fresh [mm3/(N m)], 1e-6 to 100
  double worn_wear_rate_mm3_per_n_m = unset;  ///< the same, loaded [mm3/(N m)], 0 to the fresh rate
  double loading_um = unset;  ///< clear removed per disc area over which the cut falls (1/e) [um], .1 to 10^6
  std::optional<double> groove_depth_um = {};  ///< mean groove depth at 1.4 kPa [um]; none = from the grain
  double groove_depth_cap = 7;        ///< deepest regular groove in units of the mean depth; estimate 5-9
  double groove_coverage = 5;         ///< mean coverage of a finished population; estimate 2-10
  double groove_half_angle_deg = 75;  ///< half-angle of the triangular groove [degrees]; estimate
  double groove_pressure_exponent = 0.25;  ///< depth ~ pressure^m; estimate 0 (shared load) to 0.5 (fixed)
  double stray_marks_per_dm2_um = 0.05;    ///< rare deep marks per dm2 and um removed; estimate .01-.5
  double wear_rate_log_sd = 0.7;  ///< standard deviation of ln(wear rate) before a test spot; estimate
  /// Grain that the wear rates were stated for [um], where a law of size carried them to this one; none = its
  /// own. The exponent of that law is uncertain, and the more so counts the further the grains are apart.
  std::optional<double> stated_grain_um = {};
  std::string family = {};                ///< the product that this is a grade of; empty = its own name
  double wear_rate_family_share = 0.735;  ///< share of the variance of ln(wear rate) that a family has in
                                          ///< common, 0 to 1; estimate: 0.6 of 0.7
  FigureOf wear_rate_of = FigureOf::any_hand;  ///< this_hand: force and hardness are in it already
  /// Standard deviation of ln(groove depth); none = that of the job's uncertainty.
  std::optional<double> groove_depth_log_sd = {};
  /// Share of its variance that all abrasives have in common on a clear; none = the job's.
  std::optional<double> groove_depth_clear_share = {};
  FigureOf groove_depth_of = FigureOf::any_hand;  ///< this_hand: force, hardness and cap are in it already
  std::map<std::string, std::array<double, 2>> ranges = {};  ///< plausible least and most, by field name
  std::string source = "estimate";                           ///< where the figures come from

  void validate() const;
  bool operator==(const Abrasive&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("name", &Abrasive::name),
                      required("grit", &Abrasive::grit),
                      optional("carrier", &Abrasive::carrier),
                      optional("made_for", &Abrasive::made_for),
                      required("wear_rate_mm3_per_n_m", &Abrasive::wear_rate_mm3_per_n_m),
                      required("worn_wear_rate_mm3_per_n_m", &Abrasive::worn_wear_rate_mm3_per_n_m),
                      required("loading_um", &Abrasive::loading_um),
                      optional("groove_depth_um", &Abrasive::groove_depth_um),
                      optional("groove_depth_cap", &Abrasive::groove_depth_cap),
                      optional("groove_coverage", &Abrasive::groove_coverage),
                      optional("groove_half_angle_deg", &Abrasive::groove_half_angle_deg),
                      optional("groove_pressure_exponent", &Abrasive::groove_pressure_exponent),
                      optional("stray_marks_per_dm2_um", &Abrasive::stray_marks_per_dm2_um),
                      optional("wear_rate_log_sd", &Abrasive::wear_rate_log_sd),
                      optional("stated_grain_um", &Abrasive::stated_grain_um),
                      optional("family", &Abrasive::family),
                      optional("wear_rate_family_share", &Abrasive::wear_rate_family_share),
                      optional("wear_rate_of", &Abrasive::wear_rate_of),
                      optional("groove_depth_log_sd", &Abrasive::groove_depth_log_sd),
                      optional("groove_depth_clear_share", &Abrasive::groove_depth_clear_share),
                      optional("groove_depth_of", &Abrasive::groove_depth_of),
                      optional("ranges", &Abrasive::ranges),
                      optional("source", &Abrasive::source)};
  }
};

/// Name of the family that an abrasive belongs to.
const std::string& family_of(const Abrasive& abrasive);

/// Mean groove depth [um] at 1.4 kPa: the abrasive's own, or, where it states none, 0.164 um x grain / 10.3
/// um (proportional to the grain; estimate for a film disc on an interface pad, docs/physics.md, scratches).
double reference_groove_depth_um(const Abrasive& abrasive);

/// The same product in another grit, with its ranges: wear rates scaled by (d/d0)^exponent, groove depth and
/// loading by d/d0 (docs/physics.md (27), (27b) and (29)); the name takes the new grit in place of the
/// old, the family stays. exponent: size effect of wear, about 1 for micro-grit (range 0.5 to 1.5; estimate).
Abrasive at_grit(const Abrasive& abrasive, const Grit& grit, double exponent = 1.0);

/// What wetness changes, as factors on the dry values (estimates): wear rate, loading, groove depth.
struct WetnessEffect {
  double wear_rate;
  double loading;
  double groove_depth;
};
/// ln(grain/grain that the wear rates were stated for): by how much the exponent of their law of size counts;
/// 0 where they are its own.
double log_size(const Abrasive& abrasive);

/// Factors for working `abrasive` at `wetness`, relative to made_for[0].
/// InvalidInput, with the reason, where the abrasive is not made for it.
WetnessEffect wetness_effect(const Abrasive& abrasive, Wetness wetness);

/// Wear rates go with the clear's hardness to this power; estimate.
inline constexpr double hardness_wear_exponent = -1.3;

/// Groove depths do with this one; estimate: abrasion of polymers does not go as 1/H.
inline constexpr double hardness_groove_exponent = -0.5;

/// Factor on the wear rate for a clear of this hardness [MPa]: (H/200)^-1.3. It passes within 4 % through the
/// trade's classes soft/medium/hard = 150/200/300 MPa: 1.5/1/.6 (estimate).
double hardness_wear_factor(double hardness_mpa);

/// Specific wear rate [mm3/(N m)] after a disc has removed `removed_um` of clear per disc area:
/// w_end + (w_0 - w_end) exp(-V/V_0).
double wear_rate_mm3_per_n_m(const Abrasive& abrasive, double removed_um);

}  // namespace libtexture
