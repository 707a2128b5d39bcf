#include "emit/svg.hpp"

#include <locale>
#include <regex>

#include "base/text.hpp"
#include "catch.hpp"
#include "drawing/cases.hpp"
#include "emit/tools.hpp"

using namespace fairblade;
using namespace fairblade::drawing;
using emit::to_svg;

namespace {

struct Comma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

}  // namespace

TEST_CASE("one user unit is one millimetre") {
  Sheet sheet{"t", 210, 148.5, {}};
  sheet.items.emplace_back(Path{{{{10, 10}, {10.12345, 1234.5678}}}, false, Pen::cut, Fill::none, "a"});
  sheet.items.emplace_back(Text{{1, 2}, "x < y & \"z\"", 3, Anchor::end, -90, true});
  const std::string svg = to_svg(sheet);
  CHECK(svg.find("width=\"210mm\" height=\"148.5mm\" viewBox=\"0 0 210 148.5\"") != std::string::npos);
  CHECK(svg.find("d=\"M10,10 L10.123,1234.568\"") != std::string::npos);
  CHECK(svg.find("x &lt; y &amp; &quot;z&quot;") != std::string::npos);
  CHECK(svg.find("rotate(-90 1 2)") != std::string::npos);
  CHECK(svg.find("font-family=\"sans-serif\"") != std::string::npos);
}

TEST_CASE("the same bytes twice, under any locale") {
  const cases::Case c = cases::make("usual", cases::Wish{});
  const auto all = [&] {
    return to_svg(draw_section(c.job, c.measured, c.target, c.change, &c.fitted)) +
           to_svg(cases::template_of(c, section::Face::port));
  };
  const std::string first = all();
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Comma));
  const std::string second = all();
  std::locale::global(before);
  CHECK((first == second));
}

TEST_CASE("every drawing is well-formed XML without scripts or outside references") {
  tools::Scratch scratch;
  for (const cases::Case& c : cases::all()) {
    const std::vector<Sheet> sheets = {draw_section(c.job, c.measured, c.target, c.change, &c.fitted),
                                       cases::template_of(c, section::Face::port),
                                       cases::template_of(c, section::Face::starboard)};
    for (const Sheet& sheet : sheets) {
      const std::string svg = to_svg(sheet);
      INFO(c.name);
      tools::put(scratch / "drawing.svg", svg);
      CHECK(tools::run("xmllint --noout --nonet '" + (scratch / "drawing.svg").string() + "'"));
      CHECK(svg.find("<script") == std::string::npos);
      CHECK(svg.find("href") == std::string::npos);
      CHECK(svg.find("url(") == std::string::npos);
      CHECK(svg.find("<style") == std::string::npos);
      CHECK(svg.find("http", svg.find("2000/svg")) == std::string::npos);
    }
  }
}

TEST_CASE("hostile names do no harm") {
  tools::Scratch scratch;
  const std::vector<std::string> names = {"<script>alert(1)</script>",
                                          "a\" onload=\"x",
                                          "]]>",
                                          "--><!--",
                                          "&amp;&#0;",
                                          "../../etc/passwd",
                                          "'\"`\\",
                                          std::string(200, 'W'),
                                          "\xf0\x9f\x90\xa6\xe2\x80\x8d\xf0\x9f\x90\xa6",
                                          std::string("a\0b", 3),
                                          "\x1b[31m",
                                          "\xff\xfe",
                                          "\xef\xbf\xbe\xef\xbf\xbf",
                                          "\xe2\x80\xae"
                                          "desrever",
                                          "\xd7\xa9\xd7\x9c\xd7\x95\xd7\x9d",
                                          " ",
                                          ""};
  for (const std::string& name : names) {
    cases::Wish wish;
    wish.job_name = wish.station = name;
    const cases::Case c = cases::make("hostile", wish);
    for (const Sheet& sheet :
         {draw_section(c.job, c.measured, c.target, c.change, &c.fitted), cases::template_of(c, section::Face::port)}) {
      INFO(name);
      tools::put(scratch / "drawing.svg", to_svg(sheet));
      CHECK(tools::run("xmllint --noout --nonet '" + (scratch / "drawing.svg").string() + "'"));
      CHECK(to_svg(sheet).find("<script") == std::string::npos);
    }
  }
}
