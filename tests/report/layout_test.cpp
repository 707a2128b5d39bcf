#include "report/layout.hpp"

#include <sstream>

#include "catch.hpp"

using namespace fairblade::report;

TEST_CASE("signs and accents count as one column") {
  CHECK(columns_of("12 ± 1") == 6);
  CHECK(columns_of("") == 0);
}

TEST_CASE("long lines break at spaces and go on indented") {
  std::string words;
  for (int k = 0; k < 60; ++k) words += "word ";
  std::istringstream lines(wrapped(words, 4));
  std::string line;
  int count = 0;
  while (std::getline(lines, line)) {
    CHECK(line.size() <= screen_columns);
    if (count++ > 0) CHECK(line.substr(0, 5) == "    w");
  }
  CHECK(count == 4);                                                         // 300 characters in lines of 100 and 96
  CHECK(wrapped(std::string(150, 'x'), 4) == std::string(150, 'x') + '\n');  // nowhere to break
}

TEST_CASE("columns are as wide as their widest cell") {
  Table table({Table::Align::left, Table::Align::right});
  table.row({"a", "1"});
  table.row({"± b", "100"});
  CHECK(table.text() == "a      1\n± b  100\n");
}
