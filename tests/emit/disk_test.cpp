#include "emit/disk.hpp"

#include <algorithm>
#include <atomic>
#include <fstream>
#include <vector>

#include "catch.hpp"
#include "emit/tools.hpp"

using namespace fairblade;
namespace fs = std::filesystem;

TEST_CASE("what waits for the disk is each done once, however many there are") {
  for (const std::size_t count : {0u, 1u, 7u, 16u, 500u}) {
    CAPTURE(count);
    std::vector<std::atomic<int>> done(count);
    emit::waiting_together(count, [&](std::size_t k) { ++done[k]; });
    CHECK(std::all_of(done.begin(), done.end(), [](const std::atomic<int>& one) { return one == 1; }));
  }
}

TEST_CASE("a folder is removed with all in it, and what its links lead to is not") {
  const tools::Scratch scratch;
  const fs::path tree = scratch / "tree", kept = scratch / "kept";
  fs::create_directories(tree / "pages" / "deeper");
  fs::create_directory(tree / "empty");
  fs::create_directory(kept);
  for (int k = 0; k < 100; ++k) std::ofstream(tree / (k % 2 ? "pages" : "pages/deeper") / std::to_string(k)) << k;
  std::ofstream(kept / "mine.txt") << "mine";
  fs::create_directory_symlink(kept, tree / "to-a-folder");
  fs::create_symlink(kept / "mine.txt", tree / "pages" / "to-a-file");
  fs::create_symlink("nowhere", tree / "to-nothing");
  emit::remove_tree(tree);
  CHECK(!fs::exists(fs::symlink_status(tree)));
  CHECK(tools::get(kept / "mine.txt") == "mine");
  emit::remove_tree(tree);  // one that is not there is no trouble
}
