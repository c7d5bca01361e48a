// From readings to what may be spent: the film between readings, and the budget rule by rule at the thinnest
// place.
#include <cstdio>

#include "libtexture/plan/budget.hpp"
#include "libtexture/plan/film_map.hpp"

using namespace libtexture;

int main() {
  // Invented readings of a factory-painted door: total film, everything above the metal.
  const Panel door{.name = "door",
                   .area_m2 = 0.8,
                   .readings = {{.x_mm = 100, .y_mm = 100, .total_um = 118},
                                {.x_mm = 500, .y_mm = 120, .total_um = 126},
                                {.x_mm = 900, .y_mm = 110, .total_um = 109},
                                {.x_mm = 500, .y_mm = 600, .total_mil = 4.8}}};
  const FilmMap map = film_map(door, {.kind = PaintKind::factory, .gauge = {.uncertainty_um = 2}});
  for (const Place place : {Place{900, 110}, Place{700, 110}, Place{900, 600}}) {
    const Film film = film_at(map, place);
    std::printf("at (%3.0f, %3.0f) mm: film %5.1f +- %4.1f um, clear %4.1f +- %.1f um\n", place.x_mm,
                place.y_mm, film.total_um, film.total_sd_um, film.clear_um, film.clear_sd_um);
  }
  const Film thinnest = film_at(map, {900, 110});
  Budget budget = published_budget();
  budget.reserve_um = 3;
  std::printf("What may go of %.1f um of clear, %.0f um kept in reserve:\n", thinnest.clear_um,
              budget.reserve_um);
  for (const BudgetRule& rule : budget_rules(budget, thinnest.clear_um))
    std::printf("  %-13s %4.1f um (%s): %5.1f um%s%s\n", name_of(rule.limit).data(), rule.limit_um,
                name_of(rule.basis).data(), rule.removable_um, rule.is_binding ? "  <- binds" : "",
                rule.is_on ? "" : "  (not counted)");
}
