#include "catch.hpp"
#include "libtexture/io/value_file.hpp"

using namespace libtexture;

TEST_CASE("a value stands on the line of its longest known beginning") {
  const ValueFile file{"job.toml", {}, {{"panel[0]", 3}, {"panel[0].name", 4}}};
  CHECK(place_of(file, "panel[0].name") == "job.toml:4");
  CHECK(place_of(file, "panel[0].area_m2") == "job.toml:3");
  CHECK(place_of(file, "panel[0].names") == "job.toml:3");
  CHECK(place_of(file, "coating") == "job.toml:1");
}

TEST_CASE("an error of a value gets the file and the line") {
  const ValueFile file{"job.toml", {}, {{"seed", 2}}};
  CHECK_THROWS_WITH(with_place(file,
                               [] {
                                 expect(false, 3, "seed", "a text");
                                 return 0;
                               }),
                    "job.toml:2: seed: must be a text (got 3)");
  CHECK_THROWS_WITH(refuse_line("job.toml", 7, "no"), "job.toml:7: no");
}
