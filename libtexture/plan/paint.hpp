#pragma once
// Paint: what is known of the paint besides the readings, and of the gauge that took them.

#include <array>
#include <optional>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// Who painted: sets what is assumed of the clear's share of the total film.
enum class PaintKind { factory, repaint, unknown };
constexpr std::array<std::pair<PaintKind, const char*>, 3> names_of(PaintKind) {
  return {
      {{PaintKind::factory, "factory"}, {PaintKind::repaint, "repaint"}, {PaintKind::unknown, "unknown"}}};
}

/// The film thickness gauge.
struct Gauge {
  double uncertainty_um = 2.0;  ///< standard uncertainty of one reading [um], >= 0; estimate
  double gain_percent =
      1.0;  ///< standard uncertainty of its scale [%], 0 to 50; estimate (ISO 2360:2003: within 10 %)

  void validate() const;
  bool operator==(const Gauge&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("uncertainty_um", &Gauge::uncertainty_um),
                      optional("gain_percent", &Gauge::gain_percent)};
  }
};

/// Standard uncertainty [um] of a removal that one gauge measured at one spot, from the means of `before` and
/// `after` readings: sqrt(u^2 (1/before + 1/after) + (gain R)^2). The error of the scale all but cancels.
double removal_uncertainty_um(const Gauge& gauge, double removed_um, int before = 1, int after = 1);

/// What is known of the paint besides the readings.
struct Paint {
  PaintKind kind = PaintKind::unknown;  ///< who painted
  std::optional<double> clear_um =
      {};  ///< thickness of the clear, mean over a panel [um], > 0 to 5000; none = from the kind's prior
  std::optional<double> clear_uncertainty_um =
      {};            ///< standard uncertainty of clear_um [um], > 0; none = 15 % of it, estimate
  Gauge gauge = {};  ///< what the readings were taken with
  double hardness_mpa =
      200;  ///< indentation hardness of the clear [MPa], > 0 to 10000 (ISO 14577 practice: 150-300)
  /// of the clear, for gloss and reflections, 1.4 to 1.7; clear coats have 1.50 to 1.54 (from memory)
  double refractive_index = 1.5;

  void validate() const;
  bool operator==(const Paint&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("kind", &Paint::kind),
                      optional("clear_um", &Paint::clear_um),
                      optional("clear_uncertainty_um", &Paint::clear_uncertainty_um),
                      optional("gauge", &Paint::gauge),
                      optional("hardness_mpa", &Paint::hardness_mpa),
                      optional("refractive_index", &Paint::refractive_index)};
  }
};

}  // namespace libtexture
