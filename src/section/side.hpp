// One side of a measured section: half-breadth as a smooth function of x. Verbs: Side's own. mm.
#pragma once
#include <cstddef>
#include <vector>

namespace fairblade::section {

/// A node of a side: x mm aft of the leading edge, half-breadth mm.
struct Node {
  double x = 0, half_breadth = 0;
};

/// Least-squares 4-digit form plus PCHIP of the residual in v = sqrt((x + lead)/(chord + lead)), where `lead` is the
/// length of a fixed skeg ahead of this edge: the form begins there. On exact samples of any 4-digit form it is that
/// form, to rounding. Without the form (a plate is none) the half-breadths themselves are interpolated, still in v.
class Side {
 public:
  Side() = default;
  /// Nodes sorted by x, all distinct, the first at 0 and the last at `chord` (mm, > 0); two at least.
  Side(double chord, const std::vector<Node>& nodes, double lead = 0, bool with_form = true);

  double chord() const { return chord_; }
  double at(double x) const;       ///< half-breadth, mm; x held to [0, chord]
  double slope(double x) const;    ///< dy/dx; +inf at a round nose
  double at_u(double u) const;     ///< half-breadth at x = chord u²
  double slope_u(double u) const;  ///< d(half-breadth)/du, mm; finite at the nose
  double lead() const { return lead_; }
  bool with_form() const { return with_form_; }
  const std::vector<Node>& nodes() const { return nodes_; }

  /// The same half-breadths, sooner where they are asked for in rising order of x: each search begins where the last ended.
  class Along {
   public:
    explicit Along(const Side& side) : side_(side) {}
    double at(double x);
    double at_u(double u) { return at(side_.chord_ * u * u); }

   private:
    const Side& side_;
    std::size_t piece_ = 0;
  };
  Along along() const { return Along(*this); }

 private:
  double place(double x) const;  // v at x
  std::size_t piece_at(double v) const;
  double residual(std::size_t piece, double v, double* slope) const;
  double chord_ = 0, lead_ = 0;
  bool with_form_ = true;
  double thickness_ = 0;
  std::vector<Node> nodes_;
  std::vector<double> v_, left_, left_slope_;  // PCHIP: nodes, residual mm, its slope per v
};

}  // namespace fairblade::section
