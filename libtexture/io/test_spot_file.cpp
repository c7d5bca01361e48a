#include "libtexture/io/test_spot_file.hpp"

#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/io/csv_table.hpp"
#include "libtexture/plan/panel.hpp"

namespace libtexture {

namespace {

double total_of(const CsvTable& table, const CsvRow& row) {
  Reading reading;
  if (!csv_text(table, row, "total_um").empty()) reading.total_um = csv_number(table, row, "total_um");
  if (!csv_text(table, row, "total_mil").empty()) reading.total_mil = csv_number(table, row, "total_mil");
  try {
    return total_um(reading);
  } catch (const InvalidInput& error) {
    refuse_csv(table, row.line, error.what());
  }
}

std::string setting_text(const CsvTable& table, const std::string& name) {
  const auto found = table.settings.find(name);
  return found == table.settings.end() ? "" : found->second.text;
}

int whole_setting(const CsvTable& table, const std::string& name) {
  if (!table.settings.count(name)) refuse_csv(table, 1, "a line \"# " + name + " = ...\" must be given");
  const double value = csv_setting(table, name, 0);
  if (value != std::floor(value) || std::abs(value) > 1e6)
    refuse_csv(table, table.settings.at(name).line,
               name + " must be a whole number (got " + table.settings.at(name).text + ")");
  return static_cast<int>(value);
}

}  // namespace

TestSpot read_test_spot(const std::filesystem::path& path) {
  const CsvTable table =
      read_csv_table(path, {"when", "total_um", "total_mil"},
                     {"passes", "step", "sequence", "area_m2", "spot_cv", "gloss_gone_passes",
                      "gloss_left_passes", "gloss_log_sd", "rms_left_um", "rms_left_log_sd",
                      "marks_gone_passes", "marks_left_passes", "marks_log_sd"});
  TestSpot spot;
  spot.passes = whole_setting(table, "passes");
  spot.step = setting_text(table, "step");
  spot.sequence = setting_text(table, "sequence");
  spot.area_m2 = csv_setting(table, "area_m2", spot.area_m2);
  spot.spot_cv = csv_setting(table, "spot_cv", spot.spot_cv);
  for (const auto& [name, member] : {std::pair("gloss_gone_passes", &TestSpot::gloss_gone_passes),
                                     std::pair("gloss_left_passes", &TestSpot::gloss_left_passes),
                                     std::pair("marks_gone_passes", &TestSpot::marks_gone_passes),
                                     std::pair("marks_left_passes", &TestSpot::marks_left_passes)})
    if (table.settings.count(name)) spot.*member = whole_setting(table, name);
  spot.gloss_log_sd = csv_setting(table, "gloss_log_sd", spot.gloss_log_sd);
  if (table.settings.count("rms_left_um")) spot.rms_left_um = csv_setting(table, "rms_left_um", 0);
  spot.rms_left_log_sd = csv_setting(table, "rms_left_log_sd", spot.rms_left_log_sd);
  spot.marks_log_sd = csv_setting(table, "marks_log_sd", spot.marks_log_sd);
  for (const CsvRow& row : table.rows) {
    const std::string when = csv_text(table, row, "when");
    if (when != "before" && when != "after")
      refuse_csv(table, row.line, "when must be before or after (got \"" + when + "\")");
    (when == "before" ? spot.before_um : spot.after_um).push_back(total_of(table, row));
  }
  try {
    spot.validate();
  } catch (const InvalidInput& error) {
    throw InvalidInput(table.file + ": " + error.what());
  }
  return spot;
}

}  // namespace libtexture
