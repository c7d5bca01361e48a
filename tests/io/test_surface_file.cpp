#include <cstdint>
#include <cstring>
#include <string>

#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/io/surface_file.hpp"
#include "libtexture/io/whole_file.hpp"

using namespace libtexture;

namespace {

/// A file that lives as long as the test.
struct TestFile {
  explicit TestFile(const std::string& ending, std::string_view bytes = {})
      : path(folder.file("surface" + ending, bytes)) {}
  Folder folder;
  std::filesystem::path path;
};

template <class Number>
std::string bytes_of(const std::vector<Number>& numbers) {
  return {reinterpret_cast<const char*>(numbers.data()), numbers.size() * sizeof(Number)};
}

/// A .npy file laid out as numpy's published format description says (numpy.lib.format, versions 1.0
/// and 2.0).
std::string npy(int version, const std::string& type, const std::string& order, const std::string& shape,
                const std::string& data) {
  std::string header = "{'descr': '" + type + "', 'fortran_order': " + order + ", 'shape': " + shape + ", }";
  const std::size_t before = version == 1 ? 10 : 12;
  while ((before + header.size() + 1) % 64 != 0) header += ' ';
  header += '\n';
  const auto length = static_cast<std::uint32_t>(header.size());
  std::string bytes = "\x93NUMPY";
  bytes += static_cast<char>(version);
  bytes += '\0';
  bytes += bytes_of(std::vector<std::uint32_t>{length}).substr(0, version == 1 ? 2 : 4);
  return bytes + header + data;
}

const std::vector<double> eight{0, 1, 2, 3, 4.5, -5, 6, 1e-3};

std::string message_of(const std::filesystem::path& path, std::optional<double> pixel_mm = 0.1) {
  try {
    read_surface(path, pixel_mm);
  } catch (const InvalidInput& error) {
    const std::string text = error.what();
    CHECK(text.starts_with(path.string() + ": "));
    return text.substr(path.string().size() + 2);
  }
  return "read";
}

}  // namespace

TEST_CASE("a surface written and read again is the same, in either format, patch or profile") {
  Array2d heights(5, 7);
  for (Eigen::Index i = 0; i < heights.size(); ++i)
    heights.data()[i] = uniform_at({3, static_cast<std::uint64_t>(i)}) / 3;
  for (const HeightField& field : {HeightField(heights, 0.1), HeightField(heights.row(2), 0.3)})
    for (const char* ending : {".npy", ".csv"}) {
      const TestFile file(ending);
      write_surface(field, file.path);
      CHECK(read_surface(file.path, field.pixel_mm()) == field);
    }
}

TEST_CASE("a .npy of either version and precision is read row by row") {
  const std::vector<float> single(eight.begin(), eight.end());
  for (const int version : {1, 2}) {
    const TestFile wide(".npy", npy(version, "<f8", "False", "(2, 4)", bytes_of(eight)));
    const HeightField field = read_surface(wide.path, 0.1);
    CHECK(field.grid() == Grid{2, 4, 0.1});
    CHECK(field.height_um()(0, 3) == 3);
    CHECK(field.height_um()(1, 0) == 4.5);
    const TestFile narrow(".npy", npy(version, "<f4", "False", "(2, 4)", bytes_of(single)));
    CHECK(read_surface(narrow.path, 0.1).height_um()(1, 3) == 1e-3F);
    const TestFile profile(".npy", npy(version, "<f8", "False", "(8,)", bytes_of(eight)));
    CHECK(read_surface(profile.path, 0.1).grid() == Grid{1, 8, 0.1});
  }
}

TEST_CASE("a written .npy starts its numbers at a multiple of 64 bytes, as the format asks") {
  const TestFile file(".npy");
  write_surface(HeightField(Array2d::Zero(2, 4), 0.1), file.path);
  const std::string bytes = read_whole_file(file.path);
  CHECK(bytes == npy(1, "<f8", "False", "(2, 4)", bytes_of(std::vector<double>(8))));
  CHECK((bytes.size() - 64) % 64 == 0);
}

TEST_CASE("a damaged .npy is refused with the byte and the reason") {
  const auto message = [](const std::string& bytes) { return message_of(TestFile(".npy", bytes).path); };
  const std::string good = npy(1, "<f8", "False", "(2, 4)", bytes_of(eight));
  CHECK(message("PK not numpy") == "byte 0: not a .npy file (its first bytes are not \\x93NUMPY)");
  CHECK(message(good.substr(0, 6)) == "byte 6: format must be 1 or 2 (got 0)");
  CHECK(message(good.substr(0, 9)) == "byte 9: the file ends in its header");
  CHECK(message(good.substr(0, 40)) == "byte 40: the file ends in its header");
  CHECK(message(good.substr(0, 150)) == "byte 150: the file must be 192 bytes long (got 150)");
  CHECK(message(good + "x") == "byte 192: the file must be 192 bytes long (got 193)");
  CHECK(message(npy(3, "<f8", "False", "(2, 4)", "")) == "byte 6: format must be 1 or 2 (got 3)");
  CHECK(message(npy(1, ">f8", "False", "(2, 4)", "")) == "byte 10: descr must be '<f8' or '<f4' (got '>f8')");
  CHECK(message(npy(1, "<f8", "True", "(2, 4)", "")) == "byte 10: fortran_order must be False (got True)");
  const std::string shape = "byte 6: shape must be (rows, cols) or (cols), each 1 to 16384 ";
  CHECK(message(npy(1, "<f8", "False", "(2, 2, 2)", "")) == shape + "(got (2, 2, 2))");
  CHECK(message(npy(1, "<f8", "False", "()", "")) == shape + "(got ())");
  CHECK(message(npy(1, "<f8", "False", "(2, 99999999999)", "")) == shape + "(got (2, 99999999999))");
  CHECK(message(npy(1, "<f8", "False", "(4, 2)", bytes_of(eight))) ==
        "Grid: cols must be between 4 and 16384 (got 2)");
  auto holed = eight;
  holed[3] = std::numeric_limits<double>::quiet_NaN();
  CHECK(message(npy(1, "<f8", "False", "(2, 4)", bytes_of(holed))) ==
        "byte 152: height must be finite (got nan)");
  CHECK(message_of(TestFile(".npy", good).path, {}) == "pixel_mm must be given: the file does not hold it");
}

TEST_CASE("a .npy whose header contradicts itself, or is none to numpy, is refused") {
  // numpy.lib.format: a dictionary literal with exactly the keys descr, fortran_order and shape, a tuple.
  const auto message = [](const std::string& entries) {
    std::string header = "{" + entries + "}";
    header.append(117 - header.size(), ' ').append("\n");
    const auto length = static_cast<char>(header.size());
    const std::string bytes = std::string("\x93NUMPY\x01\x00", 8) + length + '\0' + header + bytes_of(eight);
    return message_of(TestFile(".npy", bytes).path);
  };
  const std::string type = "'descr': '<f8', ", order = "'fortran_order': False, ", shape = "'shape': (2, 4)";
  CHECK(message(type + order + shape) == "read");
  CHECK(message("\"descr\":\"<f8\"," + order + shape + " , ") == "read");
  CHECK(message(type + order + shape + ", 'shape': (4, 2)") == "byte 6: the header states 'shape' twice");
  CHECK(message(type + order + "'shape': 8").starts_with("byte 6: shape must be (rows, cols)"));
  CHECK(message(type + order + "'shape': (8)").starts_with("byte 6: shape must be (rows, cols)"));
  CHECK(message(type + order) == "byte 6: the header must state descr, fortran_order and shape alone");
  CHECK(message(type + order + shape + ", 'more': 1").starts_with("byte 6: the header must state"));
  CHECK(message(type + "fortran_order: False, " + shape)
            .starts_with("byte 6: the header's keys must be quoted"));
  CHECK(message("'descr': '<f8' " + order + shape).starts_with("byte 6: the header must have a ','"));
}

TEST_CASE("a .csv of another country's spreadsheet is read") {
  for (const char* text : {"1,5;2;3;4\n", "1,5\t2\t3\t4\n"})
    CHECK(read_surface(TestFile(".csv", text).path, 0.1).height_um()(0, 0) == 1.5);
}

TEST_CASE("a .csv is read with commas or semicolons, comments, and its own pixel") {
  const TestFile file(".csv", "# heights in um\n# pixel_mm = 0.25\n1, 2,3,+4\r\n\n5;6;-7e-1 ; 8\n");
  const HeightField field = read_surface(file.path);
  CHECK(field.grid() == Grid{2, 4, 0.25});
  CHECK(field.height_um()(0, 3) == 4);
  CHECK(field.height_um()(1, 2) == -0.7);
  CHECK(read_surface(file.path, 0.25).pixel_mm() == 0.25);
  CHECK(message_of(file.path, 0.1) ==
        "the file states pixel_mm = 0.25, and 0.1 is asked for (a job's patch, or pixel_mm): mend the one "
        "that is "
        "wrong");
}

TEST_CASE("a .csv of one number per line is a profile") {
  const TestFile file(".csv",
                      "\xEF\xBB\xBF"
                      "1\n2\n3\n4\n5");
  const HeightField field = read_surface(file.path, 0.1);
  CHECK(field.grid() == Grid{1, 5, 0.1});
  CHECK(field.height_um()(0, 4) == 5);
}

TEST_CASE("a damaged .csv is refused with the line and the reason") {
  const auto message = [](std::string_view text) { return message_of(TestFile(".csv", text).path); };
  CHECK(message("1,2,3,4\n1,x,3,4\n") == "line 2, number 2: not a number (got \"x\")");
  CHECK(message("1,2,3,\n") == "line 1, number 4: not a number (got \"\")");
  CHECK(message("# one\n1,2,3,nan\n") == "line 2, number 4: height must be finite (got nan)");
  CHECK(message("1,2,3,4\n1,2,3\n") == "line 2: must hold 4 numbers as the rows before (got 3)");
  CHECK(message("# nothing\n") == "line 1: the file holds no numbers");
  CHECK(message("# pixel_mm = wide\n1,2,3,4\n") == "line 1: pixel_mm must be a number > 0");
  for (const char* pixel : {"0", "-1", "nan"})
    CHECK(message("# pixel_mm = " + std::string(pixel) + "\n1,2,3,4\n") ==
          "line 1: pixel_mm must be a number > 0");
  CHECK(message("1,2,3,\x1b[31m\n") == "line 1, number 4: not a number (got \"?[31m\")");
  CHECK_THROWS_WITH(read_surface(TestFile(".csv", "1,2,3,4\n# M\xfcller\n").path, 0.1),
                    Catch::Matchers::ContainsSubstring(".csv:2: must be UTF-8"));
  CHECK(message_of(TestFile(".csv", "1,2,3,4\n").path, {}) ==
        "pixel_mm must be given: the file does not hold it");
}

TEST_CASE("another ending is refused, a missing file says so") {
  const HeightField field(Array2d::Zero(1, 4), 0.1);
  CHECK_THROWS_WITH(write_surface(field, "surface.txt"), "surface.txt: a surface file ends in .npy or .csv");
  CHECK_THROWS_WITH(read_surface("surface.txt", 0.1), "surface.txt: a surface file ends in .npy or .csv");
  CHECK_THROWS_AS(read_surface("no_such_surface.npy", 0.1), FileMissing);
}
