#include "base/one_heap.hpp"

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

}  // namespace fairblade
