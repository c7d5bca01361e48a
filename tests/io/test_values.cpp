#include "catch.hpp"
#include "libtexture/io/values.hpp"

using namespace libtexture;

namespace {

enum class Colour { red, dark_blue };
constexpr std::array<std::pair<Colour, const char*>, 2> names_of(Colour) {
  return {{{Colour::red, "red"}, {Colour::dark_blue, "dark_blue"}}};
}

struct Wheel {
  int spokes = 0;
  std::optional<double> radius_mm = {};

  void validate() const { require(spokes >= 3, "Wheel", "spokes", "must be >= 3", spokes); }
  bool operator==(const Wheel&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("spokes", &Wheel::spokes), optional("radius_mm", &Wheel::radius_mm)};
  }
};

struct Cart {
  std::string name;
  double load_n = unset;
  double sag_um = unset;
  std::uint64_t seed = 1;
  bool is_covered = false;
  Colour colour = Colour::red;
  std::vector<Wheel> wheels;
  std::optional<Wheel> spare;
  std::array<double, 2> size_mm{1, 2};
  std::map<std::string, std::array<double, 2>> ranges;
  Grit grit = Grit::of_median_um(3);

  bool operator==(const Cart&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("name", &Cart::name),
                      required("load_n", &Cart::load_n),
                      optional("sag_um", &Cart::sag_um),
                      optional("seed", &Cart::seed),
                      optional("is_covered", &Cart::is_covered),
                      optional("colour", &Cart::colour),
                      optional("wheels", &Cart::wheels),
                      optional("spare", &Cart::spare),
                      optional("size_mm", &Cart::size_mm),
                      optional("ranges", &Cart::ranges),
                      optional("grit", &Cart::grit)};
  }
};

Cart read(const char* text) {
  return value_from<Cart>(Json::parse(text));
}

}  // namespace

TEST_CASE("what is written as JSON reads back the same") {
  Cart cart;
  cart.name = "hand cart";
  cart.load_n = 0.1;  // has no exact decimal
  cart.sag_um = 1.0 / 3;
  cart.seed = 18446744073709551615u;
  cart.is_covered = true;
  cart.colour = Colour::dark_blue;
  cart.wheels = {Wheel{8, 300.0}, Wheel{3, {}}};
  cart.spare = Wheel{5, {}};
  cart.ranges["load_n"] = {1, 2.5};
  cart.grit = Grit("P1500");
  const std::string text = to_json(cart).dump();
  CHECK(value_from<Cart>(Json::parse(text)) == cart);
}

TEST_CASE("a number or an option that was never given is left out") {
  Cart cart;
  cart.load_n = 1;
  const Json json = to_json(cart);
  CHECK_FALSE(json.contains("sag_um"));
  CHECK_FALSE(json.contains("spare"));
  CHECK(json["colour"] == "red");
}

TEST_CASE("a grit is the name of its grade, or a table with its median") {
  CHECK(to_json(Grit("P1500")) == Json("P1500"));
  CHECK(to_json(Grit::of_median_um(3)) == Json::parse(R"({"median_um": 3})"));
  CHECK(value_from<Grit>(Json::parse(R"({"median_um": 3})")).median_um() == 3);
  CHECK_THROWS_AS(value_from<Grit>(Json("3000"), "grit"), BadValue);
  CHECK_THROWS_WITH(value_from<Grit>(Json(3), "abrasive.grit"),
                    "abrasive.grit: must be a grade such as \"P2500\", or { median_um = 3 } (got 3)");
}

TEST_CASE("an unknown key is answered with the nearest known one") {
  CHECK_THROWS_WITH(read(R"({"name": "a", "load_n": 1, "wheels": [{"spokes": 4}, {"spokkes": 4}]})"),
                    "wheels[1]: unknown key 'spokkes'; nearest known: spokes");
  CHECK_THROWS_WITH(read(R"({"nmae": "a", "load_n": 1})"), "unknown key 'nmae'; nearest known: name");
  CHECK_THROWS_WITH(read(R"({"name": "a", "load_n": 1, "spare": {"zzzzzzzz": 1}})"),
                    "spare: unknown key 'zzzzzzzz'; known: spokes radius_mm");
}

TEST_CASE("a key with a wrong unit is answered with the known unit") {
  CHECK_THROWS_WITH(read(R"({"name": "a", "load_lbf": 1})"), "unknown key 'load_lbf'; nearest known: load_n");
  CHECK_THROWS_WITH(read(R"({"name": "a", "load_n": 1, "sag_mm": 1})"),
                    "unknown key 'sag_mm'; nearest known: sag_um");
}

TEST_CASE("a missing key is named") {
  CHECK_THROWS_WITH(read(R"({"name": "a"})"), "missing key 'load_n'");
  CHECK_THROWS_WITH(read(R"({"name": "a", "load_n": 1, "wheels": [{}]})"), "wheels[0]: missing key 'spokes'");
}

TEST_CASE("a wrong type names the key, what is expected and what came") {
  const auto error_of = [](const std::string& member) -> std::string {
    try {
      read((R"({"name": "a", "load_n": 1, )" + member + "}").c_str());
    } catch (const BadValue& error) {
      return error.what();
    }
    return "no error";
  };
  CHECK(error_of(R"("sag_um": "thin")") == "sag_um: must be a number (got \"thin\")");
  CHECK(error_of(R"("sag_um": null)") == "sag_um: must be a number (got nothing)");
  CHECK(error_of(R"("seed": -1)") == "seed: must be a whole number from 0 to 18446744073709551615 (got -1)");
  CHECK(error_of(R"("seed": true)") ==
        "seed: must be a whole number from 0 to 18446744073709551615 (got true)");
  CHECK(error_of(R"("is_covered": 1)") == "is_covered: must be true or false (got 1)");
  CHECK(error_of(R"("colour": "pink")") == "colour: must be one of red, dark_blue (got \"pink\")");
  CHECK(error_of(R"("wheels": {})") == "wheels: must be a list (got a table)");
  CHECK(error_of(R"("wheels": [3])") == "wheels[0]: must be a table (got 3)");
  CHECK(error_of(R"("size_mm": [1])") == "size_mm: must be a list of 2 (got [1])");
  CHECK(error_of(R"("size_mm": [1, "x"])") == "size_mm[1]: must be a number (got \"x\")");
  CHECK(error_of(R"("ranges": {"load of cart": [1, []]})") ==
        "ranges.\"load of cart\"[1]: must be a number (got [])");
  CHECK_THROWS_WITH(value_from<Cart>(Json(3)), "must be a table (got 3)");
}

TEST_CASE("a whole number may be written as 4.0, but not as 4.5 or beyond its range") {
  CHECK(value_from<int>(Json(4.0)) == 4);
  CHECK(value_from<int>(Json(-2147483648.0)) == std::numeric_limits<int>::min());
  CHECK_THROWS_WITH(value_from<int>(Json(4.5), "passes"), "passes: must be a whole number (got 4.5)");
  CHECK_THROWS_WITH(value_from<int>(Json(3000000000), "passes"),
                    "passes: must be between -2147483648 and 2147483647 (got 3000000000)");
  CHECK_THROWS_AS(value_from<int>(Json(1e300), "passes"), BadValue);
  CHECK_THROWS_AS(value_from<int>(Json(18446744073709551615u), "passes"), BadValue);
}

TEST_CASE("a number that is not finite is refused") {
  CHECK_THROWS_WITH(value_from<double>(Json(std::nan("")), "force_n"),
                    "force_n: must be a finite number (got nan)");
  CHECK_THROWS_AS(value_from<double>(Json(std::numeric_limits<double>::infinity())), BadValue);
  CHECK_THROWS_AS(value_from<int>(Json(std::nan("")), "passes"), BadValue);
}

TEST_CASE("a broken rule has the path of its struct before it and leads to its key") {
  try {
    read(R"({"name": "a", "load_n": 1, "wheels": [{"spokes": 3}, {"spokes": 2}]})");
    FAIL("two spokes were accepted");
  } catch (const BadValue& error) {
    CHECK(std::string(error.what()) == "wheels[1]: Wheel: spokes must be >= 3 (got 2)");
    CHECK(error.path == "wheels[1].spokes");
  }
}
