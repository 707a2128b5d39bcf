// Independent pieces of work on all the processor's cores. Verbs: side_by_side.
#pragma once
#include <cstddef>
#include <functional>

namespace fairblade {

/// Calls work(0) ... work(count - 1), each once, in no order and several at a time: they must share nothing that they
/// change. Results do not depend on how many cores there are. The first exception, by number, comes out again.
/// Work may share out work of its own in this way: whoever has done with theirs helps. So a caller that waits does pieces of
/// others' work meanwhile: hold no lock, and lean on nothing of the thread's own, across a call. After an exception the other
/// pieces are still done before it comes out.
void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace fairblade
