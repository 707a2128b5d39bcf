// Forms by their names, and what is no form.
#include "form/named.hpp"

#include "catch.hpp"

using namespace fairblade;

TEST_CASE("forms by name and by thickness") {
  const auto plain = form::form_named("0012");
  REQUIRE(plain);
  CHECK(plain->thickness_ratio == 0.12);
  CHECK(plain->plain());
  for (const char* same : {"12%", "12 %", "0.12", "0,12", " NACA 0012 ", "naca0012"}) {
    INFO(same);
    const auto other = form::form_named(same);
    REQUIRE(other);
    CHECK(other->thickness_ratio == Approx(0.12));
    CHECK(other->plain());
  }
  // NACA Report 492: first digit after the dash the leading-edge index, second the place of greatest thickness in tenths.
  const auto modified = form::form_named("0010-35");
  REQUIRE(modified);
  CHECK(modified->thickness_ratio == 0.10);
  CHECK(modified->leading_edge_index == 3);
  CHECK(modified->max_thickness_at == 0.5);
}

TEST_CASE("what is no form is refused with a remedy") {
  const auto told = [](const char* text) {
    const auto form = form::form_named(text);
    return form ? std::string("accepted") : one_line(form.faults().front());
  };
  CHECK(told("12") == "FORM: \"12\" may be a percentage or a length: write 12% of the chord, or 0012");
  CHECK(told("9") == "FORM: \"9\" may be a percentage or a length: write 9% of the chord, or 0009");
  CHECK(told("2412") == "FORM: \"2412\" is a cambered section: a rudder's is symmetrical: the first two digits are 00");
  CHECK(told("0012-65x") == "FORM: \"0012-65x\" ends in \"-65x\": write two digits there, as in 0012-45");
  CHECK(told("0012-05") ==
        "FORM: \"0012-05\" has a sharp leading edge (index 0): write an index from 1 to 9; the plain form's is 6");
  CHECK(told("0012-67") ==
        "FORM: \"0012-67\" has its greatest thickness at 7 tenths of the chord: the published equations go from 2 to 6");
  for (const char* bad : {"", "foil", "001", "00012", "0000", "0.9", "-0.12", "50%", "0%", "nan", "0012-", "12mm"}) {
    INFO(bad);
    CHECK(told(bad) != "accepted");
  }
}
