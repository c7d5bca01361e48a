#pragma once
// Job files: TOML into a validated Job; JSON both ways.

#include <filesystem>
#include <string>
#include <vector>

#include "libtexture/io/bad_value.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/refinement.hpp"

namespace libtexture {

/// The job of a TOML file. Tools of steps are catalogue names, tables in full, or tables that say `like`;
/// names are looked up in the shipped catalogue, which the file that the key `catalogue` names extends.
/// Relative paths start at the job file's folder. A job with a measured map may leave `patch` out where the
/// file states its pixel; thicknesses of clear may be given in mil (clear_left_least_mil). Readings of a
/// panel are tables, plain numbers in um, or the name of a file of them (read_readings). Errors are one line
/// that starts "rear_door.toml:42: "; FileMissing where there is no job file. A file that ends in .json is a
/// job as save_job() writes it.
Job load_job(const std::filesystem::path& path);

/// The same from values; relative paths start at `folder`. Throws BadValue.
Job read_job(const Json& values, const std::filesystem::path& folder);

/// The starting surface of a job: drawn from its seed, dried from its wet film, or read from its file. A
/// file's pixels must be those of the job's patch, and its plane and form are taken out (texture.form).
/// InvalidInput for heights that are in another unit.
HeightField surface_of(const Job& job);

/// What there is to say of a measured map: the tilt and form that were taken out, heights that are unusual,
/// edges that do not fit on to each other; nothing of other textures.
std::vector<Statement> surface_notes(const Job& job);

/// Which motions of a catalogue are the machine at hand.
struct Machine {
  std::string disc = "150 mm light";         ///< drives discs
  std::string compound = "150 mm compound";  ///< drives compound
  std::string polish = "150 mm finishing";   ///< drives the last polish

  bool operator==(const Machine&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("disc", &Machine::disc), optional("compound", &Machine::compound),
                      optional("polish", &Machine::polish)};
  }
};

/// Everything in the catalogue that a job was looked up in, the shipped one or that with the user's own file
/// added, to choose from on a machine, as the job's own steps and test spots know it (known_tools()).
/// InvalidInput, with the nearest name, for a motion that is not there.
Tools tools_of(const Job& job, const Machine& machine = {});

/// A job as JSON text with its tools in full, so that it needs no catalogue.
std::string job_to_json(const Job& job);

/// The same for a file at `path`: its paths start at that file's folder. The file's name must end in .json.
std::string saved_text(const Job& job, const std::filesystem::path& path);

/// Writes a job as such a text, a whole file or none, for load_job() to read.
void save_job(const Job& job, const std::filesystem::path& path);

/// A job from such a text. InvalidInput where it is not JSON, BadValue where it is no job.
Job job_from_json(const std::string& text);

}  // namespace libtexture
