#include "cli/results.hpp"

#include <memory>
#include <ostream>
#include <utility>

#include "cli/cli.hpp"
#include "emit/print_html.hpp"

namespace fairblade::cli {

void add_pages(pages::Pages pages, const std::string& title, std::vector<emit::File>& files, std::string_view sign) {
  std::vector<std::shared_ptr<const drawing::Sheet>> sheets;
  for (pages::Page& page : pages.pages) {
    sheets.push_back(std::make_shared<const drawing::Sheet>(std::move(page.sheet)));
    files.push_back(emit::drawn(page.file, sheets.back()));
  }
  files.push_back(emit::print_html("print.html", title, std::move(sheets), pages.page_size, sign));
}

emit::File in_pieces(std::string path, report::Pieces pieces) {
  return {std::move(path), {}, pieces.count, std::move(pieces.piece)};
}

std::optional<Fault> write_results(const std::string& folder, const std::vector<emit::File>& files, const emit::ResultsKind& kind,
                                   std::ostream& err) {
  std::string note;
  auto failed = emit::write_folder(folder, files, &note, kind);
  if (!note.empty()) err << folder << ": " << note << '\n';
  return failed;
}

int tell_not_written(const Fault& fault, std::ostream& err) {
  err << one_line(fault) << '\n';
  return ExitStatus::not_written;
}

}  // namespace fairblade::cli
