#include "libtexture/plan/cautions.hpp"

#include "libtexture/process/disc_contact.hpp"

namespace libtexture {

namespace {

StatementKind caution_of(const Step& step) {
  if (step.wetness != Wetness::dry) return StatementKind::water_conducts;
  return step.abrasive.carrier == Carrier::compound ? StatementKind::compound_flings
                                                    : StatementKind::dust_harms;
}

}  // namespace

std::vector<Statement> general_cautions() {
  return {{.kind = StatementKind::predictions_are_estimates},
          {.kind = StatementKind::clear_does_not_return},
          {.kind = StatementKind::old_paint_harms},
          {.kind = StatementKind::vibration_harms}};
}

std::vector<Statement> cautions_of(const Step& step) {
  return {{.kind = caution_of(step), .step = title_of(step)}};
}

}  // namespace libtexture
