#include "drawing/lettering.hpp"

#include "base/text.hpp"
#include "catch.hpp"
#include "drawing/readings_table.hpp"

using namespace fairblade;
using namespace fairblade::drawing;

TEST_CASE("advances of type: read off the hmtx table of the typeface") {
  // DejaVu Sans, thousandths of an em: A 685, i 278, space 318; bold A 774.
  CHECK(width_of("Ai ", 10, false) == Approx(6.85 + 2.78 + 3.18));
  CHECK(width_of("A", 1, true) == Approx(0.774));
  CHECK(width_of("\xc3\xa9", 1, false) >= 0.616);        // e with acute, 616 in the table
  CHECK(width_of("\xf0\x9f\x90\xa6", 1, false) >= 1.3);  // one emoji: the usual faces advance up to 1.275 em
}

TEST_CASE("the box of a text turns with it") {
  const Text upright{{10, 20}, "AA", 10, Anchor::start, 0, false};
  const Box box = box_of(upright);
  CHECK(box.min_corner().x() == Approx(10));
  CHECK(box.max_corner().x() == Approx(10 + 13.7));
  CHECK(box.min_corner().y() < 20 - 7.29);  // capitals are 0.729 em high
  Text turned = upright;
  turned.turn = -90;  // reads upwards
  const Box up = box_of(turned);
  CHECK(up.max_corner().y() == Approx(20));
  CHECK(up.min_corner().y() == Approx(20 - 13.7));
  CHECK(up.max_corner().x() == Approx(10 + 2.4));
}

TEST_CASE("shortening keeps to the room and to whole characters") {
  std::string name;
  for (int k = 0; k < 60; ++k) name += k % 3 == 0 ? "\xf0\x9f\x90\xa6" : k % 3 == 1 ? "\xc3\xa9" : "x";
  for (double room = 4; room < 120; room += 0.7) {
    const std::string words = shortened(name, 3, true, room);
    std::size_t bad = 0;
    CHECK(valid_utf8(words, bad));
    CHECK(width_of(words, 3, true) <= room);
    CHECK(words.substr(words.size() - 3) == "\xe2\x80\xa6");
  }
  CHECK(shortened("short", 3, false, 50) == "short");
  CHECK(shortened("two words", 3, false, width_of("two words", 3, false) - 0.1) == "two wor\xe2\x80\xa6");
}

TEST_CASE("what cannot be printed is dropped or replaced") {
  CHECK(printable("a\nb\tc") == "a b c");
  CHECK(printable(std::string("a\0b\x1b[0m", 7)) == "ab[0m");
  CHECK(printable("a\xff"
                  "b\xc3") == "a?b?");
  CHECK(printable("\xef\xbb\xbf"
                  "a\xef\xbf\xbe\xef\xbf\xbf") == "a");
  CHECK(printable("a\xe2\x80\xae"
                  "b") == "ab");  // a bidirectional override would reverse what follows
}

TEST_CASE("words break at spaces") {
  const double room = width_of("one two", 3, false) + 0.01;
  CHECK(wrapped("one two six", 3, false, room) == std::vector<std::string>{"one two", "six"});
  CHECK(wrapped("", 3, false, room).empty());
  for (const std::string& line : wrapped("a word_that_is_far_too_long_for_this", 3, false, room)) {
    CHECK(width_of(line, 3, false) <= room);
  }
}

TEST_CASE("spread places: worked by hand") {
  CHECK(spread({0, 10, 20}, 4) == std::vector<double>{0, 10, 20});
  // Two at one place move apart by equal amounts; least squares.
  const std::vector<double> pair = spread({5, 5}, 4);
  CHECK(pair[0] == Approx(3));
  CHECK(pair[1] == Approx(7));
  // 0, 1, 2 at pitch 4: the group's mean stays at 1.
  const std::vector<double> three = spread({0, 1, 2}, 4);
  CHECK(three[0] == Approx(-3));
  CHECK(three[1] == Approx(1));
  CHECK(three[2] == Approx(5));
  CHECK(spread({}, 4).empty());
}
