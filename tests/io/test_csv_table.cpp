#include <string>

#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/csv_table.hpp"

using namespace libtexture;

namespace {

CsvTable table_of(std::string_view text) {
  const Folder folder;
  return read_csv_table(folder.file("table.csv", text), {"disc", "removed_um"}, {"passes"});
}

std::string error_of(std::string_view text) {
  try {
    table_of(text);
  } catch (const InvalidInput& error) {
    const std::string what = error.what();
    return what.substr(what.find(".csv") + 4);
  }
  return "none";
}

}  // namespace

TEST_CASE("a table is read as a spreadsheet or a hand writes it") {
  // Quotes round texts (RFC 4180), and the byte order mark that spreadsheets put before UTF-8.
  for (const std::string_view text :
       {"# passes = 6\ndisc,removed_um\na,1.5\n",
        "\xEF\xBB\xBF# passes = 6;;\r\n\"disc\";\"removed_um\"\r\n;;\r\n\"a\"; +1.5\r\n",
        "# our bench = invented\n\n#passes=6\nremoved_um , disc\n1.5 , a"}) {
    const CsvTable table = table_of(text);
    REQUIRE(table.rows.size() == 1);
    CHECK(csv_text(table, table.rows[0], "disc") == "a");
    CHECK(csv_number(table, table.rows[0], "removed_um") == 1.5);
    CHECK(csv_setting(table, "passes", 0) == 6);
  }
}

TEST_CASE("what a table leaves out is empty, or as the caller says") {
  const CsvTable table = table_of("removed_um\n2\n");
  CHECK_FALSE(has_column(table, "disc"));
  CHECK(csv_text(table, table.rows[0], "disc").empty());
  CHECK(csv_setting(table, "passes", 3) == 3);
}

TEST_CASE("a table is read as labs and spreadsheets of other countries write it") {
  for (const std::string_view text : {"Disc;Removed (um)\na;1,5\n", "sep=;\r\nDISC;removed_um\r\na;1,5\r\n",
                                      "disc\tRemoved \u00b5m\na\t1,5\n", "disc,removed_um,,\na,1.5,,\n",
                                      "\"disc\",\"removed_um\"\n\"a\",\"1.5\"\n"}) {
    INFO(text);
    const CsvTable table = table_of(text);
    REQUIRE(table.rows.size() == 1);
    CHECK(csv_text(table, table.rows[0], "disc") == "a");
    CHECK(csv_number(table, table.rows[0], "removed_um") == 1.5);
  }
  const CsvTable quoted = table_of("disc,removed_um\n\"a, the first\",2\n");
  CHECK(csv_text(quoted, quoted.rows[0], "disc") == "a, the first");
  const CsvTable empty = table_of("disc\tremoved_um\n\t2\n");
  CHECK(csv_text(empty, empty.rows[0], "disc").empty());
}

TEST_CASE("a decimal comma among commas is answered with what to write") {
  CHECK(
      error_of("disc,removed_um\na,0,9\n") ==
      ":2: must hold 2 cells as the heading (got 3); a number with a comma is two cells: write 0.9, not 0,9");
  const CsvTable table = table_of("# passes = 6,5\nremoved_um\n\"0,9\"\n");
  CHECK_THROWS_WITH(
      csv_number(table, table.rows[0], "removed_um"),
      Catch::Matchers::EndsWith(":3: removed_um must be a number (got \"0,9\"); write 0.9, not 0,9"));
  CHECK_THROWS_WITH(csv_setting(table, "passes", 0), Catch::Matchers::EndsWith("write 6.5, not 6,5"));
}

TEST_CASE("a table in another encoding is told so, by line") {
  // A spreadsheet's ANSI file, and its Unicode text (UTF-16).
  CHECK(error_of("disc,removed_um\nM\xfcller,1\n").starts_with(":2: must be UTF-8"));
  CHECK(error_of(std::string_view("\xff\xfe"
                                  "d\0i\0",
                                  6))
            .starts_with(":1: must be UTF-8"));
  CHECK(error_of(std::string_view("d\0i\0s\0c\0", 8)).starts_with(":1: must be UTF-8"));
}

TEST_CASE("a table's messages show no control characters, and cut what is long") {
  CHECK(error_of("di\x1b"
                 "[31msc\na\n")
            .starts_with(":1: unknown column \"di?[31msc\""));
  CHECK(error_of(std::string(1000000, 'x') + "\na\n").size() < 200);
}

TEST_CASE("a rule stands on the line of its setting, or on that of the heading") {
  const CsvTable table = table_of("\n# passes = 0\ndisc\na\n");
  CHECK_THROWS_WITH(refuse_csv_rule(table, "TestSpot: passes must be > 0"),
                    Catch::Matchers::EndsWith(".csv:2: TestSpot: passes must be > 0"));
  CHECK_THROWS_WITH(refuse_csv_rule(table, "TestSpot: after_um must hold one"),
                    Catch::Matchers::EndsWith(".csv:3: TestSpot: after_um must hold one"));
}

TEST_CASE("columns that nobody asks for are left out where the caller says so") {
  const Folder folder;
  const CsvTable table =
      read_csv_table(folder.file("t.csv", "date,disc\n1,a\n"), {"disc"}, {}, OtherColumns::left_out);
  CHECK(csv_text(table, table.rows[0], "disc") == "a");
}

TEST_CASE("a bad table is refused by line") {
  CHECK(error_of("disk,removed_um\na,1\n") == ":1: unknown column \"disk\"; nearest known: \"disc\"");
  CHECK(error_of("disc,disc\na,b\n") == ":1: column \"disc\" stands twice");
  CHECK(error_of("# pases = 6\ndisc\na\n") == ":1: unknown setting \"pases\"; nearest known: \"passes\"");
  CHECK(error_of("# passes = 6\n# passes = 6\ndisc\na\n") == ":2: setting \"passes\" stands twice");
  CHECK(error_of("disc,removed_um\n\na\n") == ":3: must hold 2 cells as the heading (got 1)");
  CHECK(error_of("disc,removed_um\n") == ":1: the file holds no rows below a heading");
  const CsvTable table = table_of("# passes = six\nremoved_um\n1.5 um\n");
  CHECK_THROWS_WITH(csv_number(table, table.rows[0], "removed_um"),
                    Catch::Matchers::EndsWith(".csv:3: removed_um must be a number (got \"1.5 um\")"));
  CHECK_THROWS_WITH(csv_setting(table, "passes", 0),
                    Catch::Matchers::EndsWith(".csv:1: passes must be a number (got \"six\")"));
}
