#include "section/outline.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/plain_form.hpp"

namespace fairblade::section {

std::vector<double> sample_places(const MeasuredSection& measured, std::size_t count) {
  std::vector<double> places;
  for (const double fraction : chord_fractions(count)) places.push_back(fraction * measured.chord);
  for (const Face face : {Face::port, Face::starboard}) {
    std::vector<double> nodes;
    nodes.reserve(measured.side(face).nodes().size());
    for (const Node& node : measured.side(face).nodes()) nodes.push_back(node.x);
    places = merged(places, nodes);
  }
  const double close = 1e-9 * measured.chord;
  const auto same = [close](double a, double b) { return b - a <= close; };
  places.erase(std::unique(places.begin(), places.end(), same), places.end());
  places.back() = measured.chord;
  return places;
}

std::vector<Point> outline(const MeasuredSection& measured, const std::vector<double>& places) {
  std::vector<Point> corners;
  corners.reserve(2 * places.size());
  auto port = measured.port.along(), starboard = measured.starboard.along();
  for (const double x : places) corners.emplace_back(x, port.at(x));
  for (const double x : places) corners.emplace_back(x, -starboard.at(x));
  std::reverse(corners.begin() + static_cast<std::ptrdiff_t>(places.size()), corners.end());
  return corners;
}

namespace {

struct NoseRadius {
  double radius = 0, error = 0;
};

// y = alpha c form(u) + beta c g(u), where g has unit slope in u at the nose and dies with slope and curvature at m.
NoseRadius nose_radius(const MeasuredSection& measured, double reading_error) {
  constexpr double m = 0.12, reach = 0.30;
  const double root = std::sqrt(m);
  const auto g = [&](double u) {
    const double w = u / root;
    if (w >= 1) return 0.0;
    const double v = w * w;
    return root * (w - 1.875 * v + 1.25 * v * v - 0.375 * v * v * v);
  };
  Eigen::Matrix2d normal = Eigen::Matrix2d::Zero();
  Eigen::Vector2d right = Eigen::Vector2d::Zero();
  if (measured.skeg > 0) return {};  // the nose is the skeg's
  const double c = measured.chord;
  for (const SurfacePoint& point : measured.points) {
    if (point.x > reach * c) continue;
    const double u = std::sqrt(point.x / c);
    const Eigen::Vector2d row(c * plain_form(u), c * g(u));
    normal += row * row.transpose();
    right += row * point.half_breadth;
  }
  const Eigen::FullPivLU<Eigen::Matrix2d> solver(normal);
  if (solver.rank() < 2 || solver.rcond() < 1e-10) return {};
  const Eigen::Vector2d fit = solver.solve(right);
  const Eigen::Vector2d at_nose(plain_form_coefficients[0], 1.0);
  const double gain = fit.dot(at_nose);  // dy/du over chord
  const double spread = reading_error * std::sqrt(at_nose.dot(solver.solve(at_nose)));
  const double halves = measured.thickness_only || measured.one_side_only ? std::sqrt(2.0) : 1.0;  // copies, not readings
  return {c * gain * gain / 2, c * std::abs(gain) * spread * halves};
}

}  // namespace

Figures figures_of(const MeasuredSection& measured, double reading_error) {
  Figures out;
  const auto places = sample_places(measured);
  const std::vector<Point> corners = outline(measured, places);
  out.area = area(polygon_of(corners));
  double square = 0;
  double before = 0;
  for (std::size_t k = 0; k < places.size(); ++k) {
    const double port = corners[k].y(), starboard = -corners[corners.size() - 1 - k].y();
    if (port + starboard > out.max_thickness) {
      out.max_thickness = port + starboard;
      out.max_thickness_at = places[k] / measured.chord;
    }
    const double now = (port - starboard) * (port - starboard);
    if (k > 0) square += (now + before) / 2 * (places[k] - places[k - 1]);
    before = now;
  }
  out.lopsided = std::sqrt(square / measured.chord);
  out.trailing_edge_thickness = measured.port.at(measured.chord) + measured.starboard.at(measured.chord);
  const NoseRadius nose = nose_radius(measured, reading_error);
  out.leading_edge_radius = nose.radius;
  out.leading_edge_radius_error = nose.error;
  return out;
}

}  // namespace fairblade::section
