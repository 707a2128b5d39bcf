// How memory is taken from the system; on other libraries than glibc nothing is done. Verbs: share_one_heap, keep_heap.
#pragma once

namespace fairblade {

/// Before threads begin, for a scan's worth of work: glibc gives each thread a heap of its own, 64 MiB at a time, and what one
/// leaves another cannot take. Seen: recheck of a million rows 236 or 302 MB as it fell out, now 236 at most, for a tenth more
/// time.
void share_one_heap();

/// For a blade measured by hand, which needs little: what was freed is kept to be used again, where it would go back to the
/// system and every page of it be cleared anew. Seen: a plan in 0.96 of the time.
void keep_heap();

}  // namespace fairblade
