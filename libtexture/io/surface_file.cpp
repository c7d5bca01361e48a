#include "libtexture/io/surface_file.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "libtexture/base/error.hpp"
#include "libtexture/base/text.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/io/whole_file.hpp"

namespace libtexture {

namespace {

static_assert(std::endian::native == std::endian::little, "files are read in the machine's own byte order");

constexpr int most_pixels_a_side =
    16384;  // as Grid allows; keeps a damaged header from asking for all memory
constexpr std::size_t most_surface_bytes = std::size_t{4} << 30;  // the largest grid as .npy, with room
constexpr std::string_view npy_magic = "\x93NUMPY";
constexpr std::string_view pixel_comment = "pixel_mm =";

[[noreturn]] void refuse(const std::filesystem::path& path, const std::string& place,
                         const std::string& why) {
  throw InvalidInput(shown(path.string(), 300) + ": " + place + ": " + why);
}

std::string at_byte(std::size_t offset) {
  return "byte " + std::to_string(offset);
}
std::string at_line(std::size_t line) {
  return "line " + std::to_string(line);
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blank = " \t\r";
  const auto first = text.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

/// The number that fills `text`, or none.
template <class Number>
std::optional<Number> number_of(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  Number value{};
  const char* end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || stop != end) return {};
  return value;
}

constexpr double same_pixel = 1e-6;  // relative: what is written with six digits is the same

double pixel_or_refuse(const std::filesystem::path& path, std::optional<double> given,
                       std::optional<double> own) {
  if (given && own && !(std::abs(*given - *own) <= same_pixel * *own))
    throw InvalidInput(path.string() + ": the file states pixel_mm = " + to_text(*own) + ", and " +
                       to_text(*given) +
                       " is asked for (a job's patch, or pixel_mm): mend the one that is wrong");
  if (own) return *own;
  if (given) return *given;
  throw InvalidInput(path.string() + ": pixel_mm must be given: the file does not hold it");
}

/// The field, or the field's own objection with the file's name before it.
HeightField field_of(const std::filesystem::path& path, Array2d heights, double pixel_mm) {
  try {
    return {std::move(heights), pixel_mm};
  } catch (const InvalidInput& error) {
    throw InvalidInput(path.string() + ": " + error.what());
  }
}

// --- .npy ---

/// The header's dictionary, a literal of Python's: its three entries as they are written, each once.
class NpyEntries {
 public:
  NpyEntries(const std::filesystem::path& path_, std::string_view header) : path(path_), rest(header) {
    take('{');
    for (skip_blank(); !rest.starts_with('}'); skip_blank()) {
      const std::string key(quoted());
      take(':');
      skip_blank();
      if (!entries.emplace(key, value()).second) fail("the header states '" + key + "' twice");
      skip_blank();
      if (!rest.starts_with('}')) take(',');
    }
    rest.remove_prefix(1);
    skip_blank();
    if (!rest.empty() || entries.size() != 3)
      fail("the header must state descr, fortran_order and shape alone");
  }

  std::string_view at(const std::string& key) const {
    const auto found = entries.find(key);
    if (found == entries.end()) fail("the header has no '" + key + "':");
    return found->second;
  }

 private:
  [[noreturn]] void fail(const std::string& why) const { refuse(path, at_byte(npy_magic.size()), why); }

  void skip_blank() { rest.remove_prefix(std::min(rest.find_first_not_of(" \t\r\n"), rest.size())); }

  void take(char letter) {
    skip_blank();
    if (!rest.starts_with(letter))
      fail(std::string("the header must have a '") + letter + "' before \"" + shown(rest, 20) + "\"");
    rest.remove_prefix(1);
  }

  /// What stands between two quotes, which are taken too.
  std::string_view quoted() {
    const std::string_view all = value();
    const bool is_quoted = all.size() > 1 && (all[0] == '\'' || all[0] == '"') && all.back() == all[0];
    if (!is_quoted) fail("the header's keys must be quoted (got \"" + shown(all, 20) + "\")");
    return all.substr(1, all.size() - 2);
  }

  std::string_view value() {
    const char first = rest.empty() ? '\0' : rest[0];
    const char last = first == '(' ? ')' : first;
    const bool is_enclosed = first == '(' || first == '\'' || first == '"';
    const std::size_t end = is_enclosed ? rest.find(last, 1) : rest.find_first_of(",:} \t\r\n");
    if (end == std::string_view::npos) fail("the header ends within \"" + shown(rest, 20) + "\"");
    const std::string_view taken = rest.substr(0, is_enclosed ? end + 1 : end);
    rest.remove_prefix(taken.size());
    return taken;
  }

  const std::filesystem::path& path;
  std::string_view rest;
  std::map<std::string, std::string_view> entries = {};
};

struct NpyHeader {
  std::size_t data_offset;
  std::size_t number_bytes;
  int rows;
  int cols;
};

std::array<int, 2> npy_shape(const std::filesystem::path& path, std::string_view text) {
  std::vector<int> sides;
  const bool is_tuple = text.starts_with('(') && text.find(',') != std::string_view::npos;
  std::string_view rest = is_tuple ? text.substr(1, text.size() - 2) : "";
  while (!trimmed(rest).empty()) {
    const auto comma = rest.find(',');
    const auto side = number_of<int>(rest.substr(0, comma));
    sides.push_back(side.value_or(0));
    rest = comma == std::string_view::npos ? "" : rest.substr(comma + 1);
  }
  const auto is_side = [](int side) { return side >= 1 && side <= most_pixels_a_side; };
  const bool is_shape = std::all_of(sides.begin(), sides.end(), is_side);
  if (is_shape && sides.size() == 1) return {1, sides[0]};
  if (is_shape && sides.size() == 2) return {sides[0], sides[1]};
  refuse(path, at_byte(npy_magic.size()),
         "shape must be (rows, cols) or (cols), each 1 to 16384 (got " + shown(text) + ")");
}

NpyHeader npy_header(const std::filesystem::path& path, const std::string& bytes) {
  const std::string_view all = bytes;
  if (!all.starts_with(npy_magic))
    refuse(path, at_byte(0), "not a .npy file (its first bytes are not \\x93NUMPY)");
  const unsigned version = all.size() > 6 ? static_cast<unsigned char>(all[6]) : 0;
  if (version != 1 && version != 2)
    refuse(path, at_byte(6), "format must be 1 or 2 (got " + std::to_string(version) + ")");
  const std::size_t length_bytes = version == 1 ? 2 : 4;
  const std::size_t start = 8 + length_bytes;
  if (all.size() < start) refuse(path, at_byte(all.size()), "the file ends in its header");
  std::uint32_t length = 0;
  std::memcpy(&length, all.data() + 8, length_bytes);
  if (all.size() - start < length) refuse(path, at_byte(all.size()), "the file ends in its header");
  const std::string_view header = all.substr(start, length);

  const NpyEntries entries(path, header);
  const std::string_view type = entries.at("descr");
  const std::string_view number = type.size() == 5 ? type.substr(1, 3) : type;
  if (number != "<f8" && number != "<f4")
    refuse(path, at_byte(start), "descr must be '<f8' or '<f4' (got " + shown(type) + ")");
  const std::string_view order = entries.at("fortran_order");
  if (order != "False")
    refuse(path, at_byte(start), "fortran_order must be False (got " + shown(order) + ")");
  const auto [rows, cols] = npy_shape(path, entries.at("shape"));
  return {start + length, number == "<f8" ? 8U : 4U, rows, cols};
}

template <class Number>
Array2d npy_numbers(const std::filesystem::path& path, const std::string& bytes, const NpyHeader& header) {
  Array2d heights(header.rows, header.cols);
  for (Eigen::Index i = 0; i < heights.size(); ++i) {
    const std::size_t offset = header.data_offset + static_cast<std::size_t>(i) * sizeof(Number);
    Number value;
    std::memcpy(&value, bytes.data() + offset, sizeof value);
    if (!std::isfinite(value))
      refuse(path, at_byte(offset), "height must be finite (got " + to_text(value) + ")");
    heights.data()[i] = value;
  }
  return heights;
}

HeightField read_npy(const std::filesystem::path& path, std::optional<double> pixel_mm) {
  const std::string bytes = read_whole_file(path, most_surface_bytes);
  const NpyHeader header = npy_header(path, bytes);
  const std::size_t needed =
      header.data_offset + header.number_bytes * static_cast<std::size_t>(header.rows) * header.cols;
  if (bytes.size() != needed)
    refuse(path, at_byte(std::min(bytes.size(), needed)),
           "the file must be " + std::to_string(needed) + " bytes long (got " + std::to_string(bytes.size()) +
               ")");
  const double pixel = pixel_or_refuse(path, pixel_mm, {});
  if (header.number_bytes == 4) return field_of(path, npy_numbers<float>(path, bytes, header), pixel);
  return field_of(path, npy_numbers<double>(path, bytes, header), pixel);
}

std::string npy_bytes(const HeightField& field) {
  const Grid& grid = field.grid();
  std::string header = "{'descr': '<f8', 'fortran_order': False, 'shape': (" + std::to_string(grid.rows) +
                       ", " + std::to_string(grid.cols) + "), }";
  // The format asks that the numbers start at a multiple of 64 bytes and that the header ends in a line feed.
  const std::size_t before = npy_magic.size() + 4;
  header.append(63 - (before + header.size()) % 64, ' ').append("\n");
  const auto length = static_cast<std::uint16_t>(header.size());
  std::string bytes(npy_magic);
  bytes.append("\x01\x00", 2).append(reinterpret_cast<const char*>(&length), 2).append(header);
  const Array2d& heights = field.height_um();
  return bytes.append(reinterpret_cast<const char*>(heights.data()), sizeof(double) * heights.size());
}

// --- .csv ---

char separator_of(std::string_view text) {
  for (const char separator : {'\t', ';'})
    if (text.find(separator) != std::string_view::npos) return separator;
  return ',';
}

std::vector<double> csv_row(const std::filesystem::path& path, std::string_view text, std::size_t line) {
  const char separator = separator_of(text);
  std::vector<double> row;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find(separator, begin), text.size());
    std::string word(trimmed(text.substr(begin, end - begin)));
    if (separator != ',') std::replace(word.begin(), word.end(), ',', '.');  // a decimal comma
    const std::string place = at_line(line) + ", number " + std::to_string(row.size() + 1);
    const auto value = number_of<double>(word);
    if (!value) refuse(path, place, "not a number (got \"" + shown(word) + "\")");
    if (!std::isfinite(*value)) refuse(path, place, "height must be finite (got " + word + ")");
    row.push_back(*value);
    begin = end + 1;
  }
  return row;
}

std::optional<double> csv_pixel(const std::filesystem::path& path, std::string_view comment,
                                std::size_t line) {
  comment = trimmed(comment.substr(1));
  if (!comment.starts_with(pixel_comment)) return {};
  const auto value = number_of<double>(comment.substr(pixel_comment.size()));
  if (!value || !std::isfinite(*value) || *value <= 0)
    refuse(path, at_line(line), "pixel_mm must be a number > 0");
  return value;
}

HeightField read_csv(const std::filesystem::path& path, std::optional<double> pixel_mm) {
  const std::string bytes = read_text_file(path, most_surface_bytes);
  std::string_view rest = bytes;
  std::vector<double> numbers;
  std::size_t rows = 0, cols = 0;
  std::optional<double> own_pixel;
  for (std::size_t line = 1; !rest.empty(); ++line) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const std::string_view text = trimmed(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (text.empty()) continue;
    if (text.starts_with('#')) {
      if (const auto pixel = csv_pixel(path, text, line)) own_pixel = pixel;
      continue;
    }
    const std::vector<double> row = csv_row(path, text, line);
    if (rows == 0) cols = row.size();
    if (row.size() != cols)
      refuse(path, at_line(line),
             "must hold " + std::to_string(cols) + " numbers as the rows before (got " +
                 std::to_string(row.size()) + ")");
    numbers.insert(numbers.end(), row.begin(), row.end());
    ++rows;
  }
  if (rows == 0) refuse(path, at_line(1), "the file holds no numbers");
  if (cols == 1) std::swap(rows, cols);
  const double pixel = pixel_or_refuse(path, pixel_mm, own_pixel);
  const auto map = Eigen::Map<const Array2d>(numbers.data(), static_cast<Eigen::Index>(rows),
                                             static_cast<Eigen::Index>(cols));
  return field_of(path, map, pixel);
}

/// The shortest text that reads back as the same number.
void append_number(std::string& text, double value) {
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  text.append(digits.data(), end);
}

std::string csv_bytes(const HeightField& field) {
  std::string text = "# height_um\n# ";
  text.append(pixel_comment).append(" ");
  append_number(text, field.pixel_mm());
  text.append("\n");
  const Array2d& heights = field.height_um();
  for (Eigen::Index i = 0; i < heights.rows(); ++i) {
    for (Eigen::Index j = 0; j < heights.cols(); ++j) {
      if (j > 0) text.append(",");
      append_number(text, heights(i, j));
    }
    text.append("\n");
  }
  return text;
}

[[noreturn]] void refuse_ending(const std::filesystem::path& path) {
  throw InvalidInput(path.string() + ": a surface file ends in .npy or .csv");
}

}  // namespace

HeightField read_surface(const std::filesystem::path& path, std::optional<double> pixel_mm) {
  if (path.extension() == ".npy") return read_npy(path, pixel_mm);
  if (path.extension() == ".csv") return read_csv(path, pixel_mm);
  refuse_ending(path);
}

void write_surface(const HeightField& field, const std::filesystem::path& path) {
  if (path.extension() == ".npy") return write_whole_file(path, npy_bytes(field));
  if (path.extension() == ".csv") return write_whole_file(path, csv_bytes(field));
  refuse_ending(path);
}

}  // namespace libtexture
