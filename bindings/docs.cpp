#include "docs.hpp"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <string>

namespace libtexture::python {

namespace {

struct DocString {
  std::string_view name;
  const char* text;
};

// In the order of their names.
constexpr DocString doc_strings[] = {
#include "doc_strings.inc"
};

}  // namespace

const char* doc(std::string_view name) {
  const auto* found =
      std::lower_bound(std::begin(doc_strings), std::end(doc_strings), name,
                       [](const DocString& entry, std::string_view key) { return entry.name < key; });
  if (found == std::end(doc_strings) || found->name != name)
    throw std::logic_error("the headers have no /// comment for " + std::string(name));
  return found->text;
}

}  // namespace libtexture::python
