#include "libtexture/plan/cautions.hpp"

#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

std::vector<Statement> cautions_of(Wetness wetness, Carrier carrier, const std::string& step) {
  if (wetness != Wetness::dry)
    return {{.kind = StatementKind::water_conducts, .step = step},
            {.kind = StatementKind::slurry_harms, .step = step}};
  return {{.kind = carrier == Carrier::compound ? StatementKind::compound_flings : StatementKind::dust_harms,
           .step = step}};
}

}  // namespace

std::vector<Statement> general_cautions() {
  return {{.kind = StatementKind::local_codes_prevail},
          {.kind = StatementKind::predictions_are_estimates},
          {.kind = StatementKind::clear_does_not_return},
          {.kind = StatementKind::old_paint_harms},
          {.kind = StatementKind::solvent_burns},
          {.kind = StatementKind::vibration_harms},
          {.kind = StatementKind::noise_harms}};
}

std::vector<Statement> cautions_of(const Step& step) {
  return cautions_of(step.wetness, step.abrasive.carrier, title_of(step));
}

std::vector<Statement> bench_cautions(Wetness wetness) {
  std::vector<Statement> cautions = cautions_of(wetness, Carrier::film_disc, "");
  cautions.insert(cautions.begin(), {.kind = StatementKind::local_codes_prevail});
  cautions.push_back({.kind = StatementKind::vibration_harms});
  cautions.push_back({.kind = StatementKind::noise_harms});
  return cautions;
}

}  // namespace libtexture
