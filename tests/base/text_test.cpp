#include "base/text.hpp"

#include <array>
#include <cmath>
#include <cstdio>
#include <random>

#include "base/fault.hpp"
#include "base/file_names.hpp"
#include "base/units.hpp"
#include "catch.hpp"

using namespace fairblade;

TEST_CASE("numbers are written with a point and without a negative zero") {
  CHECK(fixed(1.25, 1) == "1.2");  // to_chars rounds half to even on the exact binary value 1.25
  CHECK(fixed(-0.001, 2) == "0.00");
  CHECK(fixed(-12.345, 2) == "-12.35");  // -12.345 is stored just beyond the half: 12.34500000000000063
  CHECK(trimmed(12.50, 2) == "12.5");
  CHECK(trimmed(3.0, 2) == "3");
  CHECK(trimmed(100, 0) == "100");
  CHECK(shortest(0.1) == "0.1");
}

TEST_CASE("2026-11-27: one figure where a range's ends are alike") {
  // 3/16 in, once a hair less than itself, was told as 0.187 to 0.188: half to even, and below the half.
  CHECK(fixed_range(std::nextafter(0.1875, 0), 0.1875, 3) == "0.188");
  CHECK(fixed_range(0.1875, 0.1875, 3) == "0.188");
  CHECK(fixed_range(3.04, 3.0449, 1) == "3.0");
  CHECK(fixed_range(3.04, 3.06, 1) == "3.0 to 3.1");
  CHECK(fixed_range(12.1, 12.4, 1) == "12.1 to 12.4");
}

TEST_CASE("2026-11-27: bounds are rounded to the side where they hold") {
  // By hand, in the figures that are printed: tenths of a mm, hundredths of a cm, thousandths of an inch.
  CHECK(last_figure_down(19.566, LengthUnit::mm) == Approx(19.5));
  CHECK(last_figure_up(19.566, LengthUnit::mm) == Approx(19.6));
  CHECK(last_figure_down(19.6, LengthUnit::mm) == Approx(19.6));
  CHECK(last_figure_up(19.6, LengthUnit::mm) == Approx(19.6));
  CHECK(last_figure_up(19.51, LengthUnit::cm) == Approx(19.6));
  CHECK(last_figure_down(0.1879 * mm_per_inch, LengthUnit::inch) == Approx(0.187 * mm_per_inch));
  CHECK(last_figure_up(0.1871 * mm_per_inch, LengthUnit::inch) == Approx(0.188 * mm_per_inch));
  CHECK(last_figure_up(0.188 * mm_per_inch, LengthUnit::inch) == Approx(0.188 * mm_per_inch));
}

TEST_CASE("numbers are the C library's own, digit by digit") {
  std::mt19937_64 random(20261125);
  std::array<char, 400> wanted{};
  std::size_t unlike = 0;
  const auto compare = [&](double value, int decimals) {
    std::snprintf(wanted.data(), wanted.size(), "%.*f", decimals, value);
    std::string text = wanted.data();
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
    if (fixed(value, decimals) != text) ++unlike;
  };
  for (int k = 0; k < 40000; ++k) {
    const double magnitude = std::pow(10.0, static_cast<double>(random() % 20) - 6);
    const double value = (static_cast<double>(random() >> 11) / 9007199254740992.0 - 0.5) * magnitude;
    for (int decimals = 0; decimals <= 7; ++decimals) {
      compare(value, decimals);
      // On a half, or next to one.
      const double half = (std::floor(value) + 0.5) / std::pow(10.0, decimals);
      for (const double near : {half, std::nextafter(half, 1e300), std::nextafter(half, -1e300)}) compare(near, decimals);
    }
  }
  CHECK(unlike == 0);
}

TEST_CASE("an inch is 25.4 mm") {
  CHECK(millimetres_in(LengthUnit::inch) == 25.4);
  CHECK(in_unit(25.4, LengthUnit::inch) == "1.000 in");
  CHECK(in_unit(123.4, LengthUnit::cm) == "12.34 cm");
  CHECK(length_unit("in") == LengthUnit::inch);
  CHECK_FALSE(length_unit("inches").has_value());
}

TEST_CASE("a fault is one line whatever is in it") {
  CHECK(one_line({{"a.json", 7}, "bad", "mend it"}) == "a.json:7: bad: mend it");
  CHECK(one_line({{"a.json", 0}, "bad\nworse", "mend it"}) == "a.json: bad\\x0aworse: mend it");
}

TEST_CASE("the nearest known name is offered") {
  const std::array<std::string_view, 3> known{"thickness", "chord", "down"};
  CHECK(nearest_name("tickness", known) == "thickness");
  CHECK(nearest_name("cord", known) == "chord");
  CHECK(nearest_name("zzzz", known).empty());
  const std::array<std::string_view, 2> edges{"leading-edge", "trailing-edge-thickness"};
  CHECK(nearest_name("trailing-edge", edges) == "trailing-edge-thickness");
}

TEST_CASE("odd names do no harm in XML and file names") {
  CHECK(xml_escaped("a<b>&\"'\x01") == "a&lt;b&gt;&amp;&quot;&#39;");
  CHECK(file_name_of("../etc/A & B") == "etc-A-B");
  CHECK(file_name_of("\xf0\x9f\x90\xa6") == "unnamed");
  CHECK(file_name_of(std::string(200, 'x')).size() == 60);
}

TEST_CASE("UTF-8 is told from what is not") {
  std::size_t bad = 0;
  CHECK(valid_utf8("caf\xc3\xa9 \xf0\x9f\x90\xa6", bad));
  CHECK_FALSE(valid_utf8("caf\xe9", bad));
  CHECK(bad == 3);
  CHECK_FALSE(valid_utf8("\xed\xa0\x80", bad));  // a surrogate
  CHECK_FALSE(valid_utf8("\xc0\x80", bad));      // overlong
}

TEST_CASE("file names are told apart, capitals or not") {
  CHECK(file_names_of({"A", "a", "a/1", "A 1", "B"}) == std::vector<std::string>{"A", "a_2", "a-1", "A-1_2", "B"});
}

TEST_CASE("a name of which no file system takes a letter goes by its place") {
  // 2026-11-27: stations named in Cyrillic were unnamed.svg and unnamed_2.svg.
  CHECK(file_names_of({"\xd0\x90", "B", "\xf0\x9f\x90\xa6"}) == std::vector<std::string>{"number-1", "B", "number-3"});
  CHECK(file_names_of({"\xd0\x90", "number-1"}) == std::vector<std::string>{"number-1", "number-1_2"});
}
