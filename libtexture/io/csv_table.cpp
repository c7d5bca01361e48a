#include "libtexture/io/csv_table.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/text.hpp"
#include "libtexture/io/whole_file.hpp"

namespace libtexture {

namespace {

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blank = " \t\r\"";  // spreadsheets put quotes round texts
  const auto first = text.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

/// The size of the cell that a text begins with; a separator within quotes (RFC 4180) is part of it.
std::size_t cell_size(std::string_view text, char separator) {
  const auto first = text.find_first_not_of(' ');
  if (first == std::string_view::npos || text[first] != '"')
    return std::min(text.find(separator), text.size());
  bool is_quoted = false;
  for (std::size_t i = first; i < text.size(); ++i) {
    if (text[i] == '"') is_quoted = !is_quoted;
    if (text[i] == separator && !is_quoted) return i;
  }
  return text.size();
}

std::vector<std::string> cells_of(std::string_view text, char separator) {
  std::vector<std::string> cells;
  while (true) {
    const std::size_t size = cell_size(text, separator);
    cells.emplace_back(trimmed(text.substr(0, size)));
    if (size == text.size()) return cells;
    text.remove_prefix(size + 1);
  }
}

/// Columns that a spreadsheet adds at the right of a table are empty from top to bottom.
void drop_empty_end(std::vector<std::string>& cells, std::size_t least) {
  while (cells.size() > least && cells.back().empty()) cells.pop_back();
}

/// A name as a heading may spell it, "Total (um)", in our spelling: total_um. The letter mu has two codes.
std::string plain_name(std::string_view text) {
  std::string name;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_mu = text.substr(i).starts_with("\u00b5") || text.substr(i).starts_with("\u03bc");
    const bool is_gap = std::string_view(" _()[]/-.").find(text[i]) != std::string_view::npos;
    if (is_gap && (name.empty() || name.back() == '_')) continue;
    name += is_mu                              ? 'u'
            : is_gap                           ? '_'
            : text[i] >= 'A' && text[i] <= 'Z' ? char(text[i] - 'A' + 'a')
                                               : text[i];
    if (is_mu) ++i;
  }
  if (name.ends_with('_')) name.pop_back();
  return name;
}

char separator_of(std::string_view heading) {
  for (const char separator : {'\t', ';'})
    if (heading.find(separator) != std::string_view::npos) return separator;
  return ',';
}

/// typed: the name as the file spells it.
void require_known(const CsvTable& table, int line, const std::string& kind, const std::string& name,
                   const std::string& typed, const std::vector<std::string>& known) {
  if (std::find(known.begin(), known.end(), name) != known.end()) return;
  const std::string nearest = nearest_word(name, known.data(), known.data() + known.size());
  refuse_csv(table, line,
             "unknown " + kind + " \"" + shown(typed) + "\"" +
                 (nearest.empty() ? "" : "; nearest known: \"" + nearest + "\""));
}

void read_setting(CsvTable& table, int line, std::string_view comment,
                  const std::vector<std::string>& known) {
  const std::size_t equals = comment.find('=');
  if (equals == std::string_view::npos) return;
  const std::string_view word = trimmed(comment.substr(0, equals));
  if (word.find(' ') != std::string::npos) return;  // a sentence, not a setting
  const std::string name = plain_name(word);
  require_known(table, line, "setting", name, std::string(word), known);
  // Spreadsheets fill a comment's line up with separators.
  std::string_view value = comment.substr(equals + 1);
  const auto last = value.find_last_not_of(" \t\r,;");
  value = last == std::string_view::npos ? "" : value.substr(0, last + 1);
  if (!table.settings.emplace(name, CsvCell{std::string(trimmed(value)), line}).second)
    refuse_csv(table, line, "setting \"" + name + "\" stands twice");
}

void read_heading(CsvTable& table, int line, std::string_view text, const std::vector<std::string>& known,
                  OtherColumns others) {
  std::vector<std::string> cells = cells_of(text, table.separator);
  drop_empty_end(cells, 1);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string typed = std::exchange(cells[i], plain_name(cells[i]));
    const bool is_known = std::find(known.begin(), known.end(), cells[i]) != known.end();
    if (!is_known && others == OtherColumns::left_out) continue;
    require_known(table, line, "column", cells[i], typed, known);
    const auto here = cells.begin() + static_cast<std::ptrdiff_t>(i);
    if (std::find(cells.begin(), here, cells[i]) != here)
      refuse_csv(table, line, "column \"" + cells[i] + "\" stands twice");
  }
  table.heading_line = line;
  table.columns = std::move(cells);
}

void read_row(CsvTable& table, int line, std::string_view text) {
  CsvRow row{cells_of(text, table.separator), line};
  drop_empty_end(row.cells, table.columns.size());
  if (row.cells.size() == table.columns.size()) return table.rows.push_back(std::move(row));
  std::string why = "must hold " + std::to_string(table.columns.size()) + " cells as the heading (got " +
                    std::to_string(row.cells.size()) + ")";
  if (table.separator == ',' && row.cells.size() > table.columns.size())
    why += "; a number with a comma is two cells: write 0.9, not 0,9";
  refuse_csv(table, line, why);
}

std::optional<double> number_of(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  double value{};
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || stop != text.data() + text.size() || !std::isfinite(value)) return {};
  return value;
}

double number_or_refuse(const CsvTable& table, int line, std::string_view name, const std::string& text) {
  if (const auto value = number_of(text)) return *value;
  std::string with_point = text;
  const std::size_t comma = text.find(',');
  if (comma != std::string::npos) with_point[comma] = '.';
  const auto value = number_of(with_point);
  if (value && table.separator != ',') return *value;
  std::string why = std::string(name) + " must be a number (got \"" + shown(text) + "\")";
  if (value) why += "; write " + with_point + ", not " + text;
  refuse_csv(table, line, why);
}

/// The separator that a spreadsheet's line "sep=;" states; none = another line.
std::optional<char> stated_separator(std::string_view text) {
  if (text.size() != 5 || plain_name(text.substr(0, 3)) != "sep" || text[3] != '=') return {};
  return text[4];
}

}  // namespace

void refuse_csv(const CsvTable& table, int line, const std::string& why) {
  throw InvalidInput(table.file + ":" + std::to_string(line) + ": " + why);
}

void refuse_csv_rule(const CsvTable& table, const std::string& message) {
  const std::size_t colon = message.find(": ");
  const std::size_t start = colon == std::string::npos ? 0 : colon + 2;
  const auto setting = table.settings.find(message.substr(start, message.find_first_of(" :", start) - start));
  refuse_csv(table, setting == table.settings.end() ? table.heading_line : setting->second.line, message);
}

CsvTable read_csv_table(const std::filesystem::path& path, const std::vector<std::string>& columns,
                        const std::vector<std::string>& settings, OtherColumns others) {
  const std::string bytes = read_text_file(path);
  std::string_view rest = bytes;
  CsvTable table;
  table.file = path.string();
  int line = 1;
  std::optional<char> stated;
  for (; !rest.empty(); ++line) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const std::string_view whole = rest.substr(0, end);
    const std::string_view text = trimmed(whole);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (text.find_first_not_of(",; \t\"") == std::string_view::npos) continue;
    if (text.starts_with('#')) {
      read_setting(table, line, text.substr(1), settings);
    } else if (!table.columns.empty()) {
      read_row(table, line, whole);
    } else if (const auto separator = stated_separator(text)) {
      stated = separator;
    } else {
      table.separator = stated.value_or(separator_of(whole));
      read_heading(table, line, whole, columns, others);
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
