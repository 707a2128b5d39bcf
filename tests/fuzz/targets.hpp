// What the fuzzers feed: each takes any bytes and must come back, with a product or with faults. A fault that is not told in one
// line, or a number that is none in a drawing, ends the program as a crash would.
#pragma once
#include <string>
#include <string_view>

namespace fuzz {

void job_reader(std::string_view bytes);  ///< bytes as a job file
void csv_reader(std::string_view bytes);  ///< bytes as a CSV that is a job
/// Bytes as a job (a CSV where they do not begin with a brace), through to every file of its folder, none of it written.
void whole_plan(std::string_view bytes);

/// Bytes as a plan.json, and a round of readings against it where it is one.
void frozen_plan(std::string_view bytes);

/// Ends the program with that message.
[[noreturn]] void broken(const std::string& what);
/// broken() where the words are not one line each of "FILE:LINE: what is wrong: what to do", 20 at most.
void judge_refusal(const std::string& words);
/// broken() where a file holds a number that is none. `given`: what was asked; a word of it is the owner's, and may stand there.
void judge_file(const std::string& path, const std::string& bytes, std::string_view given = {});

}  // namespace fuzz
