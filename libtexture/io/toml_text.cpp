#include "libtexture/io/toml_text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <regex>

#include "libtexture/base/text.hpp"
#include "libtexture/io/value_file.hpp"

namespace libtexture {

namespace {

bool is_digit(char letter) {
  return letter >= '0' && letter <= '9';
}

/// Walks over TOML outside its texts and comments.
class Mender {
 public:
  Mender(std::string_view text_, const std::string& name_) : text(text_), name(name_) {}

  std::string mended() {
    while (at < text.size()) {
      const char letter = text[at];
      if (letter == '#') {
        take(std::min(text.find('\n', at), text.size()) - at);
      } else if (letter == '"' || letter == '\'') {
        take(quoted_size());
        met(letter);
      } else {
        meet(letter);
        take(1);
      }
    }
    return std::move(result);
  }

 private:
  void meet(char letter) {
    if (letter == '\n') ++line;
    if (letter == '.') {
      const char next = at + 1 < text.size() ? text[at + 1] : '\0';
      if (begins_value() && is_digit(next)) result += '0';
      require_shallow(++dots, "a key must have at most " + std::to_string(most_nested) + " parts");
    } else if (std::string_view("[]{}=,\n").find(letter) != std::string_view::npos) {
      dots = 0;
    }
    if (letter == '[' || letter == '{')
      require_shallow(++depth, "brackets must be nested at most " + std::to_string(most_nested) + " deep");
    if (letter == ']' || letter == '}') depth = std::max(0, depth - 1);
    if (letter != ' ' && letter != '\t') met(letter);
  }

  void met(char letter) { last = {last[1], letter}; }

  /// Whether the next letter is the first of a value, or follows its sign.
  bool begins_value() const {
    const auto opens = [](char letter) { return letter == '=' || letter == '[' || letter == ','; };
    return opens(last[1]) || ((last[1] == '-' || last[1] == '+') && opens(last[0]));
  }

  /// Bytes of the text that begins here, its quotes included; up to the line's end where it is not closed.
  std::size_t quoted_size() const {
    const char quote = text[at];
    const std::string_view rest = text.substr(at);
    const bool is_long = rest.starts_with(std::string(3, quote));
    const std::string_view closing = rest.substr(0, is_long ? 3 : 1);
    for (std::size_t i = closing.size(); i < rest.size(); ++i) {
      if (rest[i] == '\\' && quote == '"')
        ++i;
      else if (rest.substr(i).starts_with(closing))
        return i + closing.size();
      else if (rest[i] == '\n' && !is_long)
        return i;
    }
    return rest.size();
  }

  void take(std::size_t count) {
    const std::string_view taken = text.substr(at, count);
    if (count > 1) line += static_cast<int>(std::count(taken.begin(), taken.end(), '\n'));
    result.append(taken);
    at += taken.size();
  }

  void require_shallow(int count, const std::string& rule) const {
    if (count > most_nested) refuse_line(name, line, rule);
  }

  std::string_view text;
  const std::string& name;
  std::string result = {};
  std::size_t at = 0;
  int line = 1, dots = 0, depth = 0;
  std::array<char, 2> last = {'\n', '\n'};  // letters met, without blanks
};

bool has_curly_quote(std::string_view line) {
  constexpr std::array<std::string_view, 8> curly = {"\u201c", "\u201d", "\u201e", "\u201f",
                                                     "\u2018", "\u2019", "\u201a", "\u00ab"};
  return std::any_of(curly.begin(), curly.end(),
                     [&](std::string_view quote) { return line.find(quote) != std::string_view::npos; });
}

}  // namespace

std::string mended_toml(std::string_view text, const std::string& name) {
  return Mender(text, name).mended();
}

std::string toml_advice(std::string_view whole_line) {
  constexpr std::size_t most_bytes = 300;  // what a slip is read from; regular expressions call themselves
  const std::string line(whole_line.substr(0, most_bytes));
  if (has_curly_quote(line)) return "put texts in straight quotes, \"rear door\", not in curly ones";
  std::smatch found;
  static const std::regex comma_decimal(R"(=\s*([+-]?\d*),(\d+)\s*([},#\r]|$))");
  if (std::regex_search(line, found, comma_decimal)) {
    const std::string whole = found[1].length() ? found[1].str() : "0";
    return "write " + whole + "." + found[2].str() + ", not " + found[1].str() + "," + found[2].str() +
           ": numbers have a decimal point";
  }
  static const std::regex open_quote(R"(=\s*"[^"]*$)");
  if (std::regex_search(line, open_quote)) return "the text has no closing quote: name = \"rear door\"";
  static const std::regex bare_text(R"(^\s*([\w.-]+)\s*=\s*([A-Za-z][^"'#=]*?)\s*(#.*)?$)");
  if (std::regex_search(line, found, bare_text))
    return "put texts in quotes: " + found[1].str() + " = \"" + shown(found[2].str()) + "\"";
  static const std::regex with_unit(R"(=\s*([+-]?[\d.]+)\s*([A-Za-z%]+\w*)\s*(#.*)?$)");
  if (std::regex_search(line, found, with_unit))
    return "write the number alone, " + found[1].str() + ", without \"" + found[2].str() +
           "\": the key names the unit";
  static const std::regex with_colon(R"(^\s*([\w.-]+)\s*:)");
  if (std::regex_search(line, found, with_colon))
    return "write " + found[1].str() + " = ..., with an equals sign, not a colon";
  return "";
}

}  // namespace libtexture
