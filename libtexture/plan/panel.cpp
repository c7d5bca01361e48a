#include "libtexture/plan/panel.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

constexpr double thinnest_um = 15, thickest_um = 5000;  // no whole film on a car is less or more: estimates

// The film between readings is solved for, at the cost of their number cubed.
constexpr std::size_t most_readings = 2000;

}  // namespace

void Reading::validate() const {
  require(x_mm.has_value() == y_mm.has_value(), "Reading", "x_mm and y_mm", "must be given both or neither",
          x_mm ? "x_mm alone" : "y_mm alone");
  // A place 100 m off is a slip of the unit.
  if (x_mm) require_within(*x_mm, -1e5, 1e5, "Reading", "x_mm");
  if (y_mm) require_within(*y_mm, -1e5, 1e5, "Reading", "y_mm");
  require(total_um.has_value() != total_mil.has_value(), "Reading", "total_um or total_mil",
          "must be given, exactly one of them", total_um ? "both" : "neither");
  if (total_um) {
    require_positive(*total_um, "Reading", "total_um");
    require(*total_um >= thinnest_um, "Reading", "total_um", "must be at least 15: is it mil or mm?",
            *total_um);
    require(*total_um <= thickest_um, "Reading", "total_um", "must be at most 5000", *total_um);
  } else {
    require_positive(*total_mil, "Reading", "total_mil");
    require(*total_mil * um_per_mil >= thinnest_um, "Reading", "total_mil", "must be at least 15 um = 0.59",
            *total_mil);
    require(*total_mil * um_per_mil <= thickest_um, "Reading", "total_mil",
            "must be at most 5000 um = 196.85", *total_mil);
  }
}

double total_um(const Reading& reading) {
  reading.validate();
  return reading.total_um ? *reading.total_um : *reading.total_mil * um_per_mil;
}

bool teaches(const Reading& reading) {
  return reading.over != ReadingOver::filler;
}

void Panel::validate() const {
  require_name(name, "Panel", "name");
  require_positive(area_m2, "Panel", "area_m2");
  // From a chip's repair to a bus's side; tighter than 5 cm is an edge (estimates).
  require_within(area_m2, 1e-4, 100, "Panel", "area_m2");
  if (crown_radius_m) {
    require_positive(*crown_radius_m, "Panel", "crown_radius_m");
    require_within(*crown_radius_m, 0.05, 1e6, "Panel", "crown_radius_m");
  }
  sheet.validate();
  if (edge_length_m) require_not_negative(*edge_length_m, "Panel", "edge_length_m");
  require(!readings.empty(), "Panel", "readings", "must hold at least one reading", "none");
  require(readings.size() <= most_readings, "Panel", "readings", "must hold at most 2000",
          std::to_string(readings.size()));
  require(std::any_of(readings.begin(), readings.end(), teaches), "Panel", "readings",
          "must hold at least one reading that is not over filler", "filler alone");
  for (const Reading& reading : readings) reading.validate();
}

std::optional<Crown> crown_of(const Panel& panel) {
  if (!panel.crown_radius_m) return std::nullopt;
  return Crown{*panel.crown_radius_m, panel.sheet};
}

}  // namespace libtexture
