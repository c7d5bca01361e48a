#include "libtexture/io/descriptor.hpp"

#include <cmath>

namespace libtexture {

std::vector<std::string> Descriptor::member_names() const {
  std::vector<std::string> names;
  for (const Member& member : members) names.emplace_back(member.name);
  return names;
}

bool is_given(const Descriptor& descriptor, const void* value) {
  if (descriptor.form == Descriptor::Form::number) return !std::isnan(*static_cast<const double*>(value));
  if (descriptor.form == Descriptor::Form::optional) return descriptor.size(value) == 1;
  return true;
}

}  // namespace libtexture
