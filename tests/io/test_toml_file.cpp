#include "catch.hpp"
#include "libtexture/io/toml_file.hpp"
#include "libtexture/io/whole_file.hpp"

using namespace libtexture;

namespace {

const TomlFile doors = parse_toml(R"(title = "doors"
size = [1, 2.5]

[door]
width_mm = 900
"key with spaces" = true

[[panel]]
name = "front"
[[panel]]
name = "rear"
readings = [
  { total_um = 240 },
  { total_um = 250, x_mm = nan },
]
)",
                                  "doors.toml");

}  // namespace

TEST_CASE("TOML values keep their types") {
  CHECK(doors.values["title"] == "doors");
  CHECK(doors.values["size"] == Json::parse("[1, 2.5]"));
  CHECK(doors.values["size"][0].is_number_integer());
  CHECK(doors.values["door"]["key with spaces"] == true);
  CHECK(doors.values["panel"][1]["readings"][0]["total_um"] == 240);
}

TEST_CASE("each value knows its line") {
  CHECK(place_of(doors, "title") == "doors.toml:1");
  CHECK(place_of(doors, "door") == "doors.toml:4");
  CHECK(place_of(doors, "door.width_mm") == "doors.toml:5");
  CHECK(place_of(doors, "door.\"key with spaces\"") == "doors.toml:6");
  CHECK(place_of(doors, "panel[1].name") == "doors.toml:11");
  CHECK(place_of(doors, "panel[1].readings[1].x_mm") == "doors.toml:14");
}

TEST_CASE("a path that is not in the file stands where its longest beginning does") {
  CHECK(place_of(doors, "panel[1].area_m2") == "doors.toml:10");
  CHECK(place_of(doors, "panel[1].readings[0].total_mil") == "doors.toml:13");
  CHECK(place_of(doors, "doorstep") == "doors.toml");
  CHECK(place_of(doors, "") == "doors.toml");
}

TEST_CASE("an error of a value gets file and line") {
  const auto read = [](const char* path) {
    return with_place(doors, [&] {
      expect(false, 3, path, "a text");
      return 0;
    });
  };
  CHECK_THROWS_WITH(read("panel[0].name"), "doors.toml:9: panel[0].name: must be a text (got 3)");
}

TEST_CASE("a syntax error names file and line") {
  try {
    parse_toml("seed = 1\npatch = { rows = 5,, }\n", "job.toml");
    FAIL("two commas were accepted");
  } catch (const InvalidInput& error) {
    CHECK_THAT(error.what(), Catch::Matchers::StartsWith("job.toml:2: "));
    CHECK(std::string(error.what()).find('\n') == std::string::npos);
  }
  CHECK_THROWS_AS(parse_toml("seed = 1\nseed = 2\n", "job.toml"), InvalidInput);
}

TEST_CASE("a byte that is not UTF-8 is told with the line it stands on") {
  // "T\xfcr" is Latin-1; UTF-8 has two bytes for the second letter (RFC 3629).
  CHECK_THROWS_WITH(parse_toml("seed = 1\n[[panel]]\nname = \"T\xfcr\"\n", "job.toml"),
                    "job.toml:3: must be UTF-8: save the file in that encoding");
  CHECK_NOTHROW(parse_toml("name = \"T\xc3\xbcr\"\n", "job.toml"));
}

TEST_CASE("a missing TOML file is a missing file") {
  CHECK_THROWS_AS(read_toml("/nowhere/job.toml"), FileMissing);
}
