#include "base/side_by_side.hpp"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include "catch.hpp"

TEST_CASE("every piece of work is done once") {
  for (const std::size_t count : {0, 1, 2, 1000}) {
    std::vector<std::atomic<int>> done(count);
    fairblade::side_by_side(count, [&](std::size_t k) { ++done[k]; });
    for (const auto& times : done) CHECK(times == 1);
  }
}

TEST_CASE("work may share out work of its own, to any depth, and its exceptions come out") {
  std::vector<std::atomic<int>> done(8 * 9 * 10);
  fairblade::side_by_side(8, [&](std::size_t a) {
    fairblade::side_by_side(
        9, [&](std::size_t b) { fairblade::side_by_side(10, [&](std::size_t c) { ++done[(a * 9 + b) * 10 + c]; }); });
  });
  for (const auto& times : done) CHECK(times == 1);

  const auto inner = [](std::size_t k) {
    if (k == 3) throw std::runtime_error("inner");
  };
  CHECK_THROWS_AS(fairblade::side_by_side(4, [&](std::size_t) { fairblade::side_by_side(5, inner); }), std::runtime_error);
}

TEST_CASE("one piece that takes long leaves the others to whoever is free") {
  std::atomic<int> others{0};
  fairblade::side_by_side(2, [&](std::size_t part) {
    if (part == 0) return std::this_thread::sleep_for(std::chrono::milliseconds(5));
    fairblade::side_by_side(100, [&](std::size_t) { ++others; });
  });
  CHECK(others == 100);
}

TEST_CASE("the first exception by number comes out, and the rest is done all the same") {
  std::vector<std::atomic<int>> done(50);
  const auto work = [&](std::size_t k) {
    ++done[k];
    if (k == 40 || k == 7) throw std::runtime_error(std::to_string(k));
  };
  std::string said;
  try {
    fairblade::side_by_side(done.size(), work);
  } catch (const std::runtime_error& error) {
    said = error.what();
  }
  CHECK(said == "7");
  for (const auto& times : done) CHECK(times == 1);
}

TEST_CASE("where there are two cores two pieces are under way at once, nested ones too") {
  if (std::thread::hardware_concurrency() < 2) return;
  using namespace std::chrono;
  // Each of two pieces waits, for ten seconds at most, until the other has begun.
  const auto meet = [] {
    std::atomic<int> begun{0};
    std::atomic<bool> met{true};
    fairblade::side_by_side(2, [&](std::size_t) {
      ++begun;
      const auto until = steady_clock::now() + seconds(10);
      while (begun < 2 && steady_clock::now() < until) std::this_thread::yield();
      if (begun < 2) met = false;
    });
    return met.load();
  };
  CHECK(meet());
  // The inner pieces of the second are waited for by the first, and by one another.
  std::atomic<bool> all{true};
  std::atomic<int> inner{0};
  fairblade::side_by_side(2, [&](std::size_t part) {
    if (part == 0) {
      const auto until = steady_clock::now() + seconds(10);
      while (inner < 2 && steady_clock::now() < until) std::this_thread::yield();
      if (inner < 2) all = false;
    } else {
      fairblade::side_by_side(2, [&](std::size_t) { ++inner; });
    }
  });
  CHECK(all);
}

TEST_CASE("2026-11-27: a process forked off while others work does its own work alone") {
  std::atomic<bool> over{false};
  std::thread busy([&] {
    while (!over) fairblade::side_by_side(50, [](std::size_t) {});
  });
  int well = 0;
  for (int k = 0; k < 200; ++k) {
    const pid_t child = ::fork();
    if (child == 0) {
      ::signal(SIGALRM, SIG_DFL);
      ::alarm(20);  // where it waits for a thread that is not there
      std::atomic<int> done{0};
      fairblade::side_by_side(100, [&](std::size_t) { ++done; });
      if (k == 0) std::exit(done == 100 ? 0 : 1);  // once to the very end, where what is static goes
      ::_exit(done == 100 ? 0 : 1);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    well += WIFEXITED(status) && WEXITSTATUS(status) == 0 ? 1 : 0;
    if (well != k + 1) break;
  }
  over = true;
  busy.join();
  CHECK(well == 200);
}
