// Product: MaybeMm, a length that may be missing, in the room of a double: of a scan there are millions. Verbs:
// its own.
#pragma once
#include <cmath>
#include <limits>
#include <optional>

namespace fairblade {

/// mm. Used as std::optional<double> is, from which it comes and to which it goes; what is missing is kept as NaN, which no
/// length can be.
class MaybeMm {
 public:
  constexpr MaybeMm() = default;
  constexpr MaybeMm(std::nullopt_t) {}
  constexpr MaybeMm(double mm) : mm_(mm) {}
  constexpr MaybeMm(std::optional<double> mm) : mm_(mm.value_or(none)) {}
  bool has_value() const { return !std::isnan(mm_); }
  explicit operator bool() const { return has_value(); }
  operator std::optional<double>() const { return has_value() ? std::optional(mm_) : std::nullopt; }
  double operator*() const { return mm_; }
  double& operator*() { return mm_; }
  double value_or(double other) const { return has_value() ? mm_ : other; }
  void reset() { mm_ = none; }
  friend bool operator==(const MaybeMm& a, const MaybeMm& b) { return a.has_value() ? a.mm_ == b.mm_ : !b.has_value(); }

 private:
  static constexpr double none = std::numeric_limits<double>::quiet_NaN();
  double mm_ = none;
};

}  // namespace fairblade
