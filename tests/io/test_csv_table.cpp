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
