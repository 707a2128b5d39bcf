// What can be wrong with an owner's data, as values: never thrown across rooms. Verbs: one_line, all_or_faults.
#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace fairblade {

/// Where a value was written. `line` counts from 1; 0 means the file as a whole or a command-line option.
struct Place {
  std::string file;
  int line = 0;
};

/// One refusal: where, what is wrong, and what the owner should do about it.
struct Fault {
  Place place;
  std::string what;
  std::string remedy;
};

/// "FILE:LINE: what is wrong: what to do"; without ":LINE" where there is none. Control characters are escaped,
/// so that a fault is always one line.
std::string one_line(const Fault& fault);

/// Something the owner should know or decide; the plan stands all the same.
/// `code` is a short stable word ("max-removal"), `where` is "station A" or "job".
struct Warning {
  std::string code;
  std::string where;
  std::string text;
};

/// A default that was used: the key as written in a job file ("target.max_removal") and its value as text.
struct DefaultUsed {
  std::string key;
  std::string value;
};

/// Either a value or the faults that prevented it.
template <class T>
class Outcome {
 public:
  Outcome(T value) : value_(std::move(value)) {}                      // NOLINT: meant to be implicit
  Outcome(Fault fault) : faults_{std::move(fault)} {}                 // NOLINT
  Outcome(std::vector<Fault> faults) : faults_(std::move(faults)) {}  // NOLINT
  explicit operator bool() const { return value_.has_value(); }
  T& operator*() { return *value_; }
  const T& operator*() const { return *value_; }
  T* operator->() { return &*value_; }
  const T* operator->() const { return &*value_; }
  const std::vector<Fault>& faults() const { return faults_; }

 private:
  std::optional<T> value_;
  std::vector<Fault> faults_;
};

/// The values of all, or the faults of those that have none, both in their order.
template <class T>
Outcome<std::vector<T>> all_or_faults(std::vector<Outcome<T>> outcomes) {
  std::vector<T> values;
  std::vector<Fault> faults;
  values.reserve(outcomes.size());
  for (Outcome<T>& one : outcomes) {
    if (one) values.push_back(std::move(*one));
    else faults.insert(faults.end(), one.faults().begin(), one.faults().end());
  }
  if (!faults.empty()) return faults;
  return values;
}

}  // namespace fairblade
