#include <algorithm>
#include <cctype>
#include <cstring>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/statement.hpp"

using namespace libtexture;

namespace {

// A statement of a kind with every figure and name that its sentence asks for.
Statement filled(StatementKind kind) {
  Statement statement{.kind = kind, .panel = "", .figures = {{"samples", 4000}}};
  const std::string sentence = sentence_of(kind);
  const std::regex place(R"re(\{(\w+)(?:\.\.(\w+))?(?::\w+|:%\d)?\})re");
  for (auto it = std::sregex_iterator(sentence.begin(), sentence.end(), place); it != std::sregex_iterator();
       ++it)
    for (const std::string& name : {(*it)[1].str(), (*it)[2].str()}) {
      if (name.empty()) continue;
      if (name == "sequence") statement.sequence = "P2000 first";
      if (name == "other_sequence") statement.other_sequence = "P1200 first";
      if (name == "step") statement.step = "level";
      if (name == "backing") statement.backing = "hard pad";
      if (name == "field") statement.field = "budget.reserve_um";
      statement.figures[name] = 0.5;
    }
  return statement;
}

}  // namespace

TEST_CASE("every kind of statement has a name of its own and whole sentences") {
  std::set<std::string> names;
  for (const auto& [kind, name] : names_of(StatementKind{})) {
    INFO(name);
    CHECK(names.insert(name).second);
    const std::string text = filled(kind).text();
    REQUIRE(text.size() > 20);
    CHECK((std::isupper(static_cast<unsigned char>(text.front())) ||
           std::isdigit(static_cast<unsigned char>(text.front()))));
    CHECK(text.back() == '.');
    // Nothing of the pattern is left over.
    CHECK(text.find_first_of("{}[]") == std::string::npos);
    CHECK(text.find("  ") == std::string::npos);
  }
  CHECK(names.size() > 50);
}

TEST_CASE("statements are in plain words: no names of people or makers, and numbers with a leading zero") {
  // Words with a capital inside a sentence: standards and authorities, and the names of filled().
  const std::set<std::string> allowed{"UK",  "EN",        "FFP2",       "FFP3",       "A(8",
                                      "T/8", "Directive", "2002/44/EC", "2003/10/EC", "dB(A",
                                      "ISO", "P2000",     "P1200",      "kPa"};
  for (const auto& [kind, name] : names_of(StatementKind{})) {
    const std::string text = filled(kind).text();
    INFO(name << ": " << text);
    std::istringstream words(text);
    bool is_start = true;
    for (std::string word; words >> word;) {
      const bool ends = std::strchr(".:?", word.back());
      word.erase(std::remove_if(word.begin(), word.end(), [](char c) { return std::strchr("\",.;)", c); }),
                 word.end());
      if (word.size() > 1 && word.front() == '(') word.erase(0, 1);
      if (!is_start && std::any_of(word.begin(), word.end(), [](unsigned char c) { return std::isupper(c); }))
        CHECK((allowed.count(word) == 1 || word.find("sqrt") == 0));
      is_start = ends;
    }
    CHECK_FALSE(std::regex_search(text, std::regex(R"re((^|[^0-9])\.[0-9])re")));
    // Units are those of the figures' names, so that they can be written in other symbols.
    CHECK_FALSE(std::regex_search(std::string(sentence_of(kind)), std::regex(R"re(\b(um|mm|m2|kPa)\b)re")));
  }
}

TEST_CASE("a statement is led by what its sentence does not name") {
  Statement odd{.kind = StatementKind::odd_reading,
                .panel = "door",
                .figures = {{"reading_um", 393.7}, {"usual_um", 205.0}}};
  CHECK(odd.text() ==
        "door: One reading is 393.7 um (15.50 mil) among others of about 205.0 um (8.07 mil). Check its "
        "unit, and "
        "whether there is filler (over = \"filler\" then leaves it out) or the place was sanded before.");
  CHECK(odd.text(Symbols::unicode).find("393.7 \u00b5m (15.50 mil)") != std::string::npos);
  const Statement grain{
      .kind = StatementKind::grain_extrapolated, .abrasives = {"a", "b"}, .figures = {{"grain_um", 7.3}}};
  CHECK(grain.text().find("a, b: The grain of 7.3 um") == 0);
  const Statement spot{.kind = StatementKind::make_test_spot, .step = "level"};
  CHECK(spot.text().find("Test spot: ") == 0);
}

TEST_CASE("a name is taken as it stands, whatever it looks like") {
  const Statement same{
      .kind = StatementKind::spends_the_same, .sequence = "{other_sequence}", .other_sequence = "[um]"};
  CHECK(same.text() == "{other_sequence} spends the same clear as [um].");
}

TEST_CASE("an optional part is said where its figure is given") {
  Statement mask{.kind = StatementKind::mask_edges};
  CHECK(mask.text() == "Mask edges and body lines, trim and openings.");
  mask.figures["edge_length_m"] = 7.6;
  CHECK(mask.text() == "Mask 7.6 m of edges and body lines, trim and openings.");
}

TEST_CASE("a statement that lacks a figure is refused") {
  const Statement missed{.kind = StatementKind::target_missed, .figures = {{"samples", 4000}}};
  CHECK_THROWS_AS(missed.validate(), InvalidInput);
  CHECK_THROWS_WITH(missed.text(),
                    Catch::Matchers::StartsWith("Statement: figures must hold all that \"The target"));
}

TEST_CASE("equal statements are added once") {
  const Statement wash{.kind = StatementKind::wash}, strip{.kind = StatementKind::strip};
  std::vector<Statement> all{wash};
  add_new(all, {strip, wash});
  CHECK(all == std::vector<Statement>{wash, strip});
}
