#pragma once
// Step: one abrasive step of a sequence, and when it stops.

#include <array>
#include <optional>
#include <string>

#include "libtexture/base/fields.hpp"
#include "libtexture/tool/abrasive.hpp"
#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// How many of the rules of a stop have to be met.
enum class StopWhen { any, all };
constexpr std::array<std::pair<StopWhen, const char*>, 2> names_of(StopWhen) {
  return {{{StopWhen::any, "any"}, {StopWhen::all, "all"}}};
}

/// What ends a step at a look, before its passes are used up: any one of these, or all. One that is met
/// before the first pass leaves the step out. None given: all passes are made; in a job, a first step with a
/// disc stops at the job's target.
struct Stop {
  std::optional<double> touched_share = {};  ///< area that the abrasive has touched, > 0 to 1
  std::optional<double> rms_um = {};         ///< texture left [um], > 0; of band_mm where that is given
  std::optional<std::array<double, 2>> band_mm =
      {};  ///< shortest and longest wavelength that rms_um counts [mm]
  /// texture left over that before the sequence, rms heights of all waves, > 0 to 1
  std::optional<double> rms_share = {};
  std::optional<double> removed_um = {};     ///< mean clear removed by this step [um], > 0 to 1000
  std::optional<double> clear_owed_um = {};  ///< clear that earlier steps' grooves still ask for [um], >= 0
  /// mean clear removed by this step that takes out the defect of the job's target, best estimate [um], > 0
  /// to 1000; in each possible world of a plan the step ends once the defect is gone there
  std::optional<double> defect_um = {};
  StopWhen when = StopWhen::any;  ///< whether any of the rules that are given ends it, or all

  void validate() const;
  bool operator==(const Stop&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("touched_share", &Stop::touched_share),
                      optional("rms_um", &Stop::rms_um),
                      optional("band_mm", &Stop::band_mm),
                      optional("rms_share", &Stop::rms_share),
                      optional("removed_um", &Stop::removed_um),
                      optional("clear_owed_um", &Stop::clear_owed_um),
                      optional("defect_um", &Stop::defect_um),
                      optional("when", &Stop::when)};
  }
};

/// One abrasive step: what cuts, what is behind it, how it is driven, and for how long.
struct Step {
  std::string name = {};           ///< as results name it, one line; may be empty: then its abrasive's
  Abrasive abrasive = {};          ///< what cuts
  Backing backing = {};            ///< what is behind it
  Motion motion = {};              ///< how it is driven
  Wetness wetness = Wetness::dry;  ///< one that the abrasive is made for
  int passes = 0;                  ///< at most so many overlapped passes, 1 to 1000
  int look_every_passes = 1;       ///< the surface is wiped and judged every so many passes, 1 to 1000
  Stop stop = {};                  ///< what ends the step at a look
  double change_disc_below_share =
      0.5;  ///< a disc is changed when its wear rate is below this share of fresh, 0 to .95; estimate

  void validate() const;
  bool operator==(const Step&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("name", &Step::name),
                      required("abrasive", &Step::abrasive),
                      required("backing", &Step::backing),
                      required("motion", &Step::motion),
                      optional("wetness", &Step::wetness),
                      required("passes", &Step::passes),
                      optional("look_every_passes", &Step::look_every_passes),
                      optional("stop", &Step::stop),
                      optional("change_disc_below_share", &Step::change_disc_below_share)};
  }
};

}  // namespace libtexture
