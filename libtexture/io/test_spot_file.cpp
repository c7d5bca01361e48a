#include "libtexture/io/test_spot_file.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <set>
#include <string>

#include "libtexture/base/error.hpp"
#include "libtexture/base/text.hpp"
#include "libtexture/io/csv_table.hpp"
#include "libtexture/plan/panel.hpp"

namespace libtexture {

namespace {

const std::set<std::string> side_by_side = {"before", "before_um", "before_mil",
                                            "after",  "after_um",  "after_mil"};

/// A reading, refused by line where it breaks a rule.
double checked(const CsvTable& table, const CsvRow& row, const Reading& reading) {
  try {
    return total_um(reading);
  } catch (const InvalidInput& error) {
    refuse_csv(table, row.line, error.what());
  }
}

double total_of(const CsvTable& table, const CsvRow& row) {
  Reading reading;
  if (!csv_text(table, row, "total_um").empty()) reading.total_um = csv_number(table, row, "total_um");
  if (!csv_text(table, row, "total_mil").empty()) reading.total_mil = csv_number(table, row, "total_mil");
  return checked(table, row, reading);
}

/// A row of the layout with a column for before and one for after; either cell may be empty.
void read_side_by_side(const CsvTable& table, const CsvRow& row, TestSpot& spot) {
  for (const std::string& column : table.columns) {
    if (csv_text(table, row, column).empty()) continue;
    const double value = csv_number(table, row, column);
    Reading reading;
    (column.ends_with("_mil") ? reading.total_mil : reading.total_um) = value;
    (column.starts_with("before") ? spot.before_um : spot.after_um).push_back(checked(table, row, reading));
  }
}

void read_one_below_the_other(const CsvTable& table, const CsvRow& row, TestSpot& spot) {
  std::string when = csv_text(table, row, "when");
  std::transform(when.begin(), when.end(), when.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  if (when != "before" && when != "after")
    refuse_csv(table, row.line,
               "when must be before or after (got \"" + shown(csv_text(table, row, "when")) + "\")");
  (when == "before" ? spot.before_um : spot.after_um).push_back(total_of(table, row));
}

/// The heading of the one layout or of the other.
bool is_side_by_side(const CsvTable& table) {
  const auto is_of_it = [](const std::string& column) { return side_by_side.contains(column); };
  const auto count = std::count_if(table.columns.begin(), table.columns.end(), is_of_it);
  if (count != 0 && count != static_cast<std::ptrdiff_t>(table.columns.size()))
    refuse_csv(table, table.heading_line, "columns before and after stand in place of when and total_um");
  return count != 0;
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
      read_csv_table(path,
                     {"when", "total_um", "total_mil", "before", "before_um", "before_mil", "after",
                      "after_um", "after_mil"},
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
  const auto read_row = is_side_by_side(table) ? read_side_by_side : read_one_below_the_other;
  for (const CsvRow& row : table.rows) read_row(table, row, spot);
  try {
    spot.validate();
  } catch (const InvalidInput& error) {
    refuse_csv_rule(table, error.what());
  }
  return spot;
}

}  // namespace libtexture
