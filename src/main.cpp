// The program: words in, exit status out.
#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include "cli/cli.hpp"

int main(int argc, char** argv) {
  try {
    return fairblade::cli::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc), std::cout, std::cerr);
  } catch (const std::exception& error) {  // out of memory, and what nobody foresaw
    std::cerr << "fairblade: stopped: " << error.what() << '\n';
    return fairblade::cli::ExitStatus::not_written;
  }
}
