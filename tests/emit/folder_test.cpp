#include "emit/folder.hpp"

#include <sys/mount.h>
#include <sys/stat.h>

#include <map>

#include "catch.hpp"
#include "emit/svg.hpp"
#include "emit/tools.hpp"

using fairblade::emit::File;
using fairblade::emit::write_folder;
namespace fs = std::filesystem;

namespace {

const std::string plan = "{\"fairblade\": \"0.1.0\"}";
const std::string drawing = "<?xml version=\"1.0\"?>\n" + std::string(fairblade::emit::drawing_signature) + "<svg/>";

/// Every file below a folder with its bytes; folders end in '/'.
std::map<std::string, std::string> tree(const fs::path& folder) {
  std::map<std::string, std::string> out;
  if (!fs::exists(folder)) return out;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    const std::string name = fs::relative(entry.path(), folder).string();
    if (entry.is_directory()) {
      out[name + "/"];
    } else {
      out[name] = tools::get(entry.path());
    }
  }
  return out;
}

std::vector<File> results(const std::string& mark) {
  return {{"plan.json", plan}, {"offsets.csv", mark}, {"sections/A.svg", drawing + mark}};
}

}  // namespace

TEST_CASE("a new folder, its parents too, and nothing beside it") {
  tools::Scratch scratch;
  const auto fault = write_folder((scratch / "a/b/out").string(), results("1"));
  REQUIRE(!fault);
  CHECK(tree(scratch / "a") == std::map<std::string, std::string>{{"b/", ""},
                                                                  {"b/out/", ""},
                                                                  {"b/out/plan.json", plan},
                                                                  {"b/out/offsets.csv", "1"},
                                                                  {"b/out/sections/", ""},
                                                                  {"b/out/sections/A.svg", drawing + "1"}});
  CHECK(!write_folder((scratch / "a/b/slash/").string(), results("1")));
  CHECK(tools::get(scratch / "a/b/slash/offsets.csv") == "1");
  fs::create_directory(scratch / "empty");
  CHECK(!write_folder((scratch / "empty").string(), results("1")));
  CHECK(tools::get(scratch / "empty/offsets.csv") == "1");
}

TEST_CASE("a file in pieces is its bytes and then each piece, made once, in order") {
  tools::Scratch scratch;
  std::string made;
  const auto piece = [&made](std::size_t k) {
    made += std::to_string(k);
    return std::string(k + 1, static_cast<char>('a' + k));
  };
  std::vector<File> files = results("1");
  files.push_back({"long.csv", "head\n", 3, piece});
  REQUIRE(!write_folder((scratch / "out").string(), files));
  CHECK(tools::get(scratch / "out/long.csv") == "head\nabbccc");
  CHECK(made == "012");
  CHECK(whole(files.back()) == "head\nabbccc");
}

TEST_CASE("a second run replaces the results and keeps what is not ours") {
  tools::Scratch scratch;
  const fs::path out = scratch / "out";
  std::vector<File> first = results("1");
  first.push_back({"sections/Old.svg", drawing});
  first.push_back({"pages/1.svg", drawing});
  REQUIRE(!write_folder(out.string(), first));
  tools::put(out / "notes.txt", "mine");
  tools::put(out / "photos/day1/a.jpg", "jpeg");
  tools::put(out / "sections/sketch.svg", "<svg>by hand</svg>");
  fs::create_symlink("notes.txt", out / "link");
  ::chmod(out.c_str(), 0750);
  REQUIRE(!write_folder(out.string(), results("2")));
  CHECK(tools::get(out / "offsets.csv") == "2");
  CHECK(tools::get(out / "notes.txt") == "mine");
  CHECK(tools::get(out / "photos/day1/a.jpg") == "jpeg");
  CHECK(tools::get(out / "sections/sketch.svg") == "<svg>by hand</svg>");
  CHECK(fs::read_symlink(out / "link") == "notes.txt");
  // A drawing of ours that this run does not make would be cut out as if it were current.
  CHECK(!fs::exists(out / "sections/Old.svg"));
  CHECK(!fs::exists(out / "pages"));
  CHECK((fs::status(out).permissions() & fs::perms::mask) == fs::perms(0750));
  CHECK(tree(scratch.path()).count(".fairblade") == 0);
  CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
}

TEST_CASE("results of one kind never replace those of another") {
  using fairblade::emit::worksheet_results;
  tools::Scratch scratch;
  const std::vector<File> sheets{{"print.html", "<!DOCTYPE html>\n" + std::string(worksheet_results.sign)},
                                 {"pages/1.svg", drawing}};
  REQUIRE(!write_folder((scratch / "plan").string(), results("1")));
  REQUIRE(!write_folder((scratch / "sheets").string(), sheets, nullptr, worksheet_results));
  const auto before = tree(scratch.path());
  const auto over_plan = write_folder((scratch / "plan").string(), sheets, nullptr, worksheet_results);
  const auto over_sheets = write_folder((scratch / "sheets").string(), results("2"));
  REQUIRE(over_plan);
  REQUIRE(over_sheets);
  CHECK(over_plan->what == "is not empty and holds no earlier worksheet");
  CHECK(over_sheets->what == "is not empty and holds no earlier plan");
  CHECK((tree(scratch.path()) == before));
  // The print.html of a plan bears no such sign.
  tools::put(scratch / "plan/print.html", "<!DOCTYPE html>\n<html lang=\"en\">");
  CHECK(write_folder((scratch / "plan").string(), sheets, nullptr, worksheet_results));
  CHECK(!write_folder((scratch / "sheets").string(), sheets, nullptr, worksheet_results));
}

TEST_CASE("through a link to a folder the link stays") {
  tools::Scratch scratch;
  REQUIRE(!write_folder((scratch / "real").string(), results("1")));
  fs::create_directory_symlink("real", scratch / "link");
  REQUIRE(!write_folder((scratch / "link").string(), results("2")));
  CHECK(fs::is_symlink(scratch / "link"));
  CHECK(tools::get(scratch / "real/offsets.csv") == "2");
}

TEST_CASE("refusals leave everything as it was") {
  tools::Scratch scratch;
  REQUIRE(!write_folder((scratch / "out").string(), results("1")));
  tools::put(scratch / "file", "a file");
  tools::put(scratch / "home/letters.txt", "a full folder");
  tools::put(scratch / "other/plan.json", "{\"somebody\": \"else\"}");
  fs::create_symlink("nowhere", scratch / "dangling");
  const auto before = tree(scratch.path());
  const auto refused = [&](const std::string& folder, const std::vector<File>& files) {
    INFO(folder);
    const auto fault = write_folder(folder, files);
    CHECK(fault);
    if (fault) CHECK((!fault->what.empty() && !fault->remedy.empty()));
    CHECK((tree(scratch.path()) == before));
  };
  refused((scratch / "file").string(), results("2"));
  refused((scratch / "file/below").string(), results("2"));
  refused((scratch / "file/below/deeper").string(), results("2"));
  refused((scratch / "home").string(), results("2"));
  refused((scratch / "other").string(), results("2"));
  refused((scratch / "dangling").string(), results("2"));
  refused("", results("2"));
  refused("/", results("2"));
  refused("/proc/fairblade-test/out", results("2"));  // a parent that takes no folders, even from root
  // Two stations whose names make one file name: nothing is overwritten, nothing is half done.
  std::vector<File> twice = results("2");
  twice.push_back(twice.back());
  refused((scratch / "out").string(), twice);
  refused((scratch / "deep/new/out").string(), twice);
  // A name that is too long for the file system, after other files have been written.
  std::vector<File> long_name = results("2");
  long_name.push_back({"sections/" + std::string(300, 'x') + ".svg", drawing});
  refused((scratch / "out").string(), long_name);
}

TEST_CASE("an owner's file where a folder of results is to stand") {
  tools::Scratch scratch;
  REQUIRE(!write_folder((scratch / "out").string(), {{"plan.json", plan}}));
  tools::put(scratch / "out/sections", "a file of mine");
  const auto before = tree(scratch.path());
  CHECK(write_folder((scratch / "out").string(), results("2")));
  CHECK((tree(scratch.path()) == before));
}

TEST_CASE("the folder the command runs in is not swapped away from under it") {
  tools::Scratch scratch;
  REQUIRE(!write_folder((scratch / "out").string(), results("1")));
  const fs::path here = fs::current_path();
  fs::current_path(scratch / "out/sections");
  const auto fault = write_folder("..", results("2"));
  fs::current_path(here);
  CHECK(fault);
  CHECK(tools::get(scratch / "out/offsets.csv") == "1");
}

TEST_CASE("a full disk keeps the earlier results whole") {
  tools::Scratch scratch;
  fs::create_directory(scratch / "small");
  if (::mount("tmpfs", (scratch / "small").c_str(), "tmpfs", 0, "size=256k") != 0) {
    WARN("no small file system can be mounted here: the full disk was not tried");
    return;
  }
  const std::string out = (scratch / "small/out").string();
  const bool first = !write_folder(out, results("1"));
  const auto before = tree(scratch / "small");
  std::vector<File> big = results("2");
  big.push_back({"templates/A.svg", std::string(1 << 20, 'x')});
  const auto fault = write_folder(out, big);
  const bool whole = tree(scratch / "small") == before;
  ::umount((scratch / "small").c_str());
  CHECK(first);
  CHECK(fault);
  CHECK(whole);
}
