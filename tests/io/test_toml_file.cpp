#include "catch.hpp"
#include "libtexture/io/toml_file.hpp"
#include "libtexture/io/whole_file.hpp"

using namespace libtexture;

namespace {

const ValueFile doors = parse_toml(R"(title = "doors"
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
  CHECK(place_of(doors, "doorstep") == "doors.toml:1");
  CHECK(place_of(doors, "") == "doors.toml:1");
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
  CHECK_THROWS_WITH(
      parse_toml("seed = 1\n[[panel]]\nname = \"T\xfcr\"\n", "job.toml"),
      "job.toml:3: must be UTF-8: save the file in that encoding (a spreadsheet calls it CSV UTF-8)");
  CHECK_NOTHROW(parse_toml("name = \"T\xc3\xbcr\"\n", "job.toml"));
}

TEST_CASE("a key of very many parts is refused, before a parser that calls itself meets it") {
  std::string key = "a";
  for (int part = 0; part < 14600; ++part) key += ".a";
  std::string value = "seed = 1\n", heading = "seed = 1\n[";
  value.append(key).append(" = 1\n");
  heading.append(key).append("]\n");
  for (const std::string& text : {value, heading})
    CHECK_THROWS_WITH(parse_toml(text, "job.toml"), "job.toml:2: a key must have at most 32 parts");
  CHECK_THROWS_WITH(parse_toml(std::string("a = ").append(200000, '['), "job.toml"),
                    "job.toml:1: brackets must be nested at most 32 deep");
  // Each key and each nest is short enough, together they are not.
  const std::string half = key.substr(0, 61);
  std::string both = "[";
  both.append(half).append("]\n").append(half).append(" = 1\n");
  CHECK_THROWS_WITH(parse_toml(both, "job.toml"), "job.toml:2: values must be nested at most 32 deep");
}

TEST_CASE("dots and brackets within texts and comments nest nothing") {
  const std::string dots(100, '.'), brackets(100, '[');
  const ValueFile file = parse_toml("a = \"" + dots + "\"  # " + dots + brackets + "\nb = '" + brackets +
                                        "'\nc = \"\"\"\n\\\"" + brackets + "\n\"\"\"\nd = [1.5, 2.5]\n",
                                    "job.toml");
  CHECK(file.values["a"] == dots);
  CHECK(file.values["d"] == Json::parse("[1.5, 2.5]"));
  CHECK(file.lines.at("d") == 6);
}

TEST_CASE("a number may begin with its point") {
  const Json values = parse_toml("a = .7\nb = [.5, -.25,+.5]\nc = \"=.7\"\nd.e = 1\n", "job.toml").values;
  CHECK(values == Json::parse(R"({"a": 0.7, "b": [0.5, -0.25, 0.5], "c": "=.7", "d": {"e": 1}})"));
}

// What people type: 77 files broken as users break them. The sentence says what to write instead.
TEST_CASE("a common slip is answered with what to write") {
  const auto answer = [](const std::string& line) {
    try {
      parse_toml("seed = 1\n" + line + "\n", "job.toml");
    } catch (const InvalidInput& error) {
      return std::string(error.what());
    }
    return std::string("accepted");
  };
  CHECK(answer("area_m2 = 0,9") == "job.toml:2: write 0.9, not 0,9: numbers have a decimal point");
  CHECK(answer("readings = [{ total_mil = 10,3 }]") ==
        "job.toml:2: write 10.3, not 10,3: numbers have a decimal point");
  CHECK(answer("name = “rear door”") ==
        "job.toml:2: put texts in straight quotes, \"rear door\", not in curly ones");
  CHECK(answer("name = rear door") == "job.toml:2: put texts in quotes: name = \"rear door\"");
  CHECK(answer("name = \"rear door") == "job.toml:2: the text has no closing quote: name = \"rear door\"");
  CHECK(answer("area_m2 = 0.9 m2") ==
        "job.toml:2: write the number alone, 0.9, without \"m2\": the key names the unit");
  CHECK(answer("area_m2: 0.9") == "job.toml:2: write area_m2 = ..., with an equals sign, not a colon");
}

TEST_CASE("a missing TOML file is a missing file") {
  CHECK_THROWS_AS(read_toml("/nowhere/job.toml"), FileMissing);
}
