#include "fuzz/targets.hpp"

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "check/findings.hpp"
#include "cli/pipeline.hpp"
#include "cli/slips.hpp"
#include "drawing/highs_and_lows.hpp"
#include "emit/svg.hpp"
#include "job/as_written.hpp"
#include "job/frozen_plan.hpp"
#include "plan/plan.hpp"
#include "recheck/map.hpp"
#include "recheck/recheck.hpp"
#include "report/findings.hpp"
#include "report/recheck.hpp"
#include "report/report.hpp"

namespace fuzz {
namespace {

using namespace fairblade;

/// A file with those bytes, in memory where the system has such a place.
std::string file_of(std::string_view bytes, const char* extension) {
  static const std::filesystem::path folder = [] {
    const std::filesystem::path memory = "/dev/shm";
    return (std::filesystem::exists(memory) ? memory : std::filesystem::temp_directory_path()) /
           ("fairblade-fuzz-" + std::to_string(::getpid()));
  }();
  std::filesystem::create_directories(folder);
  const std::string path = (folder / (std::string("job") + extension)).string();
  std::ofstream(path, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  return path;
}

template <typename T>
void judge(const Outcome<T>& outcome) {
  if (outcome) return;
  if (outcome.faults().empty()) broken("refused without a fault");
  std::string words;
  for (const Fault& fault : outcome.faults()) words += one_line(fault) + "\n";
  judge_refusal(words);
}

void read(std::string_view bytes, const char* extension) {
  const std::string path = file_of(bytes, extension);
  judge(job::read_job(path));
  const auto written = job::read_job_as_written(path);
  judge(written);
  if (!written) return;
  const auto findings = check::find(*written);
  judge_file("findings", report::findings_text(*written, findings) + report::findings_json(*written, findings), bytes);
}

}  // namespace

void broken(const std::string& what) {
  std::cerr << "broken: " << what << std::endl;
  std::abort();
}

void judge_refusal(const std::string& words) {
  std::istringstream lines(words);
  std::size_t count = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::size_t first = line.find(": ");
    if (first == std::string::npos || line.find(": ", first + 2) == std::string::npos) broken("no remedy: " + line);
    if (line.size() > 4000) broken("a refusal of " + std::to_string(line.size()) + " bytes");
    if (++count > 20) broken("more than 20 refusals");
  }
}

void judge_file(const std::string& path, const std::string& bytes, std::string_view given) {
  // In a path's data, after a space or a comma, or as a JSON value: never within words.
  for (const char* none :
       {" nan", ",nan", ":nan", " -nan", "Lnan", "Mnan", " inf,", " -inf", ":inf", "\"nan", "\"inf\"", "=\"-nan"}) {
    const char* const letters = std::string_view(none).find("nan") != std::string_view::npos ? "nan" : "inf";
    if (given.find(letters) != std::string_view::npos) continue;
    if (const auto at = bytes.find(none); at != std::string::npos) {
      broken(path + " holds " + bytes.substr(at > 40 ? at - 40 : 0, 80));
    }
  }
}

void job_reader(std::string_view bytes) { read(bytes, ".json"); }
void csv_reader(std::string_view bytes) { read(bytes, ".csv"); }

void whole_plan(std::string_view bytes) {
  const bool json = bytes.find_first_not_of(" \t\r\n\xef\xbb\xbf") != std::string_view::npos &&
                    (bytes[bytes.find_first_not_of(" \t\r\n\xef\xbb\xbf")] == '{' || bytes.substr(0, 2) == "//");
  auto job = job::read_job(file_of(bytes, json ? ".json" : ".csv"));
  judge(job);
  if (!job) return;
  if (job->stations.size() > 8) return;  // slow, and what eight show not any more will
  auto plan = plan::make_plan(*job, plan::WaterPage::worked_out);
  judge(plan);
  if (!plan) return;
  if (plan::is_scan(*job)) plan::add_water(*plan);
  for (const auto& file : cli::draw_plan(*plan, {}, cli::found_in(plan->job))) judge_file(file.path, whole(file), bytes);
}

void frozen_plan(std::string_view bytes) {
  static const std::string round = [] {  // of small.csv beside this file, one face still low
    const std::string path = file_of("", ".round.csv");
    std::ofstream(path) << "station,x,port,starboard\nA,0,0,0\nA,10,7,8\nA,40,13,15\nA,80,15,17\nA,140,12,13\nA,200,1,1\n"
                           "B,0,0,0\nB,10,6,7\nB,40,11,13\nB,80,13,15\nB,140,10,11\nB,180,1,1\n";
    return path;
  }();
  auto plan = job::read_frozen_plan(file_of(bytes, ".plan.json"));
  judge(plan);
  if (!plan || plan->stations.size() > 8) return;
  const auto found = recheck::recheck(std::move(*plan), {round}, {});
  judge(found);
  if (!found) return;
  judge_file("recheck.json", report::whole(report::recheck_json(*found)), bytes);
  judge_file("what-is-left.svg", emit::to_svg(drawing::draw_highs_and_lows(found->frozen.job, recheck::map_of(*found))), bytes);
}

}  // namespace fuzz
