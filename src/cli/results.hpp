// Private to the cli room. What commands that write a folder have in common. Verbs: add_pages, in_pieces,
// write_results, tell_not_written.
#pragma once
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/fault.hpp"
#include "emit/folder.hpp"
#include "pages/pages.hpp"
#include "report/pieces.hpp"

namespace fairblade::cli {

/// A file for each page, and print.html of them all; `sign` as print_html has it.
void add_pages(pages::Pages pages, const std::string& title, std::vector<emit::File>& files, std::string_view sign = {});

/// A text as a file, its pieces made when they are written.
emit::File in_pieces(std::string path, report::Pieces pieces);

/// emit::write_folder, and its note told on `err`.
std::optional<Fault> write_results(const std::string& folder, const std::vector<emit::File>& files, const emit::ResultsKind& kind,
                                   std::ostream& err);
/// One line on `err`, and the exit status.
int tell_not_written(const Fault& fault, std::ostream& err);

}  // namespace fairblade::cli
