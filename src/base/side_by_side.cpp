#include "base/side_by_side.hpp"

#include <pthread.h>

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <exception>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace fairblade {
namespace {

/// One call's work. Whoever takes part takes one piece at a time.
class Batch {
 public:
  Batch(std::size_t count, const std::function<void(std::size_t)>& work) : work_(work), count_(count) { failed_.resize(count); }
  std::size_t count() const { return count_; }
  bool has_more() const { return next_ < count_; }
  void take_one() {
    const std::size_t k = next_++;
    if (k >= count_) return;
    try {
      work_(k);
    } catch (...) {
      failed_[k] = std::current_exception();
    }
  }
  void take_all() {
    while (has_more()) take_one();
  }
  void rethrow_first() const {
    for (const std::exception_ptr& one : failed_) {
      if (one) std::rethrow_exception(one);
    }
  }

  std::size_t number = 0, helpers = 0;  ///< of the pool, under its lock

 private:
  const std::function<void(std::size_t)>& work_;
  std::size_t count_;
  std::atomic<std::size_t> next_{0};
  std::vector<std::exception_ptr> failed_;
};

/// A process that was forked off has none of the pool's threads, and one of them may have held the lock as it was.
bool forked_off = false;
[[maybe_unused]] const int told = ::pthread_atfork(nullptr, nullptr, [] { forked_off = true; });

/// As many threads as there are cores, the caller's own among them: made once, since a thread costs as much as many a piece of
/// work. Work may ask for more work to be shared: whoever waits for the end of a batch helps with those begun after it, never
/// with older ones, or a piece would pile upon a piece.
class Pool {
 public:
  Pool() {
    const unsigned others = std::max(1u, std::thread::hardware_concurrency()) - 1;
    try {
      for (unsigned k = 0; k < others; ++k) threads_.emplace_back([this] { serve(); });
    } catch (...) {
      // No more threads to be had: those that there are do the work.
    }
  }
  ~Pool() {
    {
      const std::lock_guard lock(lock_);
      ending_ = true;
    }
    changed_.notify_all();
    for (std::thread& one : threads_) one.join();
  }
  Pool(const Pool&) = delete;
  Pool& operator=(const Pool&) = delete;

  void run(Batch& batch) {
    {
      const std::lock_guard lock(lock_);
      batch.number = ++begun_;
      open_.push_back(&batch);
    }
    for (std::size_t k = 1; k < batch.count() && k <= threads_.size(); ++k) changed_.notify_one();
    batch.take_all();
    std::unique_lock lock(lock_);
    std::erase(open_, &batch);
    while (batch.helpers > 0) {
      if (Batch* other = open_after(batch.number)) help(*other, lock);
      else changed_.wait(lock);
    }
  }

 private:
  void serve() {
    std::unique_lock lock(lock_);
    while (!ending_) {
      if (Batch* batch = open_after(0)) help(*batch, lock);
      else changed_.wait(lock);
    }
  }

  void help(Batch& batch, std::unique_lock<std::mutex>& lock) {
    ++batch.helpers;
    lock.unlock();
    batch.take_one();
    lock.lock();
    if (--batch.helpers == 0 && !batch.has_more()) changed_.notify_all();
  }

  /// The oldest after that one: its pieces are the largest.
  Batch* open_after(std::size_t number) const {
    const auto found =
        std::find_if(open_.begin(), open_.end(), [&](const Batch* one) { return one->number > number && one->has_more(); });
    return found == open_.end() ? nullptr : *found;
  }

  std::mutex lock_;
  std::condition_variable changed_;  // work has come, or someone has done with theirs
  std::vector<Batch*> open_;         // in the order of their numbers
  std::size_t begun_ = 0;
  bool ending_ = false;
  std::vector<std::thread> threads_;
};

}  // namespace

void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work) {
  Batch batch(count, work);
  if (count < 2 || forked_off) {
    batch.take_all();
  } else {
    // A process that was forked off leaves the pool as it is: its threads are not there to end, and others' waits still count.
    static const std::unique_ptr<Pool, void (*)(Pool*)> pool(new Pool, [](Pool* one) {
      if (!forked_off) delete one;
    });
    pool->run(batch);
  }
  batch.rethrow_first();
}

}  // namespace fairblade
