// The program: words in, exit status out.
#include <fcntl.h>
#include <unistd.h>

#include <csignal>
#include <exception>
#include <iostream>
#include <new>
#include <string>
#include <vector>

#include "cli/cli.hpp"

namespace {

/// What fails while writing is to be told and to end in its exit status: a full disk, a reader who went away, a limit on
/// the size of files. And no file may be opened under the number of a closed output and be written into: that number is
/// taken first, by something that cannot be written to.
void prepare() {
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);
  for (const int standard : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(standard, F_GETFD) < 0) (void)!::open("/dev/null", O_RDONLY);
  }
}

}  // namespace

int main(int argc, char** argv) {
  prepare();
  try {
    return fairblade::cli::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc), std::cout, std::cerr);
  } catch (const std::bad_alloc&) {
    std::cerr
        << "fairblade: stopped: there is not enough memory: close other programs, or thin the readings; nothing was written\n";
    return fairblade::cli::ExitStatus::not_written;
  } catch (const std::exception& error) {  // what nobody foresaw
    std::cerr << "fairblade: stopped: " << error.what() << '\n';
    return fairblade::cli::ExitStatus::not_written;
  }
}
