#include "libtexture/io/job_file.hpp"

#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/surface_file.hpp"
#include "libtexture/io/values.hpp"
#include "libtexture/io/whole_file.hpp"

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
  expect(fs::exists(folder / found->get<std::string>()), *found, key_path(path, key),
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

/// A file's path as a job in that folder names it.
std::string relative_to(const fs::path& folder, const std::string& file) {
  return fs::absolute(file).lexically_normal().lexically_relative(folder.lexically_normal()).string();
}

/// A job as it was saved; errors name the file.
Job read_json_job(const fs::path& path) {
  const std::string text = read_whole_file(path);
  try {
    Json values = Json::parse(text, nullptr, false);
    require(!values.is_discarded(), "Job", "text", "must be JSON", "something else");
    if (values.is_object()) place_paths(values, path.parent_path());
    return value_from<Job>(values);
  } catch (const InvalidInput& error) {
    throw InvalidInput(path.filename().string() + ": " + error.what());
  }
}

}  // namespace

Job read_job(const Json& values, const fs::path& folder) {
  expect(values.is_object(), values, "", "a table");
  Json full = values;
  place_paths(full, folder);
  require_there(values, "catalogue", folder, "");
  if (values.contains("texture") && values["texture"].is_object())
    require_there(values["texture"], "file", folder, "texture");
  resolve_steps(full, catalogue_of(value_from<std::optional<std::string>>(full.value("catalogue", Json()))));
  return value_from<Job>(full);
}

Job load_job(const fs::path& path) {
  if (path.extension() == ".json") return read_json_job(path);
  const TomlFile file = read_toml(path);
  return with_place(file, [&] { return read_job(file.values, path.parent_path()); });
}

HeightField surface_of(const Job& job) {
  if (job.texture.file) {
    HeightField measured = read_surface(*job.texture.file, job.patch.pixel_mm);
    require_bands_held(job, measured.grid());
    return scaled(measured, job.texture);
  }
  return starting_surface(job.texture, job.patch, job.seed);
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
  return tools;
}

std::string job_to_json(const Job& job) {
  job.validate();
  return to_json(job).dump(2);
}

void save_job(const Job& job, const fs::path& path) {
  require(path.extension() == ".json", "Job", "path",
          "must end in .json, as load_job() tells the kinds by it", path.filename().string());
  Job placed = job;
  const fs::path folder = fs::absolute(path).parent_path();
  for (std::optional<std::string>* file : {&placed.catalogue, &placed.texture.file})
    if (*file) *file = relative_to(folder, **file);
  write_whole_file(path, job_to_json(placed) + "\n");
}

Job job_from_json(const std::string& text) {
  const Json values = Json::parse(text, nullptr, false);
  require(!values.is_discarded(), "Job", "text", "must be JSON", "something else");
  return value_from<Job>(values);
}

}  // namespace libtexture
