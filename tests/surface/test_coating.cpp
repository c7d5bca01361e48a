#include "catch.hpp"
#include "libtexture/surface/coating.hpp"

using namespace libtexture;

TEST_CASE("a coating is as thick as its coats together, and its clear is the first") {
  const Coating coating{{{"clear", 45, 5}, {"base", 15}, {"primer", 40}}};
  coating.validate();
  CHECK(coating.total_um() == 100);
  CHECK(coating.clear().name == "clear");
}

TEST_CASE("a coating that cannot be is refused by name, rule and value") {
  CHECK_THROWS_WITH(Coating{}.validate(), "Coating: coats must hold at least one coat (got none)");
  CHECK_THROWS_WITH((Coat{"clear", -1}.validate()), "Coat: thickness_um must be > 0 (got -1 um)");
  CHECK_THROWS_WITH((Coat{"clear", 6000}.validate()), "Coat: thickness_um must be <= 5000 um (got 6000 um)");
  CHECK_THROWS_WITH((Coat{"clear", 45, -1}.validate()), "Coat: uncertainty_um must be >= 0 (got -1 um)");
  CHECK_THROWS_WITH((Coat{"clear", 45, 5, 0}.validate()), "Coat: hardness_mpa must be > 0 (got 0 MPa)");
  CHECK_THROWS_WITH((Coat{"", 45}.validate()), "Coat: name must not be empty (got \"\")");
  CHECK_THROWS_WITH((Coating{{{"clear"}}}.validate()), "Coat: thickness_um must be > 0 (got nan um)");
}
