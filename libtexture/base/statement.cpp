#include "libtexture/base/statement.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

#include "libtexture/base/chance.hpp"
#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text.append(text.empty() ? "" : ", ").append(name);
  return text;
}

// The part of a text before a mark, which is taken off it together with the mark; all of it where there is no
// mark.
std::string_view taken_until(std::string_view& text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  const std::string_view part = text.substr(0, at);
  text.remove_prefix(at == std::string_view::npos ? text.size() : at + mark.size());
  return part;
}

// A statement on its way into words. Functions return none where a figure or a name is not given.
class Writer {
 public:
  Writer(const Statement& statement, Symbols symbols) : statement_(statement), symbols_(symbols) {}

  // A sentence without its optional parts that lack a figure.
  std::optional<std::string> sentence(std::string_view pattern) const {
    std::string text;
    while (!pattern.empty()) {
      const auto before = sentence_part(taken_until(pattern, "["));
      if (!before) return std::nullopt;
      text += *before;
      text += sentence_part(taken_until(pattern, "]")).value_or("");
    }
    return text;
  }

  // Names that the sentence leaves out.
  std::string lead(std::string_view pattern) const {
    std::string text;
    const auto add = [&](const std::string& name, std::string_view place) {
      if (!name.empty() && pattern.find(place) == std::string_view::npos) text += name + ": ";
    };
    add(statement_.panel, "{panel}");
    add(statement_.step, "{step}");
    add(joined(statement_.abrasives), "{abrasives}");
    return text;
  }

 private:
  std::optional<std::string> sentence_part(std::string_view pattern) const {
    std::string text;
    while (!pattern.empty()) {
      text += taken_until(pattern, "{");
      std::string_view form = taken_until(pattern, "}");
      if (form.empty()) continue;
      const std::string_view place = taken_until(form, ":");
      const auto words = place_text(place, form);
      if (!words) return std::nullopt;
      text += *words;
    }
    return text;
  }

  std::optional<std::string> place_text(std::string_view place, std::string_view form) const {
    if (const auto name = name_of_place(place)) return name->empty() ? std::nullopt : name;
    const std::string first(taken_until(place, ".."));
    const auto low = figure(first);
    if (!low) return std::nullopt;
    if (form == "cases" && !figure("samples")) return std::nullopt;
    if (place.empty()) return number_text(first, *low, form);
    const auto high = figure(std::string(place));
    return high ? std::optional(range_text(first, *low, *high, form)) : std::nullopt;
  }

  std::optional<std::string> name_of_place(std::string_view place) const {
    if (place == "panel") return statement_.panel;
    if (place == "sequence") return statement_.sequence;
    if (place == "other_sequence") return statement_.other_sequence;
    if (place == "step") return statement_.step;
    if (place == "abrasives") return joined(statement_.abrasives);
    if (place == "backing") return statement_.backing;
    if (place == "field") return statement_.field;
    return std::nullopt;
  }

  std::optional<double> figure(const std::string& name) const {
    const auto found = statement_.figures.find(name);
    return found == statement_.figures.end() ? std::nullopt : std::optional(found->second);
  }

  std::string with_unit(const std::string& number, std::string_view name) const {
    const std::string unit = in_symbols(unit_of(name), symbols_);
    return unit.empty() ? number : number + " " + unit;
  }

  static std::string digits(double value, std::string_view form) {
    return form.empty() ? to_text(value) : to_text(value, form.back() - '0');
  }

  std::string number_text(const std::string& name, double value, std::string_view form) const {
    if (form == "film") return um_and_mil(value, symbols_);
    if (form == "count") return to_text(value, 0);
    if (form == "cases") return chance_text(value, static_cast<int>(*figure("samples")));
    if (form.starts_with('%')) return digits(100 * value, form) + " %";
    return with_unit(digits(value, form), name);
  }

  std::string range_text(const std::string& name, double low, double high, std::string_view form) const {
    if (form == "film") return um_and_mil(low, high, symbols_);
    return with_unit(digits(low, form) + " to " + digits(high, form), name);
  }

  const Statement& statement_;
  const Symbols symbols_;
};

}  // namespace

std::string Statement::text(Symbols symbols) const {
  const char* const pattern = sentence_of(kind);
  const Writer writer(*this, symbols);
  const auto sentence = writer.sentence(pattern);
  require(sentence.has_value(), "Statement", "figures",
          "must hold all that \"" + std::string(pattern) + "\" needs",
          std::to_string(figures.size()) + " figures");
  return writer.lead(pattern) + *sentence;
}

void Statement::validate() const {
  text();
}

void add_new(std::vector<Statement>& all, const std::vector<Statement>& some) {
  for (const Statement& one : some)
    if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

}  // namespace libtexture
