// Writing an output folder all or nothing. Verbs: drawn, whole, write_folder.
#pragma once
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/fault.hpp"
#include "drawing/sheet.hpp"

namespace fairblade::emit {

struct File {
  std::string path;  ///< below the folder, '/' between its parts, no part "." or ".."
  std::string bytes;
  /// Where there are pieces they follow the bytes, each made when it is written, so that they never stand in memory together.
  std::size_t pieces = 0;
  std::function<std::string(std::size_t)> piece{};
};
/// A drawing, which becomes SVG text when it is written.
File drawn(std::string path, drawing::Sheet sheet);
File drawn(std::string path, std::shared_ptr<const drawing::Sheet> sheet);
/// The same of one that is only then worked out.
File drawn(std::string path, std::function<drawing::Sheet()> draw);
/// All that the file will hold.
std::string whole(const File& file);
/// The same of the one under that path, which is among them.
std::string whole(const std::vector<File>& files, std::string_view path);

/// By what earlier results are told from a folder of the owner's: a file at the folder's top, and what stands in the first
/// 4096 bytes of it.
struct ResultsKind {
  std::string_view file, sign;
  std::string_view name;  ///< in words: "holds no earlier plan"
};
inline constexpr ResultsKind plan_results{"plan.json", "\"fairblade\"", "plan"};
inline constexpr ResultsKind worksheet_results{"print.html", "<!-- fairblade worksheet -->", "worksheet"};
inline constexpr ResultsKind recheck_results{"recheck.json", "\"fairblade\"", "recheck"};

/// Makes `folder` hold these files, or leaves everything as it was and says why. The files are written and synced in a
/// hidden folder beside it, which then takes its place in one rename (RENAME_EXCHANGE where the file system knows it; else
/// two renames, and what was there before is put back by the next run if this one is killed between them: `note` says so).
/// Hidden folders of killed runs are cleared; runs that write at once take turns. What else lies in the folder is carried
/// over, but for drawings that an earlier run left below sections/, templates/ and pages/. Refused: a folder with anything
/// in it but no earlier results of that kind, a file in its place, and the folder that the command runs in (it would be swapped
/// away from under the shell).
std::optional<Fault> write_folder(const std::string& folder, const std::vector<File>& files, std::string* note = nullptr,
                                  const ResultsKind& kind = plan_results);

}  // namespace fairblade::emit
