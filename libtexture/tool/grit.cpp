#include "libtexture/tool/grit.hpp"

#include <algorithm>
#include <array>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

struct Grade {
  std::string_view name;
  double median_um;
  bool is_extrapolated = false;
};

constexpr std::array grades{
    // P: ISO 6344-3 / FEPA 43-2, from memory (P2500 published elsewhere).
    Grade{"P240", 58.5}, Grade{"P280", 52.2}, Grade{"P320", 46.2}, Grade{"P360", 40.5}, Grade{"P400", 35.0},
    Grade{"P500", 30.2}, Grade{"P600", 25.8}, Grade{"P800", 21.8}, Grade{"P1000", 18.3}, Grade{"P1200", 15.3},
    Grade{"P1500", 12.6}, Grade{"P2000", 10.3}, Grade{"P2500", 8.4},
    // These grades exist in ISO 6344-3:2021; the medians are our power law through P1500 to P2500, not the
    // standard's.
    Grade{"P3000", 7.3, true}, Grade{"P4000", 5.8, true}, Grade{"P5000", 4.8, true},
    // JIS R 6001:1987, published table; its tolerances run from 1.0 um (1000) to .3 um (8000).
    Grade{"JIS 1000", 11.5}, Grade{"JIS 1200", 9.5}, Grade{"JIS 1500", 8.0}, Grade{"JIS 2000", 6.7},
    Grade{"JIS 2500", 5.5}, Grade{"JIS 3000", 4.0}, Grade{"JIS 4000", 3.0}, Grade{"JIS 6000", 2.0},
    Grade{"JIS 8000", 1.2},
    // CAMI: ANSI B74.18, which defines nothing above 600; 400 and 600 published, 320 from memory.
    Grade{"CAMI 320", 36.0}, Grade{"CAMI 400", 23.6}, Grade{"CAMI 600", 16.0}};

bool is_bare_number(std::string_view name) {
  const bool is_marked = name.starts_with('#');
  const std::string_view digits = is_marked ? name.substr(1) : name;
  return !digits.empty() && digits.find_first_not_of("0123456789") == std::string_view::npos;
}

std::string known_grades() {
  std::string list;
  for (const Grade& grade : grades) list.append(list.empty() ? "" : ", ").append(grade.name);
  return list;
}

}  // namespace

Grit::Grit(std::string_view name) {
  require(
      !is_bare_number(name), "Grit", "name",
      "must say its system, for example \"P3000\" (about 7 um) or \"JIS 3000\" (4 um), which differ by 1.8 "
      "times",
      name);
  const auto grade =
      std::find_if(grades.begin(), grades.end(), [&](const Grade& g) { return g.name == name; });
  if (grade == grades.end()) require(false, "Grit", "name", "must be one of " + known_grades(), name);
  name_ = grade->name;
  median_um_ = grade->median_um;
  has_grade_ = true;
  is_extrapolated_ = grade->is_extrapolated;
}

Grit Grit::of_median_um(double median_um) {
  require_positive(median_um, "Grit", "median_um");
  require_within(median_um, 0.01, 2000, "Grit", "median_um");  // from a polishing oxide to gravel (estimates)
  Grit grit;
  grit.name_ = to_text(median_um) + " um";
  grit.median_um_ = median_um;
  return grit;
}

}  // namespace libtexture
