#include "report/html.hpp"

#include "catch.hpp"

using namespace fairblade;
using namespace fairblade::report;

TEST_CASE("owners' words are harmless in a page") {
  CHECK(html::paragraph("<script>alert('1')</script> & \"so\"") ==
        "<p>&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot;so&quot;</p>\n");
  CHECK(html::text("two\nlines\tand\x01 more") == "two lines and  more");
  CHECK(html::words("<b>").html == "&lt;b&gt;");
}

TEST_CASE("a table names its columns and heads its rows") {
  html::Table table("Litres & more", {"Station", "Depth (mm)"});
  CHECK(table.html().empty());
  table.row({html::words("A<"), html::length(12.34, LengthUnit::inch)});
  const std::string out = table.html();
  CHECK(out.find("<caption>Litres &amp; more</caption>") != std::string::npos);
  CHECK(out.find("<th scope=\"col\" class=\"n\">Depth (mm)</th>") != std::string::npos);
  CHECK(out.find("<th scope=\"row\" data-of=\"Station\"><span>A&lt;</span></th>") != std::string::npos);
  CHECK(out.find("12.3<br/><small>0.486 in</small>") != std::string::npos);  // 12.34/25.4
  CHECK(html::length(12.34, LengthUnit::mm).html == "12.3");
}

TEST_CASE("drawings on one page share no id") {
  const std::string svg =
      "<?xml version=\"1.0\"?>\n<!-- ours -->\n<svg xmlns=\"http://www.w3.org/2000/svg\"><title id=\"t\">a id=\"no\"</title>"
      "<path id=\"add\" d=\"M0,0\"/><use href=\"#add\"/><path fill=\"url(#add)\"/></svg>\n";
  CHECK(html::inline_svg(svg, "s1-") ==
        "<svg role=\"img\" xmlns=\"http://www.w3.org/2000/svg\"><title id=\"s1-t\">a id=\"no\"</title>"
        "<path id=\"s1-add\" d=\"M0,0\"/><use href=\"#s1-add\"/><path fill=\"url(#s1-add)\"/></svg>\n");
  CHECK(html::inline_svg("no drawing", "s1-").empty());
}

TEST_CASE("a drawing of the whole blade has its telephone's twin, without which it stands everywhere") {
  const std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"><path id=\"add\" d=\"M0,0\"/></svg>";
  const std::string both = html::whole_blade(svg, svg, "m-", "words & more");
  const std::size_t wide = both.find("<div class=\"wide-only\">"), narrow = both.find("<div class=\"narrow-only\">");
  REQUIRE(wide != std::string::npos);
  REQUIRE(narrow != std::string::npos);
  CHECK(both.find("id=\"m-add\"") > wide);
  CHECK(both.find("id=\"m-add\"") < narrow);
  CHECK(both.find("id=\"m-n-add\"") > narrow);  // no id twice on one page
  const std::string one = html::whole_blade(svg, "", "m-", "words");
  CHECK(one.find("-only") == std::string::npos);
  CHECK(one.find("id=\"m-add\"") != std::string::npos);
}
