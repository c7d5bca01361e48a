#include "libtexture/tool/abrasive.hpp"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

std::string words_of(const std::vector<Wetness>& made_for) {
  std::string words;
  for (const Wetness wetness : made_for) words.append(words.empty() ? "" : " or ").append(name_of(wetness));
  return words;
}

// Names of the fields that hold a number: those that may have a range.
std::vector<std::string> number_names() {
  std::vector<std::string> names;
  for_each_field<Abrasive>([&](const auto& field) {
    using Member = std::remove_reference_t<decltype(std::declval<Abrasive&>().*(field.member))>;
    if constexpr (std::is_same_v<Member, double> || std::is_same_v<Member, std::optional<double>>)
      names.emplace_back(field.name);
  });
  return names;
}

void validate_ranges(const Abrasive& abrasive) {
  if (abrasive.ranges.empty()) return;
  // Sampling validates an abrasive a million times: messages are made only where they are needed.
  static const auto names = number_names();
  for (const auto& [name, range] : abrasive.ranges) {
    if (std::find(names.begin(), names.end(), name) == names.end()) {
      const std::string nearest = nearest_word(name, names.data(), names.data() + names.size());
      require(false, "Abrasive", "ranges",
              "must name numbers of an abrasive" + (nearest.empty() ? "" : " (nearest: " + nearest + ")"),
              name);
    }
    if (!(range[0] <= range[1]))
      require(false, "Abrasive", "ranges", "must be [least, most] of " + name,
              to_text(range[0]) + " to " + to_text(range[1]));
  }
}

// Estimates, relative to dry: water carries the swarf away, so a disc cuts longer; it also lifts and cools
// the grains.
WetnessEffect effect_on_dry(Wetness wetness) {
  switch (wetness) {
    case Wetness::damp:
      return {0.85, 2, 0.85};
    case Wetness::wet:
      return {0.75, 3, 0.80};
    default:
      return {1, 1, 1};
  }
}

// Why an abrasive is not used outside what it is made for (common practice in the trade, no source).
std::string reason_against(const Abrasive& abrasive, Wetness wetness) {
  const bool is_wetter = wetness > abrasive.made_for.front();
  if (abrasive.carrier == Carrier::compound) return "its figures hold for nothing else";
  if (!is_wetter) return "without water it loads and heats";
  if (abrasive.carrier == Carrier::film_disc)
    return "water turns the dust into slurry, which packs under the film and hides the cut";
  return "its figures hold for nothing wetter";
}

}  // namespace

void Abrasive::validate() const {
  require_name(name, "Abrasive", "name");
  require(!made_for.empty(), "Abrasive", "made_for", "must name at least one of dry, damp, wet", "none");
  require_positive(wear_rate_mm3_per_n_m, "Abrasive", "wear_rate_mm3_per_n_m");
  // Here and below: far beyond any abrasive, a slip of the unit (estimates).
  require_within(wear_rate_mm3_per_n_m, least_wear_mm3_per_n_m, most_wear_mm3_per_n_m, "Abrasive",
                 "wear_rate_mm3_per_n_m");
  require_within(worn_wear_rate_mm3_per_n_m, 0, wear_rate_mm3_per_n_m, "Abrasive",
                 "worn_wear_rate_mm3_per_n_m");
  require_positive(loading_um, "Abrasive", "loading_um");
  require_within(loading_um, least_loading_um, most_loading_um, "Abrasive",
                 "loading_um");  // below, a disc is full at its first touch
  if (groove_depth_um)
    require_within(*groove_depth_um, least_groove_depth_um, most_groove_depth_um, "Abrasive",
                   "groove_depth_um");
  require_within(groove_depth_cap, least_groove_depth_cap, most_groove_depth_cap, "Abrasive",
                 "groove_depth_cap");
  require_within(groove_coverage, 1e-3, 1000, "Abrasive", "groove_coverage");
  require_within(groove_half_angle_deg, 1, 89, "Abrasive", "groove_half_angle_deg");
  require_within(groove_pressure_exponent, 0, 1, "Abrasive", "groove_pressure_exponent");
  require_within(stray_marks_per_dm2_um, 0, 1000, "Abrasive", "stray_marks_per_dm2_um");
  require_within(wear_rate_log_sd, 0, 5, "Abrasive", "wear_rate_log_sd");
  if (stated_grain_um) require_within(*stated_grain_um, 0.01, 2000, "Abrasive", "stated_grain_um");
  require_within(wear_rate_family_share, 0, 1, "Abrasive", "wear_rate_family_share");
  if (groove_depth_log_sd) require_within(*groove_depth_log_sd, 0, 2, "Abrasive", "groove_depth_log_sd");
  if (groove_depth_clear_share)
    require_within(*groove_depth_clear_share, 0, 1, "Abrasive", "groove_depth_clear_share");
  validate_ranges(*this);
}

const std::string& family_of(const Abrasive& abrasive) {
  return abrasive.family.empty() ? abrasive.name : abrasive.family;
}

double reference_groove_depth_um(const Abrasive& abrasive) {
  abrasive.validate();
  return abrasive.groove_depth_um.value_or(0.164 * abrasive.grit.median_um() / 10.3);
}

Abrasive at_grit(const Abrasive& abrasive, const Grit& grit, double exponent) {
  abrasive.validate();
  require_within(exponent, 0, 3, "at_grit", "exponent");
  const double size = grit.median_um() / abrasive.grit.median_um();
  const double wear = std::pow(size, exponent);
  const auto scale_range = [](Abrasive& a, const char* name, double factor) {
    if (const auto range = a.ranges.find(name); range != a.ranges.end())
      for (double& bound : range->second) bound *= factor;
  };

  Abrasive other = abrasive;
  other.family = family_of(abrasive);
  other.grit = grit;
  other.wear_rate_mm3_per_n_m *= wear;
  other.worn_wear_rate_mm3_per_n_m *= wear;
  other.stated_grain_um = abrasive.stated_grain_um.value_or(abrasive.grit.median_um());
  other.loading_um *= size;
  if (other.groove_depth_um) *other.groove_depth_um *= size;
  scale_range(other, "wear_rate_mm3_per_n_m", wear);
  scale_range(other, "worn_wear_rate_mm3_per_n_m", wear);
  scale_range(other, "loading_um", size);
  scale_range(other, "groove_depth_um", size);
  if (const auto at = other.name.find(abrasive.grit.name()); at != std::string::npos)
    other.name.replace(at, abrasive.grit.name().size(), grit.name());
  other.source = "scaled by grain size from " + abrasive.name + " (" + abrasive.source + ")";
  return other;
}

double log_size(const Abrasive& abrasive) {
  return abrasive.stated_grain_um ? std::log(abrasive.grit.median_um() / *abrasive.stated_grain_um) : 0;
}

WetnessEffect wetness_effect(const Abrasive& abrasive, Wetness wetness) {
  abrasive.validate();
  const auto& made_for = abrasive.made_for;
  if (std::find(made_for.begin(), made_for.end(), wetness) == made_for.end())
    require(false, abrasive.name, "wetness",
            "must be what the abrasive is made for, " + words_of(made_for) + ": " +
                reason_against(abrasive, wetness),
            name_of(wetness));
  const WetnessEffect here = effect_on_dry(wetness);
  const WetnessEffect stated = effect_on_dry(made_for.front());
  return {here.wear_rate / stated.wear_rate, here.loading / stated.loading,
          here.groove_depth / stated.groove_depth};
}

double hardness_wear_factor(double hardness_mpa) {
  require_positive(hardness_mpa, "clear coat", "hardness_mpa");
  return std::pow(hardness_mpa / 200, hardness_wear_exponent);
}

double wear_rate_mm3_per_n_m(const Abrasive& abrasive, double removed_um) {
  abrasive.validate();
  require_not_negative(removed_um, "wear rate", "removed_um");
  const double worn = abrasive.worn_wear_rate_mm3_per_n_m;
  return worn + (abrasive.wear_rate_mm3_per_n_m - worn) * std::exp(-removed_um / abrasive.loading_um);
}

}  // namespace libtexture
