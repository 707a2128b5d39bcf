// A text read in pieces against the same bytes held at once. The piece is 1 MiB (src/job/file_text.cpp): what is put across
// its end here is at 1048576 bytes.
#include "catch.hpp"
#include "job/file_text.hpp"
#include "job/frozen_plan.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

constexpr std::size_t piece = 1u << 20;

std::string all_of(TextInPieces& text) {
  std::string out;
  for (std::string_view more = text.next(); !more.empty(); more = text.next()) out += more;
  return out;
}

std::string refusal(const std::string& path) {
  Faults faults;
  CHECK_FALSE(TextInPieces::open(path, 1u << 30, faults));
  return faults.in_order().empty() ? "" : one_line(faults.in_order().front());
}

}  // namespace

TEST_CASE("a character may lie across two pieces, and is refused there when it is broken") {
  const Scratch scratch;
  for (std::size_t before = piece - 5; before <= piece + 1; ++before) {
    for (const std::string_view bird : {"\xc3\xa9", "\xe2\x80\xa6", "\xf0\x9f\x90\xa6"}) {
      std::string bytes(before, '\n');
      bytes += std::string(bird) + "\n" + std::string(before, 'x');
      const std::string path = scratch.write("text", "\xef\xbb\xbf" + bytes);
      Faults faults;
      auto text = TextInPieces::open(path, 1u << 30, faults);
      REQUIRE(text);
      CHECK((all_of(*text) == bytes));
      CHECK((text->whole() == bytes));
      bytes[before + bird.size() - 1] = 'x';  // its last byte is no longer one
      CHECK(refusal(scratch.write("text", bytes))
                .ends_with("/text:" + std::to_string(before + 1) +
                           ": a character here is not UTF-8: save the file again as UTF-8 text"));
    }
  }
  CHECK(refusal(scratch.write("cut", std::string(piece, '\n') + "\xf0\x9f\x90"))
            .find("cut:1048577: a character here is not UTF-8") != std::string::npos);
}

TEST_CASE("a text in pieces that holds nothing is told to be empty") {
  const Scratch scratch;
  for (const std::string& bytes : {std::string(), std::string("\xef\xbb\xbf"), std::string(piece + 7, ' ')})
    CHECK(refusal(scratch.write("none", bytes)).ends_with("/none: the file is empty: put the job in it, or give another file"));
}

TEST_CASE("what is wrong with a plan's JSON is told at its line, in any piece") {
  const Scratch scratch;
  std::string bytes = "{\n";
  for (int k = 0; bytes.size() < 2 * piece; ++k)
    bytes += "\"k" + std::to_string(k % 900) + "\": [0, 1, 2, 3, 4, 5, 6, 7, 8, 9,\n 10],\n";
  const auto many = read_frozen_plan(scratch.write("many", bytes));
  REQUIRE_FALSE(many);
  bool broken = false;
  std::string list = "{ \"offsets\": [\n";
  const int lines = 300000;
  for (int k = 0; k < lines; ++k) list += "1.2345678,\n";
  const auto bad = read_frozen_plan(scratch.write("bad", list + "1.5.\n] }"));
  REQUIRE_FALSE(bad);
  for (const Fault& fault : bad.faults()) broken = broken || fault.place.line == lines + 2;
  CHECK(broken);
}
