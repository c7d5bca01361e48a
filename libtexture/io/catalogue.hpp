#pragma once
// Catalogue: abrasives, backings and motions by name: those shipped with the library, extended by a user's
// own file.

#include <array>
#include <map>
#include <string>

#include "libtexture/io/value_file.hpp"
#include "libtexture/tool/abrasive.hpp"
#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// Plausible least and most of a tool's numbers, by their path in it: "force_n", "layers[0].modulus_mpa".
using Ranges = std::map<std::string, std::array<double, 2>>;

/// Tools by name. Its file has a table per tool, [abrasive."P2000 film"], [backing."..."], [motion."..."],
/// whose keys are the fields of the struct. A table may say like = "another name" and then what differs; an
/// abrasive like another with a new grit is that product at_grit(), before further keys override. A table may
/// say `ranges` of its numbers; an abrasive holds its own, those of backings and motions stand here.
struct Catalogue {
  std::map<std::string, Abrasive> abrasives;          ///< by name
  std::map<std::string, Backing> backings;            ///< by name
  std::map<std::string, Motion> motions;              ///< by name
  std::map<std::string, Ranges> backing_ranges = {};  ///< by name of the backing
  std::map<std::string, Ranges> motion_ranges = {};   ///< by name of the motion
};

/// The catalogue shipped with the library: estimates with their ranges and sources.
const Catalogue& shipped_catalogue();

/// `base` with the tables of a file added; a name that `base` has already is replaced. Errors name file and
/// line.
Catalogue extended(const Catalogue& base, const ValueFile& file);

/// The tool that a value of a job file means: a name of the catalogue, a table in full, or a table that says
/// `like`. BadValue, with the nearest known name, where the catalogue has none such.
Abrasive find_abrasive(const Catalogue& catalogue, const Json& value, const std::string& path = "abrasive");
Backing find_backing(const Catalogue& catalogue, const Json& value, const std::string& path = "backing");
Motion find_motion(const Catalogue& catalogue, const Json& value, const std::string& path = "motion");

}  // namespace libtexture
