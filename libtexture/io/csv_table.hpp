#pragma once
// CsvTable: a table that people fill in with a spreadsheet or by hand, errors with file and line.

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace libtexture {

/// A text and the line it stands on, 1 = first.
struct CsvCell {
  std::string text = {};
  int line = 0;
};

/// One row below the heading.
struct CsvRow {
  std::vector<std::string> cells = {};  ///< one per column; "" where nothing was filled in
  int line = 0;
};

/// A .csv file: a heading that names the columns, then rows, apart by comma, semicolon or tab, as the heading
/// shows or a spreadsheet's line "sep=;" says. Numbers have a decimal point, or a decimal comma where commas
/// do not part the cells. Names may be written "Total (um)" for total_um. Lines "# name = value" are
/// settings; other '#' lines and empty ones are comments.
struct CsvTable {
  std::string file = {};  ///< as messages name it
  std::map<std::string, CsvCell> settings = {};
  std::vector<std::string> columns = {};
  int heading_line = 1;
  char separator = ',';
  std::vector<CsvRow> rows = {};
};

/// What becomes of columns that nobody asks for.
enum class OtherColumns { refused, left_out };

/// A table with a heading of known columns, and known settings. InvalidInput names the file and the line:
/// text that is not UTF-8, unknown or repeated names (with the nearest known one), rows longer or shorter
/// than the heading, no rows.
CsvTable read_csv_table(const std::filesystem::path& path, const std::vector<std::string>& columns,
                        const std::vector<std::string>& settings,
                        OtherColumns others = OtherColumns::refused);

/// Throws InvalidInput "file:line: why".
[[noreturn]] void refuse_csv(const CsvTable& table, int line, const std::string& why);

/// Throws the message of a rule, "Owner: field must ...", with the file and the line of that setting before
/// it; that of the heading where the field is a column or none of the file's.
[[noreturn]] void refuse_csv_rule(const CsvTable& table, const std::string& message);

/// Whether the table has that column.
bool has_column(const CsvTable& table, std::string_view column);

/// The text of a row under a column; "" where the column or the cell is missing.
std::string csv_text(const CsvTable& table, const CsvRow& row, std::string_view column);

/// The number of a row under a column; InvalidInput where it is missing or no finite number.
double csv_number(const CsvTable& table, const CsvRow& row, std::string_view column);

/// The number of a setting, or `otherwise` where it is not set.
double csv_setting(const CsvTable& table, const std::string& name, double otherwise);

}  // namespace libtexture
