#pragma once
// Doc strings, read from the /// comments of the headers at build time (doc_strings.py).

#include <string_view>

namespace libtexture::python {

/// The comment of a declaration: doc("Motion"), doc("HeightField::rms_um"), doc("synthesize"). Throws, at
/// import, where the headers have none.
const char* doc(std::string_view name);

}  // namespace libtexture::python
