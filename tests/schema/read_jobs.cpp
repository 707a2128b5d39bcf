// What the reader says of job files, for the test of their schema. Names come in, one a line. For each: how many faults
// there are, and those, one a line. With --write and a name: the job file that asks the same.
#include <iostream>
#include <string>

#include "job/asked.hpp"

int main(int argc, char** argv) {
  using namespace fairblade;
  if (argc == 3 && std::string(argv[1]) == "--write") {
    const auto asked = job::read_asked(argv[2], {}, true);
    if (!asked) return 2;
    std::cout << job::job_file_text(*asked->tree, asked->job, {});
    return 0;
  }
  for (std::string name; std::getline(std::cin, name);) {
    const auto job = job::read_job(name);
    std::cout << job.faults().size() << '\n';
    for (const Fault& fault : job.faults()) std::cout << one_line(fault) << '\n';
  }
}
