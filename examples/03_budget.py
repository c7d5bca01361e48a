"""From readings to what may be spent: the film between readings, and the budget rule by rule at the thinnest place."""

import libtexture as lt

# Invented readings of a factory-painted door: total film, everything above the metal.
door = lt.Panel(
    name="door",
    area_m2=0.8,
    readings=[
        lt.Reading(x_mm=100, y_mm=100, total_um=118),
        lt.Reading(x_mm=500, y_mm=120, total_um=126),
        lt.Reading(x_mm=900, y_mm=110, total_um=109),
        lt.Reading(x_mm=500, y_mm=600, total_mil=4.8),
    ],
)
paint = lt.Paint(kind="factory", gauge=lt.Gauge(uncertainty_um=2))
for x_mm, y_mm in [(900, 110), (700, 110), (900, 600)]:
    film = lt.film_at(door, paint, x_mm=x_mm, y_mm=y_mm)
    print(
        f"at ({x_mm:3}, {y_mm:3}) mm: film {film.total_um:5.1f} +- {film.total_sd_um:4.1f} um, "
        f"clear {film.clear_um:4.1f} +- {film.clear_sd_um:.1f} um"
    )
thinnest = lt.film_at(door, paint, x_mm=900, y_mm=110)
budget = lt.published_budget().replace(reserve_um=3)
print(f"What may go of {thinnest.clear_um:.1f} um of clear, {budget.reserve_um:.0f} um kept in reserve:")
for rule in lt.budget_rules(budget, clear_um=thinnest.clear_um):
    notes = ("  <- binds" if rule.is_binding else "") + ("" if rule.is_on else "  (not counted)")
    print(f"  {rule.limit:13} {rule.limit_um:4.1f} um ({rule.basis}): {rule.removable_um:5.1f} um{notes}")
