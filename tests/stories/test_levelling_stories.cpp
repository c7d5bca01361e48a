// What the trade knows of levelling, asked of the catalogue's own tools. Common practice, no source, where
// not said otherwise.
#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/texture.hpp"
#include "libtexture/tool/crown_contact.hpp"
#include "steps.hpp"

using namespace libtexture;
using steps::step_of;

namespace {

const Coating coating{{{.name = "clear", .thickness_um = 60}}};

HeightField wave(double wavelength_mm, double rms_um) {
  return synthesize({{.wavelength_mm = wavelength_mm, .rms_um = rms_um, .bandwidth_octaves = 0.5}},
                    Grid{128, 128, 0.4}, 3);
}

// Clear [um] that a backing spends until the texture has halved, at one pressure.
double clear_to_halve_um(const HeightField& field, const Backing& backing, double pressure_kpa) {
  std::vector<double> at;
  for (int k = 1; k <= 40; ++k) at.push_back(0.5 * k);
  const Levelled levelled =
      level(field, at_working_pressure(backing, pressure_kpa), pressure_kpa,
            {.removal_um = at.back(), .report_at_um = at, .amplitude_tolerance_um = 0.01});
  for (std::size_t k = 0; k < at.size(); ++k)
    if (levelled.rms_um[k] <= field.rms_um() / 2) return at[k];
  return HUGE_VAL;
}

// Texture left [um] by 6 um of clear, with the pressure that the crown leaves.
double left_on_crown_um(const HeightField& field, const Step& step, const std::optional<Crown>& crown) {
  const CrownContact contact = crown_contact(step.motion, step.backing, crown);
  return level(field, at_working_pressure(step.backing, contact.pressure_kpa), contact.pressure_kpa,
               {.removal_um = 6, .amplitude_tolerance_um = 0.01})
      .surface.rms_um();
}

}  // namespace

TEST_CASE("a film disc levels the texture that a foam-backed disc leaves") {
  const HeightField field = wave(5, 0.6);
  Step film = step_of("P3000 film", "film on firm interface"),
       foam = step_of("P3000 foam-backed", "foam-backed disc on pad");
  film.passes = foam.passes = 12;
  film.stop.removed_um = foam.stop.removed_um = 3;
  const double after_film = simulate(field, coating, {film}).steps.back().rms_um;
  const double after_foam = simulate(field, coating, {foam}).steps.back().rms_um;
  CHECK(after_film < 0.35 * field.rms_um());  // most of it
  CHECK(after_foam > 0.80 * field.rms_um());  // hardly any of it
}

TEST_CASE("at equal pressure and starting surface a stiffer interface halves long waves for less clear") {
  const HeightField field = wave(8, 0.8);
  const Catalogue& catalogue = shipped_catalogue();
  const double hard = clear_to_halve_um(field, catalogue.backings.at("film on hard pad"), 1.4);
  const double firm = clear_to_halve_um(field, catalogue.backings.at("film on firm interface"), 1.4);
  const double soft = clear_to_halve_um(field, catalogue.backings.at("film on soft interface"), 1.4);
  CHECK(hard < firm);
  CHECK(firm < soft);
}

TEST_CASE(
    "grit moves the number of passes; the curve of texture against clear it moves a little, against the "
    "coarse") {
  const HeightField field = wave(3, 0.7);
  Step coarse = step_of("P1200 film", "film on firm interface"),
       fine = step_of("P3000 film", "film on firm interface");
  coarse.passes = fine.passes = 30;
  coarse.stop.removed_um = fine.stop.removed_um = 2.5;
  const History by_coarse = simulate(field, coating, {coarse}), by_fine = simulate(field, coating, {fine});
  CHECK(by_fine.passes.size() >= by_coarse.passes.size() * 3 / 2);
  // The curve of the fine grit, read at the coarse one's removals by straight lines between its passes.
  double most_um = 0;
  for (const HistoryRow& row : by_coarse.passes)
    for (std::size_t k = 1; k < by_fine.passes.size(); ++k) {
      const HistoryRow &a = by_fine.passes[k - 1], &b = by_fine.passes[k];
      if (row.removed_um < a.removed_um || row.removed_um > b.removed_um) continue;
      const double share = (row.removed_um - a.removed_um) / (b.removed_um - a.removed_um);
      const double more_um = row.rms_um - (a.rms_um + share * (b.rms_um - a.rms_um));
      // Two amplitude tolerances of .005 um, and the sag of a straight line under a convex curve between
      // passes.
      CHECK(more_um > -0.01 - 0.1 * (a.rms_um - b.rms_um));
      most_um = std::max(most_um, more_um);
    }
  // Coarse grains stand further apart in height and reach the valleys sooner: at most a tenth of the texture.
  CHECK(most_um > 0.01);
  CHECK(most_um < 0.1 * field.rms_um());
}

TEST_CASE(
    "the give of coarse grains costs clear: more than a tenth of the level with P800, hardly any with "
    "P3000") {
  // An independent solution of the same profile with the grains' exact law, p ~ exp(height/delta) at every
  // place (dense Newton, 256 pixels): 2.2 + 5 mm waves on the firm interface at 1.415 kPa to a quarter of
  // their rms take 1.23 um without grains, 1.28 with heights of 0.13 um (about P3000), 1.50 with 0.40 um
  // (P800 under a firmer hand).
  const HeightField field = synthesize(
      {{.wavelength_mm = 2.2, .rms_um = 0.7}, {.wavelength_mm = 5, .rms_um = 0.5}}, Grid{128, 128, 0.4}, 3);
  const Backing backing =
      at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.415);
  const auto clear_um = [&](double grain_um) {
    std::vector<double> at;
    for (int k = 1; k <= 60; ++k) at.push_back(0.05 * k);
    const Levelled levelled = level(
        field, backing, 1.415,
        {.removal_um = at.back(), .report_at_um = at, .amplitude_tolerance_um = 2e-3, .grain_um = grain_um});
    std::size_t k = 0;
    while (levelled.rms_um[k] > field.rms_um() / 4) ++k;
    const double part =
        (levelled.rms_um[k - 1] - field.rms_um() / 4) / (levelled.rms_um[k - 1] - levelled.rms_um[k]);
    return at[k - 1] + part * 0.05;
  };
  const double none = clear_um(0), fine = clear_um(0.13), coarse = clear_um(0.40);
  CHECK(fine > none);
  CHECK(fine < 1.06 * none);
  CHECK(coarse > 1.1 * none);
  CHECK(coarse < 1.3 * none);
}

TEST_CASE("on a flat panel the hard disc levels 8 mm waves better, on a 3 m crown the interface pad does") {
  const HeightField field = wave(8, 0.8);
  const Step hard = step_of("P2500 film", "film on hard pad"),
             pad = step_of("P2500 film", "film on firm interface");
  const Crown bonnet{3, {}};
  CHECK(left_on_crown_um(field, hard, std::nullopt) < left_on_crown_um(field, pad, std::nullopt));
  CHECK(left_on_crown_um(field, hard, bonnet) > left_on_crown_um(field, pad, bonnet));
}

TEST_CASE("a pass takes the clear and the time of the closed forms") {
  // docs/physics.md (22) and (28): 0.082 mm3/(N m), 25 N, 2.618 m/s, 0.1 m/s, 75 mm is 0.716 um, x 1.036 for
  // the spin; a quarter of a square metre takes 33 s.
  const Step middle = step_of("P2000 film", "film on firm interface");
  DiscUse fresh;
  CHECK(removal_of_pass_um(middle, 1e-6, 200, fresh) == Catch::Approx(0.741).epsilon(0.005));
  CHECK(pass_minutes(middle.motion, 0.25) * 60 == Catch::Approx(33.3).epsilon(0.002));
}

TEST_CASE(
    "wear rate, speed and loading move nothing on the levelling curve: clear removed is the natural clock") {
  const HeightField field = wave(3, 0.7);
  const Backing backing = shipped_catalogue().backings.at("film on firm interface");
  Step slow = step_of("P2500 film", "film on firm interface");
  slow.passes = 1;
  slow.abrasive.loading_um = 1e6;
  Step quick = slow;
  quick.abrasive.wear_rate_mm3_per_n_m *= 2;
  quick.abrasive.worn_wear_rate_mm3_per_n_m *= 2;
  quick.motion.feed_mm_per_s *= 2;
  const HistoryRow a = simulate(field, coating, {slow}).passes.front(),
                   b = simulate(field, coating, {quick}).passes.front();
  CHECK(std::abs(a.removed_um - b.removed_um) < 1e-10);  // R1: the same removal ...
  CHECK(std::abs(a.rms_um - b.rms_um) < 1e-10);          // ... leaves the same surface, to rounding
}
