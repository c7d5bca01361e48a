#pragma once
// Plausible: what a thickness or a length of a job can be. Outside of that it is a slip of the unit.

#include <string>
#include <string_view>
#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/plan/job.hpp"

namespace libtexture {

/// What a field may be, in its own unit. 0 is always left to the field's own rule.
struct PlausibleRange {
  std::string_view field;  ///< as in a job file, without the numbers of list elements: "budget.reserve_um"
  double least, most;      ///< beyond them it is refused: no car has that
  double usual_least, usual_most;  ///< beyond them it is warned of: rare, and likely a slip of the unit
};

/// The range of a field; its path may hold the numbers of list elements. InvalidInput where there is none.
const PlausibleRange& plausible_range(std::string_view field);

/// A unit that may have been meant, and the value in the field's own unit then.
struct OtherUnit {
  std::string_view unit;
  double value;
};

/// The units in which a value would be usual: 1.4 of clear_left_least_um may be mil, and 35.56 um then.
std::vector<OtherUnit> other_units(const PlausibleRange& range, double value);

/// Whether a job file takes the field in mil too, under a key that ends in _mil: thicknesses of clear.
bool takes_mil(std::string_view field);

/// InvalidInput, with the unit that may have been meant and what to write then, where a value is not
/// plausible. `field`: path in the job, "panel[0].crown_radius_m".
void require_plausible(double value, std::string_view owner, const std::string& field);

/// The same for every thickness and length of a job, tools included. Places of readings are held to the
/// panel's size: all within a hundredth of its side are not places in mm.
void require_plausible(const Job& job);

/// What is plausible in a job, and unusual: each with the units that may have been meant.
std::vector<Statement> unusual_lengths(const Job& job);

/// The same of one value; none where it is usual.
std::vector<Statement> unusual_length(double value, const std::string& field);

}  // namespace libtexture
