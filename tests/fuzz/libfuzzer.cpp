// One of the targets for libFuzzer; which one, the build says.
#include <cstddef>
#include <cstdint>

#include "fuzz/targets.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  fuzz::FUZZ_TARGET({reinterpret_cast<const char*>(data), size});
  return 0;
}
