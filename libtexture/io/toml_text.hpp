#pragma once
// TOML as people type it: slips that are mended, and advice on those that are not.

#include <string>
#include <string_view>

namespace libtexture {

/// The text with ".7" made "0.7", which TOML asks for. InvalidInput "name:line: ..." for keys of more than
/// most_nested parts and brackets nested deeper, which a parser that calls itself would not survive.
std::string mended_toml(std::string_view text, const std::string& name);

/// What to write in place of a line that is no TOML: "write 0.9, not 0,9 ..."; "" = no guess.
std::string toml_advice(std::string_view line);

}  // namespace libtexture
