#include "cli/results.hpp"

#include <ostream>

#include "base/side_by_side.hpp"
#include "cli/cli.hpp"
#include "emit/print_html.hpp"
#include "emit/svg.hpp"

namespace fairblade::cli {

void add_pages(const pages::Pages& set, const std::string& title, std::vector<emit::File>& files, std::string_view sign) {
  std::vector<const drawing::Sheet*> sheets;
  const std::size_t before = files.size();
  for (const pages::Page& page : set.pages) {
    files.push_back({page.file, {}});
    sheets.push_back(&page.sheet);
  }
  side_by_side(set.pages.size(), [&](std::size_t k) { files[before + k].bytes = emit::to_svg(set.pages[k].sheet); });
  files.push_back({"print.html", emit::print_html(title, sheets, set.page_size, sign)});
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
