#include "cli/results.hpp"

#include <memory>
#include <ostream>
#include <utility>

#include "cli/cli.hpp"
#include "emit/print_html.hpp"
#include "emit/svg.hpp"

namespace fairblade::cli {

void add_pages(pages::Pages pages, const std::string& title, std::vector<emit::File>& files, std::string_view sign) {
  const auto set = std::make_shared<const pages::Pages>(std::move(pages));
  const std::size_t count = set->pages.size();
  for (std::size_t k = 0; k < count; ++k) {
    files.push_back({set->pages[k].file, {}, 1, [set, k](std::size_t) { return emit::to_svg(set->pages[k].sheet); }});
  }
  files.push_back({"print.html", emit::print_html_head(title, set->page_size, sign), count + 1, [set, count](std::size_t k) {
                     return k < count ? emit::print_html_page(set->pages[k].sheet, k) : emit::print_html_foot();
                   }});
}

std::optional<Fault> write_results(const std::string& folder, const std::vector<emit::File>& files, const emit::ResultsKind& kind,
                                   std::ostream& err) {
  std::string note;
  const auto failed = emit::write_folder(folder, files, &note, kind);
  if (!note.empty()) err << folder << ": " << note << '\n';
  return failed;
}

int tell_not_written(const Fault& fault, std::ostream& err) {
  err << one_line(fault) << '\n';
  return ExitStatus::not_written;
}

}  // namespace fairblade::cli
