#pragma once
// Doc strings, read from the /// comments of the headers at build time (doc_strings.py).

#include <cstddef>
#include <string_view>

namespace libtexture::python {

struct DocString {
  std::string_view name;
  const char* text;
};
inline constexpr DocString doc_strings[] = {
#include "doc_strings.inc"
};

constexpr const char* find_doc(std::string_view owner, std::string_view member) {
  for (const auto& [name, text] : doc_strings) {
    if (member.empty() ? name == owner
                       : name.size() == owner.size() + 2 + member.size() && name.starts_with(owner) &&
                             name.ends_with(member) && name.substr(owner.size(), 2) == "::")
      return text;
  }
  throw "the headers have no /// comment for this name";  // a build error: it is always evaluated by the
                                                          // compiler
}

/// A string as a template argument.
template <std::size_t N>
struct Name {
  char text[N] = {};
  constexpr Name(const char (&from)[N]) {  // NOLINT: implicit, so that doc<"Motion"> reads well
    for (std::size_t i = 0; i < N; ++i) text[i] = from[i];
  }
};

/// The comment of a declaration: doc<"Motion">, doc<"HeightField::rms_um">, doc<"synthesize">.
template <Name name>
inline constexpr const char* doc = find_doc(name.text, "");

}  // namespace libtexture::python
