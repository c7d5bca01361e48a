#pragma once
// Statement: one thing that the library has to say, as a value: its kind, what it is about, and its figures.

#include <map>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/base/statement_kind.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

/// One thing to say. Names that do not apply are empty.
struct Statement {
  StatementKind kind = StatementKind::clear_struck_through;  ///< what it says
  std::string panel = {};                                    ///< the panel that it is about
  std::string sequence = {};                                 ///< the sequence that it is about
  std::string other_sequence = {};                           ///< the sequence that it is set against
  std::string step = {};                                     ///< the step that it is about
  std::vector<std::string> abrasives = {};                   ///< the abrasives that it is about
  std::string backing = {};                                  ///< the backing that it is about
  std::string field = {};                                    ///< the field of a job that it is about
  std::map<std::string, double> figures = {};  ///< its figures by name; the name ends in the unit

  /// The sentence, led by the panel, step or abrasives that it does not name itself: "door: The clear ...".
  /// InvalidInput where it lacks a figure or a name that its kind needs.
  std::string text(Symbols symbols = Symbols::ascii) const;

  void validate() const;
  bool operator==(const Statement&) const = default;
  static constexpr auto fields() {
    return FieldTable{
        required("kind", &Statement::kind),         optional("panel", &Statement::panel),
        optional("sequence", &Statement::sequence), optional("other_sequence", &Statement::other_sequence),
        optional("step", &Statement::step),         optional("abrasives", &Statement::abrasives),
        optional("backing", &Statement::backing),   optional("field", &Statement::field),
        optional("figures", &Statement::figures)};
  }
};

/// Adds the statements that `all` does not hold yet.
void add_new(std::vector<Statement>& all, const std::vector<Statement>& some);

}  // namespace libtexture
