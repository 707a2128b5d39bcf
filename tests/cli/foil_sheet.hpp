// A CSV of a 0012 on 400 mm (NACA Report 460, rounded to 0.1 mm) at three stations, with what a test changes in it.
#pragma once
#include <functional>
#include <string>
#include <utility>

namespace sandbox {

/// `written`: a half-breadth as it stands, by station, x, side and what it would be. `keys`: rows above the header.
using Written = std::function<std::string(const std::string& station, const std::string& x, bool port, const std::string& usual)>;
inline std::string foil_sheet(const std::string& keys, const Written& written) {
  std::string text = "units,mm\n" + keys + "station,down,ahead,chord,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<std::string, std::string>{"A", "0"}, {"B", "300"}, {"C", "600"}}) {
    const auto both = [&, name = name](const std::string& x, const std::string& y) {
      return x + "," + written(name, x, true, y) + "," + written(name, x, false, y) + "\n";
    };
    text += name + "," + down + ",60,400," + both("0", "0");
    for (const auto& [x, y] : {std::pair<const char*, const char*>{"5", "7.6"},
                               {"10", "10.5"},
                               {"20", "14.2"},
                               {"40", "18.7"},
                               {"60", "21.4"},
                               {"80", "22.9"},
                               {"120", "24.0"},
                               {"160", "23.2"},
                               {"200", "21.2"},
                               {"240", "18.3"},
                               {"280", "14.7"},
                               {"320", "10.5"},
                               {"360", "5.8"},
                               {"400", "0.5"}}) {
      text += name + ",,,," + both(x, y);
    }
  }
  return text;
}

}  // namespace sandbox
