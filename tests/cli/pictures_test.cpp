// The pictures that README shows are what the demo draws.
#include <charconv>
#include <cmath>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;

namespace {

// Two drawings that differ in nothing but the last digit of numbers, as another compiler's arithmetic may round them.
bool same_drawing(const std::string& a, const std::string& b) {
  constexpr double rounding = 0.0021;  // mm: two units of the last digit (seen 0 on GCC 12)
  const auto starts_number = [](char c) { return (c >= '0' && c <= '9') || c == '-' || c == '.'; };
  const char *p = a.data(), *p_end = p + a.size(), *q = b.data(), *q_end = q + b.size();
  while (p < p_end && q < q_end) {
    double x = 0, y = 0;
    if (starts_number(*p) && starts_number(*q)) {
      const auto one = std::from_chars(p, p_end, x), other = std::from_chars(q, q_end, y);
      if (one.ec == std::errc{} && other.ec == std::errc{}) {
        if (std::abs(x - y) > rounding) return false;
        p = one.ptr;
        q = other.ptr;
        continue;
      }
    }
    if (*p++ != *q++) return false;
  }
  return p == p_end && q == q_end;
}

}  // namespace

TEST_CASE("README's pictures are what the demo draws") {
  const Folder folder;
  REQUIRE(run({"plan", profile("whimbrel"), "-o", folder.at("out")}).status == 0);
  const std::string kept = std::string(PROFILES_DIR) + "/whimbrel/";
  INFO(
      "when the drawing was meant to change: copy sections/A.svg and templates/A-port-final.svg of the demo's folder to "
      "profiles/whimbrel/section-A.svg and template-A-port.svg, and look at them");
  CHECK(same_drawing(bytes_of(folder.at("out/sections/A.svg")), bytes_of(kept + "section-A.svg")));
  CHECK(same_drawing(bytes_of(folder.at("out/templates/A-port-final.svg")), bytes_of(kept + "template-A-port.svg")));
}

TEST_CASE("drawings that differ are told apart") {
  CHECK(same_drawing("<path d=\"M1.000 2\"/>", "<path d=\"M1.001 2\"/>"));
  CHECK_FALSE(same_drawing("<path d=\"M1.000 2\"/>", "<path d=\"M1.010 2\"/>"));
  CHECK_FALSE(same_drawing("<path/>", "<path/><path/>"));
}
