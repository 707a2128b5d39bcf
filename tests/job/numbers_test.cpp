// Numbers out of text. Expected values by hand.
#include "job/numbers.hpp"

#include "catch.hpp"
#include "job/json_trouble.hpp"

using namespace fairblade;
using namespace fairblade::job;

TEST_CASE("decimals") {
  CHECK(decimal("12.5") == 12.5);
  CHECK(decimal(" 12,5 ") == 12.5);
  CHECK(decimal("-3") == -3.0);
  CHECK(decimal("+3") == 3.0);
  CHECK(decimal("\xe2\x88\x92"
                "3,5") == -3.5);
  CHECK(decimal(".5") == 0.5);
  CHECK(decimal("1e3") == 1000.0);
  for (const char* bad :
       {"", "-", "--3", "1.2.3", "1.234,5", "1,234,5", "nan", "inf", "-inf", "1e999", "0x10", "12 5", "O", "1O", "12mm"}) {
    INFO(bad);
    CHECK_FALSE(decimal(bad));
  }
}

TEST_CASE("fractions") {
  CHECK(fraction("3/16") == 0.1875);
  CHECK(fraction("1 1/8") == 1.125);
  CHECK(fraction("1-1/8") == 1.125);
  CHECK(fraction("-1 1/8") == -1.125);
  for (const char* bad : {"1/0", "/2", "1/", "1/2/3", "a/b", "1.5/2", "1 2 1/8"}) {
    INFO(bad);
    CHECK_FALSE(fraction(bad));
  }
}

TEST_CASE("lengths with their unit") {
  using Kind = LengthOfText::Kind;
  CHECK(length_of_text("50mm", LengthUnit::inch).mm == 50);
  CHECK(length_of_text("5 cm", LengthUnit::mm).mm == 50);
  CHECK(length_of_text("2in", LengthUnit::mm).mm == Approx(50.8).epsilon(1e-15));
  CHECK(length_of_text("3/16in", LengthUnit::mm).mm == Approx(4.7625).epsilon(1e-15));
  CHECK(length_of_text("1/4\"", LengthUnit::mm).mm == Approx(6.35).epsilon(1e-15));
  CHECK(length_of_text("50", LengthUnit::mm).kind == Kind::no_unit);
  CHECK(length_of_text("1/4", LengthUnit::mm).kind == Kind::fraction_outside_inches);
  CHECK(length_of_text("mm", LengthUnit::mm).kind == Kind::not_a_length);
  CHECK(length_of_text("50 m", LengthUnit::mm).kind == Kind::not_a_length);
}

TEST_CASE("letters for digits") {
  CHECK(has_letter_for_digit("O"));
  CHECK(has_letter_for_digit("2O.1"));
  CHECK(has_letter_for_digit("l2"));
  CHECK_FALSE(has_letter_for_digit("20.1"));
  CHECK_FALSE(has_letter_for_digit("ON"));
}

TEST_CASE("trouble is put in words wherever a text is cut or spoilt") {
  const std::string text = "{ \"a\": [1, 2.5, null], \"b\": \"\xc3\xa9\" }";
  for (std::size_t at = 0; at <= text.size(); ++at) {
    for (const JsonState state : {JsonState::nothing, JsonState::after_key, JsonState::after_value, JsonState::finished}) {
      const JsonTrouble trouble = json_trouble(text, at, state);
      CHECK_FALSE(trouble.what.empty());
      CHECK_FALSE(trouble.remedy.empty());
    }
  }
}
