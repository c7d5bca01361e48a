#include "libtexture/base/error.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "libtexture/base/text.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

InvalidInput::InvalidInput(const std::string& message) : std::invalid_argument(shown(message, 1000)) {}

NotConverged::NotConverged(std::string_view solver, int iterations_, double residual_, double tolerance_)
    : std::runtime_error(std::string(solver) + " did not converge: residual " + to_text(residual_) +
                         " after " + std::to_string(iterations_) +
                         " iterations (asked: " + to_text(tolerance_) + ")"),
      iterations(iterations_),
      residual(residual_),
      tolerance(tolerance_) {}

NotConverged::NotConverged(const std::string& place, const NotConverged& cause)
    : std::runtime_error(place + cause.what()),
      iterations(cause.iterations),
      residual(cause.residual),
      tolerance(cause.tolerance) {}

void require(bool ok, std::string_view owner, std::string_view field, std::string_view rule,
             std::string_view value) {
  if (ok) return;
  std::string message(owner);
  message.append(": ")
      .append(field)
      .append(" ")
      .append(rule)
      .append(" (got ")
      .append(shown(value, 120))
      .append(")");
  throw InvalidInput(message);
}

void require(bool ok, std::string_view owner, std::string_view field, std::string_view rule, double value) {
  if (ok) return;
  const std::string unit = unit_of(field);
  require(false, owner, field, rule, to_text(value) + (unit.empty() ? "" : " " + unit));
}

void require_positive(double value, std::string_view owner, std::string_view field) {
  require(std::isfinite(value) && value > 0, owner, field, "must be > 0", value);
}

void require_not_negative(double value, std::string_view owner, std::string_view field) {
  require(std::isfinite(value) && value >= 0, owner, field, "must be >= 0", value);
}

void require_within(double value, double least, double most, std::string_view owner, std::string_view field) {
  if (value >= least && value <= most) return;  // before the rule is spelt out: this runs in loops
  require(false, owner, field, "must be between " + to_text(least) + " and " + to_text(most), value);
}

void require_name(std::string_view name, std::string_view owner, std::string_view field) {
  constexpr std::size_t most_letters = 200;
  require(!name.empty(), owner, field, "must not be empty", "\"\"");
  std::string quoted = "\"";
  quoted.append(shown(name)).append("\"");
  require(letter_count(name) <= most_letters, owner, field, "must be at most 200 letters long", quoted);
  for (std::string_view rest = name; !rest.empty();) {
    const Letter letter = first_letter(rest);
    require(is_plain(letter), owner, field, "must be one line without control characters", quoted);
    rest.remove_prefix(letter.bytes);
  }
}

namespace {

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
    }
  }
  return row.back();
}

}  // namespace

std::string nearest_word(std::string_view word, const std::string* first, const std::string* last) {
  constexpr std::size_t longest_word = 100;  // the distance takes a time of word times candidate
  if (word.size() > longest_word) return "";
  std::string best;
  std::size_t least =
      std::max<std::size_t>(2, word.size() / 2) + 1;  // further off than half the word is no help
  for (const std::string* candidate = first; candidate != last; ++candidate) {
    const std::size_t distance = edit_distance(word, *candidate);
    if (distance < least) {
      least = distance;
      best = *candidate;
    }
  }
  return best;
}

}  // namespace libtexture
