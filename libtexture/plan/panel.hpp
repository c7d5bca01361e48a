#pragma once
// Panel: a piece of bodywork and the film thickness readings taken on it.

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/tool/sheet.hpp"

namespace libtexture {

/// What lies under the paint where a gauge reads: the panel itself, or filler, which reads as film.
enum class ReadingOver { panel, filler };
constexpr std::array<std::pair<ReadingOver, const char*>, 2> names_of(ReadingOver) {
  return {{{ReadingOver::panel, "panel"}, {ReadingOver::filler, "filler"}}};
}

/// One reading of a film thickness gauge: everything above the metal.
struct Reading {
  std::optional<double> x_mm = {};       ///< place on the panel [mm]; both or neither
  std::optional<double> y_mm = {};       ///< [mm]
  std::optional<double> total_um = {};   ///< total film [um], 15 to 5000; this or total_mil
  std::optional<double> total_mil = {};  ///< total film [mil = 25.4 um]
  ReadingOver over =
      ReadingOver::panel;  ///< over filler a reading is shown, and teaches nothing of the clear

  void validate() const;
  bool operator==(const Reading&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("x_mm", &Reading::x_mm), optional("y_mm", &Reading::y_mm),
                      optional("total_um", &Reading::total_um), optional("total_mil", &Reading::total_mil),
                      optional("over", &Reading::over)};
  }
};

/// A reading in micrometres, whichever unit it came in.
double total_um(const Reading& reading);

/// Whether a reading teaches anything of the clear: not over filler.
bool teaches(const Reading& reading);

/// One panel.
struct Panel {
  std::string name = {};   ///< as results name it: one line, not empty
  double area_m2 = unset;  ///< area to be levelled [m2], 10^-4 to 100
  std::optional<double> crown_radius_m =
      {};            ///< sqrt of the product of the main radii [m], .05 to 10^6; none = flat
  Sheet sheet = {};  ///< what the panel is made of: on its crown it gives under the disc
  std::optional<double> edge_length_m = {};  ///< length of edges and body lines that need a margin [m], >= 0
  std::vector<Reading> readings = {};        ///< 1 to 2000, at least one not over filler

  void validate() const;
  bool operator==(const Panel&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("name", &Panel::name),
                      required("area_m2", &Panel::area_m2),
                      optional("crown_radius_m", &Panel::crown_radius_m),
                      optional("sheet", &Panel::sheet),
                      optional("edge_length_m", &Panel::edge_length_m),
                      required("readings", &Panel::readings)};
  }
};

/// The panel's crown; none where it is flat.
std::optional<Crown> crown_of(const Panel& panel);

}  // namespace libtexture
