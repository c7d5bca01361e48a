#include "libtexture/io/csv_table.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "libtexture/base/error.hpp"
#include "libtexture/io/whole_file.hpp"

namespace libtexture {

namespace {

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blank = " \t\r\"";  // spreadsheets put quotes round texts
  const auto first = text.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

std::vector<std::string> cells_of(std::string_view text, char separator) {
  std::vector<std::string> cells;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find(separator, begin), text.size());
    cells.emplace_back(trimmed(text.substr(begin, end - begin)));
    begin = end + 1;
  }
  return cells;
}

void require_known(const CsvTable& table, int line, const std::string& kind, const std::string& name,
                   const std::vector<std::string>& known) {
  if (std::find(known.begin(), known.end(), name) != known.end()) return;
  const std::string nearest = nearest_word(name, known.data(), known.data() + known.size());
  refuse_csv(table, line,
             "unknown " + kind + " \"" + name + "\"" +
                 (nearest.empty() ? "" : "; nearest known: \"" + nearest + "\""));
}

void read_setting(CsvTable& table, int line, std::string_view comment,
                  const std::vector<std::string>& known) {
  const std::size_t equals = comment.find('=');
  if (equals == std::string_view::npos) return;
  const std::string name(trimmed(comment.substr(0, equals)));
  if (name.find(' ') != std::string::npos) return;  // a sentence, not a setting
  require_known(table, line, "setting", name, known);
  // Spreadsheets fill a comment's line up with separators.
  std::string_view value = comment.substr(equals + 1);
  const auto last = value.find_last_not_of(" \t\r,;");
  value = last == std::string_view::npos ? "" : value.substr(0, last + 1);
  if (!table.settings.emplace(name, CsvCell{std::string(trimmed(value)), line}).second)
    refuse_csv(table, line, "setting \"" + name + "\" stands twice");
}

void read_heading(CsvTable& table, int line, std::vector<std::string> cells,
                  const std::vector<std::string>& known) {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    require_known(table, line, "column", cells[i], known);
    if (std::find(cells.begin(), cells.begin() + static_cast<std::ptrdiff_t>(i), cells[i]) !=
        cells.begin() + static_cast<std::ptrdiff_t>(i))
      refuse_csv(table, line, "column \"" + cells[i] + "\" stands twice");
  }
  table.columns = std::move(cells);
}

std::optional<double> number_of(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  double value{};
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || stop != text.data() + text.size() || !std::isfinite(value)) return {};
  return value;
}

double number_or_refuse(const CsvTable& table, int line, std::string_view name, const std::string& text) {
  const auto value = number_of(text);
  if (!value) refuse_csv(table, line, std::string(name) + " must be a number (got \"" + text + "\")");
  return *value;
}

}  // namespace

void refuse_csv(const CsvTable& table, int line, const std::string& why) {
  throw InvalidInput(table.file + ":" + std::to_string(line) + ": " + why);
}

CsvTable read_csv_table(const std::filesystem::path& path, const std::vector<std::string>& columns,
                        const std::vector<std::string>& settings) {
  const std::string bytes = read_whole_file(path);
  std::string_view rest = bytes;
  if (rest.starts_with("\xEF\xBB\xBF")) rest.remove_prefix(3);  // the mark that spreadsheets put before UTF-8
  CsvTable table;
  table.file = path.string();
  char separator = ',';
  int line = 1;
  for (; !rest.empty(); ++line) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const std::string_view text = trimmed(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (text.find_first_not_of(",;") == std::string_view::npos) continue;
    if (text.starts_with('#')) {
      read_setting(table, line, text.substr(1), settings);
    } else if (table.columns.empty()) {
      separator = text.find(';') == std::string_view::npos ? ',' : ';';
      read_heading(table, line, cells_of(text, separator), columns);
    } else {
      CsvRow row{cells_of(text, separator), line};
      if (row.cells.size() != table.columns.size())
        refuse_csv(table, line,
                   "must hold " + std::to_string(table.columns.size()) + " cells as the heading (got " +
                       std::to_string(row.cells.size()) + ")");
      table.rows.push_back(std::move(row));
    }
  }
  if (table.rows.empty()) refuse_csv(table, std::max(1, line - 1), "the file holds no rows below a heading");
  return table;
}

bool has_column(const CsvTable& table, std::string_view column) {
  return std::find(table.columns.begin(), table.columns.end(), column) != table.columns.end();
}

std::string csv_text(const CsvTable& table, const CsvRow& row, std::string_view column) {
  const auto found = std::find(table.columns.begin(), table.columns.end(), column);
  if (found == table.columns.end()) return {};
  return row.cells[static_cast<std::size_t>(found - table.columns.begin())];
}

double csv_number(const CsvTable& table, const CsvRow& row, std::string_view column) {
  return number_or_refuse(table, row.line, column, csv_text(table, row, column));
}

double csv_setting(const CsvTable& table, const std::string& name, double otherwise) {
  const auto found = table.settings.find(name);
  if (found == table.settings.end()) return otherwise;
  return number_or_refuse(table, found->second.line, name, found->second.text);
}

}  // namespace libtexture
