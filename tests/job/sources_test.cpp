// Whether a job's files are still what they were. Expected digests: the published test vectors of FNV-1a, 64 bits (RFC
// 9923, recalled: of "", "a" and "foobar").
#include "job/sources.hpp"

#include "catch.hpp"
#include "job/scratch.hpp"

using namespace fairblade;

TEST_CASE("digests are FNV-1a's") {
  const Scratch scratch;
  for (const auto& [bytes, digest] :
       {std::pair("", "cbf29ce484222325"), {"a", "af63dc4c8601ec8c"}, {"foobar", "85944171f73967e8"}}) {
    const std::string file = scratch.write("bytes", bytes);
    CHECK(job::state_of({file, digest}) == job::SourceState::same);
    CHECK(job::state_of({file, "85944171f73967e9"}) == job::SourceState::changed);
  }
}

TEST_CASE("a job's files: the same, changed, gone") {
  const Scratch scratch;
  const std::string readings = scratch.write("r.csv", "station,x,port,starboard\nA,0,0,0\nA,50,10,10\nA,400,1,1\n");
  const auto job = scratch.read(
      "j.json", R"({ "job": "Knot", "stations": [ { "name": "A", "down": 0, "chord": 400 } ], "readings_file": "r.csv" })");
  REQUIRE(job);
  const auto sources = job::sources_of(*job);
  REQUIRE(sources.size() == 2);
  CHECK(sources[1].file == readings);
  for (const auto& one : sources) CHECK(job::state_of(one) == job::SourceState::same);
  scratch.write("r.csv", "station,x,port,starboard\nA,0,0,0\nA,50,10,11\nA,400,1,1\n");
  CHECK(job::state_of(sources[0]) == job::SourceState::same);
  CHECK(job::state_of(sources[1]) == job::SourceState::changed);
  std::filesystem::remove(readings);
  CHECK(job::state_of(sources[1]) == job::SourceState::gone);
}
