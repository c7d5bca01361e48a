#include "libtexture/io/readings_file.hpp"

#include <array>
#include <optional>
#include <string>

#include "libtexture/base/error.hpp"
#include "libtexture/base/text.hpp"
#include "libtexture/io/csv_table.hpp"

namespace libtexture {

namespace {

constexpr std::array<const char*, 4> words = {"total", "reading", "thickness", "value"};

enum class Unit { um, mil };

/// The column that holds the readings, and their unit where its name ends in it.
struct TotalColumn {
  std::string name;
  std::optional<Unit> unit;
};

TotalColumn total_column(const CsvTable& table) {
  for (const char* word : words)
    for (const auto& [ending, unit] : {std::pair("_um", Unit::um), std::pair("_mil", Unit::mil),
                                       std::pair("_mils", Unit::mil), std::pair("_microns", Unit::um)})
      if (has_column(table, std::string(word) + ending)) return {std::string(word) + ending, unit};
  if (has_column(table, "unit"))
    for (const char* word : words)
      if (has_column(table, word)) return {word, std::nullopt};
  refuse_csv(table, table.heading_line, "a column total_um or total_mil must hold the readings");
}

Unit unit_of_row(const CsvTable& table, const CsvRow& row) {
  const std::string unit = csv_text(table, row, "unit");
  for (const char* name : {"um", "\u00b5m", "\u03bcm", "micron", "microns"})
    if (unit == name) return Unit::um;
  for (const char* name : {"mil", "mils"})
    if (unit == name) return Unit::mil;
  refuse_csv(table, row.line, "unit must be um or mil (got \"" + shown(unit) + "\")");
}

Reading reading_of(const CsvTable& table, const CsvRow& row, const TotalColumn& column) {
  Reading reading;
  const Unit unit = column.unit ? *column.unit : unit_of_row(table, row);
  (unit == Unit::um ? reading.total_um : reading.total_mil) = csv_number(table, row, column.name);
  if (!csv_text(table, row, "x_mm").empty()) reading.x_mm = csv_number(table, row, "x_mm");
  if (!csv_text(table, row, "y_mm").empty()) reading.y_mm = csv_number(table, row, "y_mm");
  if (const std::string over = csv_text(table, row, "over"); !over.empty())
    reading.over = from_name<ReadingOver>(over, "Reading", "over");
  reading.validate();
  return reading;
}

}  // namespace

std::vector<Reading> read_readings(const std::filesystem::path& path) {
  const CsvTable table = read_csv_table(path, {"x_mm", "y_mm", "over"}, {}, OtherColumns::left_out);
  const TotalColumn column = total_column(table);
  std::vector<Reading> readings;
  for (const CsvRow& row : table.rows) {
    if (csv_text(table, row, column.name).empty()) continue;
    try {
      readings.push_back(reading_of(table, row, column));
    } catch (const InvalidInput& error) {
      if (std::string_view(error.what()).starts_with(table.file)) throw;  // it names the row already
      refuse_csv(table, row.line, error.what());
    }
  }
  if (readings.empty())
    refuse_csv(table, table.heading_line, "the column " + column.name + " holds no reading");
  return readings;
}

}  // namespace libtexture
