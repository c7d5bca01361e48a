#include <string>

#include "catch.hpp"
#include "libtexture/io/json_file.hpp"
#include "libtexture/io/whole_file.hpp"

using namespace libtexture;

TEST_CASE("JSON is read with the line of each value") {
  const ValueFile file = parse_json("{\n \"a\": [1,\n  {\"b c\": 2.5}],\n \"d\": null\n}\n", "job.json");
  CHECK(file.values == Json::parse(R"({"a": [1, {"b c": 2.5}], "d": null})"));
  CHECK(place_of(file, "a[0]") == "job.json:2");
  CHECK(place_of(file, "a[1].\"b c\"") == "job.json:3");
  CHECK(place_of(file, "d") == "job.json:4");
}

TEST_CASE("JSON that is broken, doubled or too deep is refused by line") {
  std::string nested = "{\"schema\":\n";
  nested.append(200000, '[').append(200000, ']').append("}");
  CHECK_THROWS_WITH(parse_json("{\n\"a\": 1,\n", "job.json"),
                    Catch::Matchers::StartsWith("job.json:3: must be JSON"));
  CHECK_THROWS_WITH(parse_json("{\"a\": 1,\n\"a\": 2}", "job.json"),
                    "job.json:2: key 'a' stands twice in one table");
  CHECK_NOTHROW(parse_json(R"({"a": {"b": 1}, "c": {"b": 1}})", "job.json"));
  CHECK_THROWS_WITH(parse_json(nested, "job.json"), "job.json:2: values must be nested at most 32 deep");
  CHECK_THROWS_WITH(parse_json("{\"name\": \"T\xfcr\"}", "job.json"),
                    Catch::Matchers::StartsWith("job.json:1: must be UTF-8"));
}

TEST_CASE("a missing JSON file is a missing file") {
  CHECK_THROWS_AS(read_json("/nowhere/job.json"), FileMissing);
}
