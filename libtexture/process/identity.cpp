#include "libtexture/process/identity.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <set>

namespace libtexture {

namespace {

// One text for one value; every digit counts.
void append(std::string& text, double value) {
  std::array<char, 32> digits{};
  text.append(" ").append(digits.data(),
                          std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr);
}

void append(std::string& text, const std::optional<double>& value) {
  if (value)
    append(text, *value);
  else
    text += " -";
}

template <HasFields T>
void append(std::string& text, const T& value) {
  for_each_field<T>([&](const auto& field) { append(text, value.*field.member); });
}

template <class Tool>
std::string key_by_name(const Tool& tool, const char* kind) {
  return tool.name.empty() ? std::string("unnamed ") + kind + ":" + build_of(tool) : tool.name;
}

template <class Tool>
std::string label_by_name(const Tool& tool, const char* kind) {
  return tool.name.empty() ? std::string("unnamed ") + kind : tool.name;
}

}  // namespace

std::string build_of(const Abrasive& abrasive) {
  std::string text(name_of(abrasive.carrier));
  append(text, abrasive.grit.median_um());
  return text;
}

std::string build_of(const Backing& backing) {
  std::string text(name_of(backing.support));
  if (backing.skin) append(text, *backing.skin);
  for (const Layer& layer : backing.layers) append(text += " /", layer);
  append(text += " /", backing.spring_stiffness_kpa_per_um);
  append(text, backing.half_space_modulus_mpa);
  append(text, backing.half_space_poisson);
  return text;
}

std::string build_of(const Motion& motion) {
  std::string text;
  append(text, motion.disc_diameter_mm);
  append(text, motion.orbit_mm);
  return text;
}

std::string key_of(const Abrasive& abrasive) {
  return key_by_name(abrasive, "abrasive");
}
std::string key_of(const Backing& backing) {
  return key_by_name(backing, "backing");
}
std::string key_of(const Motion& motion) {
  return key_by_name(motion, "motion");
}

std::string family_key_of(const Abrasive& abrasive) {
  return abrasive.family.empty() ? key_of(abrasive) : abrasive.family;
}

std::string label_of(const Abrasive& abrasive) {
  return label_by_name(abrasive, "abrasive");
}
std::string label_of(const Backing& backing) {
  return label_by_name(backing, "backing");
}
std::string label_of(const Motion& motion) {
  return label_by_name(motion, "motion");
}

std::string title_of(const Step& step) {
  return step.name.empty() ? label_of(step.abrasive) : step.name;
}

std::vector<std::string> titles_of(const std::vector<Step>& steps) {
  std::set<std::string> taken;  // names that are given stay as they are
  for (const Step& step : steps)
    if (!step.name.empty()) taken.insert(step.name);
  std::vector<std::string> titles;
  for (const Step& step : steps) {
    std::string title = title_of(step);
    for (int count = 2; step.name.empty() && !taken.insert(title).second; ++count)
      title = title_of(step) + " (" + std::to_string(count) + ")";
    titles.push_back(std::move(title));
  }
  return titles;
}

std::vector<Step> with_titles(std::vector<Step> steps) {
  const std::vector<std::string> titles = titles_of(steps);
  for (std::size_t place = 0; place < steps.size(); ++place) steps[place].name = titles[place];
  return steps;
}

std::optional<std::size_t> place_of(const std::vector<Step>& steps, const std::string& title) {
  const std::vector<std::string> titles = titles_of(steps);
  const auto found = std::find(titles.begin(), titles.end(), title);
  if (found == titles.end()) return std::nullopt;
  return static_cast<std::size_t>(found - titles.begin());
}

}  // namespace libtexture
