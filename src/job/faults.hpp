// Private to the job room. Product: the list of what is wrong, while it is being gathered.
// Verbs: add, in_order.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "base/fault.hpp"

namespace fairblade::job {

class Faults {
 public:
  static constexpr std::size_t most = 20;
  void add(Place place, std::string what, std::string remedy);
  bool full() const { return list_.size() >= most; }
  bool none() const { return list_.empty(); }
  /// By line within each file, files in the order they first appeared.
  std::vector<Fault> in_order() const;

 private:
  std::vector<Fault> list_;
};

}  // namespace fairblade::job
