#pragma once
// Errors: bad input (InvalidInput) and a solve that failed (NotConverged).

#include <stdexcept>
#include <string>
#include <string_view>

namespace libtexture {

/// Bad input: what() is one line that names the owner, the field, the rule, the value and the unit,
/// for example "Motion: force_n must be > 0 (got -3 N)". Python: ValueError. What it quotes may be any bytes:
/// what() is UTF-8 without control characters, cut after 1000 letters.
class InvalidInput : public std::invalid_argument {
 public:
  explicit InvalidInput(const std::string& message);
};

/// A solve that did not reach its tolerance; carries the work done and the accuracy reached.
class NotConverged : public std::runtime_error {
 public:
  NotConverged(std::string_view solver, int iterations, double residual, double tolerance);
  /// The same with the place of the work before its message.
  NotConverged(const std::string& place, const NotConverged& cause);
  int iterations;
  double residual;
  double tolerance;
};

/// Throws InvalidInput "owner: field rule (got value unit)" unless `ok`. The unit is read off the field's
/// name.
void require(bool ok, std::string_view owner, std::string_view field, std::string_view rule, double value);

/// As above, for a value that is not a number; it is cut after 120 letters.
void require(bool ok, std::string_view owner, std::string_view field, std::string_view rule,
             std::string_view value);

/// Throws InvalidInput unless `value` is finite and > 0.
void require_positive(double value, std::string_view owner, std::string_view field);

/// Throws InvalidInput unless `value` is finite and >= 0.
void require_not_negative(double value, std::string_view owner, std::string_view field);

/// Throws InvalidInput unless least <= value <= most.
void require_within(double value, double least, double most, std::string_view owner, std::string_view field);

/// Throws InvalidInput unless `name` is one line of 1 to 200 letters: tables and reports set it in a row.
void require_name(std::string_view name, std::string_view owner, std::string_view field);

/// What `work()` returns; an error of its own, InvalidInput or NotConverged, gets the place before its
/// message, "sequence P2000 first, step refine: Backing: ...".
template <class Work>
auto working_at(const std::string& place, Work&& work) {
  try {
    return work();
  } catch (const InvalidInput& error) {
    throw InvalidInput(place + error.what());
  } catch (const NotConverged& error) {
    throw NotConverged(place, error);
  }
}

/// The candidate nearest in spelling to `word` (edit distance), or "" when none comes near.
std::string nearest_word(std::string_view word, const std::string* first, const std::string* last);

}  // namespace libtexture
