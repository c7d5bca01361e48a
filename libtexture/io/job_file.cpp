#include "libtexture/io/job_file.hpp"

#include "libtexture/base/units.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/json_file.hpp"
#include "libtexture/io/readings_file.hpp"
#include "libtexture/io/surface_file.hpp"
#include "libtexture/io/toml_file.hpp"
#include "libtexture/io/values.hpp"
#include "libtexture/io/whole_file.hpp"
#include "libtexture/plan/known_tools.hpp"
#include "libtexture/plan/plausible.hpp"
#include "libtexture/surface/form.hpp"

namespace libtexture {

namespace fs = std::filesystem;

namespace {

/// Makes the path under `key`, where there is one, start at the folder.
void place_path(Json& table, const char* key, const fs::path& folder, const std::string& path) {
  const auto found = table.find(key);
  if (found == table.end() || found->is_null()) return;
  *found = (folder / value_from<std::string>(*found, key_path(path, key))).lexically_normal().string();
}

/// The same with all paths of a job.
void place_paths(Json& job, const fs::path& folder) {
  place_path(job, "catalogue", folder, "");
  if (job.contains("texture") && job["texture"].is_object())
    place_path(job["texture"], "file", folder, "texture");
}

/// Refuses a path, as it was before place_paths(), to a file that is not there.
void require_there(const Json& table, const char* key, const fs::path& folder, const std::string& path) {
  const auto found = table.find(key);
  if (found == table.end() || !found->is_string()) return;
  std::error_code ignored;  // a name that is too long, a link to itself: not there
  expect(fs::exists(folder / found->get<std::string>(), ignored), *found, key_path(path, key),
         "a file that is there; paths start at the job's folder");
}

Catalogue catalogue_of(const std::optional<std::string>& own_file) {
  return own_file ? extended(shipped_catalogue(), read_toml(*own_file)) : shipped_catalogue();
}

/// Puts the tools in full in place of their names; what is not as it should be is left for value_from to
/// refuse.
void resolve_step(Json& step, const Catalogue& catalogue, const std::string& path) {
  if (!step.is_object()) return;
  const auto resolve = [&](const char* key, auto find) {
    if (step.contains(key)) step[key] = to_json(find(catalogue, step[key], key_path(path, key)));
  };
  resolve("abrasive", find_abrasive);
  resolve("backing", find_backing);
  resolve("motion", find_motion);
}

void resolve_steps(Json& values, const Catalogue& catalogue) {
  const auto sequences = values.find("sequence");
  if (sequences == values.end() || !sequences->is_array()) return;
  for (std::size_t i = 0; i < sequences->size(); ++i) {
    Json& sequence = (*sequences)[i];
    if (!sequence.is_object() || !sequence.contains("step") || !sequence["step"].is_array()) continue;
    const std::string path = key_path(element_path("sequence", i), "step");
    for (std::size_t j = 0; j < sequence["step"].size(); ++j)
      resolve_step(sequence["step"][j], catalogue, element_path(path, j));
  }
}

/// Thicknesses that are stated in mil, under the key of micrometres.
void mils_to_um(Json& job, const char* table_name) {
  const auto table = job.find(table_name);
  if (table == job.end() || !table->is_object()) return;
  const Json given = *table;
  for (const auto& [key, value] : given.items()) {
    if (!key.ends_with("_mil")) continue;
    const std::string key_um = key.substr(0, key.size() - 3) + "um", path = key_path(table_name, key);
    if (!takes_mil(key_path(table_name, key_um))) continue;
    expect(!given.contains(key_um), value, path, "left out, as " + key_um + " is given too");
    (*table)[key_um] = um_per_mil * value_from<double>(value, path);
    table->erase(key);
  }
}

/// A panel's readings as its table holds them, from a list with plain numbers, which are um, or from a file.
void place_readings(Json& readings, const fs::path& folder, const std::string& path) {
  if (readings.is_string()) {
    require_there(Json{{"readings", readings}}, "readings", folder, path.substr(0, path.rfind('.')));
    try {
      readings = to_json(read_readings(folder / readings.get<std::string>()));
    } catch (const InvalidInput& error) {
      throw BadValue(path + ": " + error.what(), path);
    }
  }
  if (!readings.is_array()) return;
  for (Json& reading : readings)
    if (reading.is_number()) reading = Json{{"total_um", reading}};
}

void place_all_readings(Json& job, const fs::path& folder) {
  const auto panels = job.find("panel");
  if (panels == job.end() || !panels->is_array()) return;
  for (std::size_t i = 0; i < panels->size(); ++i)
    if ((*panels)[i].is_object() && (*panels)[i].contains("readings"))
      place_readings((*panels)[i]["readings"], folder, key_path(element_path("panel", i), "readings"));
}

/// What to write where a key that stands for nothing on the car is missing.
void require_settings(const Json& job) {
  for (const auto& [key, line] :
       {std::pair("schema", "schema = 1, the version of this layout"),
        std::pair(
            "patch",
            "patch = { rows = 512, cols = 512, pixel_mm = 0.1 }, the piece of 51 x 51 mm that is simulated")})
    if (!job.contains(key)) throw BadValue(std::string("missing key '") + key + "': write " + line, "");
}

/// A measured map brings its own patch, where the job states none.
void take_patch_of_file(Json& job) {
  if (job.contains("patch") || !job.contains("texture") || !job["texture"].is_object()) return;
  const Json file = job["texture"].value("file", Json());
  if (!file.is_string()) return;
  try {
    job["patch"] = to_json(read_surface(file.get<std::string>()).grid());
  } catch (const InvalidInput& error) {
    throw BadValue(std::string("texture.file: ") + error.what() +
                       "; a job's patch is left out only where the file "
                       "states its pixel",
                   "texture.file");
  }
}

/// The map of a job's file, its pixels those of the job's patch.
HeightField measured_map(const Job& job) {
  HeightField map = read_surface(*job.texture.file, job.patch.pixel_mm);
  const Grid& own = map.grid();
  if (own.rows == job.patch.rows && own.cols == job.patch.cols) return map;
  const auto words = [](const Grid& grid) {
    return "rows = " + std::to_string(grid.rows) + ", cols = " + std::to_string(grid.cols);
  };
  throw InvalidInput(*job.texture.file + ": the file holds " + words(own) + ", and the job's patch states " +
                     words(job.patch) + ": write patch = { " + words(own) +
                     ", pixel_mm = " + to_text(own.pixel_mm) + " }");
}

/// Heights that no paint has are in another unit.
void require_plausible_heights(const HeightField& map, const std::string& file) {
  const double rms_um = map.rms_um();
  if (rms_um == 0) return;
  working_at(file + ": ", [&] { require_plausible(rms_um, "heights", "texture.file.rms_um"); });
}

/// A measured map as texture, and what there is to say of it.
struct Measured {
  HeightField surface;
  std::vector<Statement> notes;
};

Measured measured(const Job& job) {
  Measured result{measured_map(job), {}};
  require_bands_held(job, result.surface.grid());
  if (job.texture.form == MapForm::removed) {
    FormRemoved removed = without_form(result.surface);
    result.notes = statements_of(removed);
    result.surface = std::move(removed.surface);
  }
  require_plausible_heights(result.surface, *job.texture.file);
  const double rms_um = result.surface.rms_um();
  if (rms_um > 0) add_new(result.notes, unusual_length(rms_um, "texture.file.rms_um"));
  add_new(result.notes, statements_of(edge_jump(result.surface)));
  return result;
}

/// A file's path as a job in that folder names it.
std::string relative_to(const fs::path& folder, const std::string& file) {
  return fs::absolute(file).lexically_normal().lexically_relative(folder.lexically_normal()).string();
}

/// A job as it was saved; errors name the file and the line.
Job read_json_job(const fs::path& path) {
  ValueFile file = read_json(path);
  if (file.values.is_object()) place_paths(file.values, path.parent_path());
  return with_place(file, [&] { return value_from<Job>(file.values); });
}

}  // namespace

Job read_job(const Json& values, const fs::path& folder) {
  expect(values.is_object(), values, "", "a table");
  Json full = values;
  place_paths(full, folder);
  require_there(values, "catalogue", folder, "");
  if (values.contains("texture") && values["texture"].is_object())
    require_there(values["texture"], "file", folder, "texture");
  take_patch_of_file(full);
  for (const char* table : {"coating", "budget"}) mils_to_um(full, table);
  require_settings(full);
  place_all_readings(full, folder);
  resolve_steps(full, catalogue_of(value_from<std::optional<std::string>>(full.value("catalogue", Json()))));
  return value_from<Job>(full);
}

Job load_job(const fs::path& path) {
  if (path.extension() == ".json") return read_json_job(path);
  const ValueFile file = read_toml(path);
  return with_place(file, [&] { return read_job(file.values, path.parent_path()); });
}

HeightField surface_of(const Job& job) {
  return job.texture.file ? scaled(measured(job).surface, job.texture)
                          : starting_surface(job.texture, job.patch, job.seed);
}

std::vector<Statement> surface_notes(const Job& job) {
  return job.texture.file ? measured(job).notes : std::vector<Statement>();
}

Tools tools_of(const Job& job, const Machine& machine) {
  const Catalogue catalogue = catalogue_of(job.catalogue);
  Tools tools;
  for (const auto& [name, abrasive] : catalogue.abrasives) tools.abrasives.push_back(abrasive);
  for (const auto& [name, backing] : catalogue.backings) tools.backings.push_back(backing);
  try {
    tools.disc = find_motion(catalogue, machine.disc, "disc");
    tools.compound = find_motion(catalogue, machine.compound, "compound");
    tools.polish = find_motion(catalogue, machine.polish, "polish");
  } catch (const BadValue& error) {
    throw InvalidInput("Machine: " + std::string(error.what()));
  }
  return known_tools(std::move(tools), job);
}

std::string job_to_json(const Job& job) {
  job.validate();
  return to_json(job).dump(2);
}

std::string saved_text(const Job& job, const fs::path& path) {
  require(path.extension() == ".json", "Job", "path",
          "must end in .json, as load_job() tells the kinds by it", path.filename().string());
  Job placed = job;
  const fs::path folder = fs::absolute(path).parent_path();
  for (std::optional<std::string>* file : {&placed.catalogue, &placed.texture.file})
    if (*file) *file = relative_to(folder, **file);
  return job_to_json(placed) + "\n";
}

void save_job(const Job& job, const fs::path& path) {
  write_whole_file(path, saved_text(job, path));
}

Job job_from_json(const std::string& text) {
  return value_from<Job>(parse_json(text, "Job").values);
}

}  // namespace libtexture
