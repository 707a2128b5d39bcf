#include "pages/nest.hpp"

#include <algorithm>
#include <numeric>

namespace fairblade::pages {
namespace {

struct Shelf {
  std::size_t page;
  double top, height, filled;
};

}  // namespace

std::vector<std::vector<Nested>> nest(const std::vector<Point>& sizes, double width, double height, double gap) {
  constexpr double hair = 1e-6;
  std::vector<std::size_t> order(sizes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return sizes[a].y() > sizes[b].y(); });
  std::vector<std::vector<Nested>> pages;
  std::vector<Shelf> shelves;
  std::vector<double> used;  // of each page's height
  for (const std::size_t piece : order) {
    const double w = sizes[piece].x(), h = sizes[piece].y();
    auto shelf = std::find_if(shelves.begin(), shelves.end(),
                              [&](const Shelf& s) { return s.filled + gap + w <= width + hair && h <= s.height + hair; });
    if (shelf == shelves.end()) {
      std::size_t page = 0;
      while (page < used.size() && used[page] + gap + h > height + hair) ++page;
      if (page == used.size()) {
        used.push_back(-gap);
        pages.emplace_back();
      }
      shelves.push_back({page, used[page] + gap, h, -gap});
      used[page] += gap + h;
      shelf = shelves.end() - 1;
    }
    pages[shelf->page].push_back({piece, Point(shelf->filled + gap, shelf->top)});
    shelf->filled += gap + w;
  }
  return pages;
}

}  // namespace fairblade::pages
