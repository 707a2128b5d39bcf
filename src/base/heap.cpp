#include "base/heap.hpp"

#include <cstdlib>  // tells __GLIBC__

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace fairblade {

void share_one_heap() {
#ifdef __GLIBC__
  mallopt(M_ARENA_MAX, 1);
#endif
}

void keep_heap() {
#ifdef __GLIBC__
  constexpr int mebibyte = 1 << 20;
  mallopt(M_MMAP_THRESHOLD, 32 * mebibyte);
  mallopt(M_TRIM_THRESHOLD, 256 * mebibyte);
  mallopt(M_TOP_PAD, 16 * mebibyte);
#endif
}

}  // namespace fairblade
