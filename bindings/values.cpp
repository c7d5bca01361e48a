#include "values.hpp"

namespace libtexture::python {

void require_known(const py::kwargs& given, const std::vector<std::string>& known, const std::string& owner) {
  for (const auto& item : given) {
    const auto word = item.first.cast<std::string>();
    if (std::find(known.begin(), known.end(), word) != known.end()) continue;
    const std::string nearest = nearest_word(word, known.data(), known.data() + known.size());
    throw InvalidInput(owner + ": unknown field " + word +
                       (nearest.empty() ? "" : "; nearest known: " + nearest));
  }
}

void throw_missing(const std::string& owner, const std::string& field) {
  throw InvalidInput(owner + ": " + field + " is missing");
}

}  // namespace libtexture::python
