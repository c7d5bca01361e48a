#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/toml_text.hpp"

using namespace libtexture;

TEST_CASE("a point that begins a number gets its zero, every other one stays") {
  CHECK(mended_toml("a = .7", "t") == "a = 0.7");
  CHECK(mended_toml("a = [-.7,.5]", "t") == "a = [-0.7,0.5]");
  CHECK(mended_toml("a.b = \"x = .7\" # = .7", "t") == "a.b = \"x = .7\" # = .7");
}

TEST_CASE("what is nested too deep is refused with its line") {
  CHECK_THROWS_AS(mended_toml(std::string("a = 1\nb = ").append(33, '['), "t"), InvalidInput);
  CHECK_NOTHROW(mended_toml(std::string("b = ").append(32, '['), "t"));
}

TEST_CASE("a line of any length gets its advice in no time, or none") {
  CHECK(toml_advice("a = 0,9") == "write 0.9, not 0,9: numbers have a decimal point");
  CHECK(toml_advice("a = ,9") == "write 0.9, not ,9: numbers have a decimal point");
  CHECK(toml_advice("a = 1").empty());
  CHECK_NOTHROW(toml_advice(std::string("a = ").append(10000000, 'x')));
}
