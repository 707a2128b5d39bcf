// Polygon difference beside GEOS on the same outlines; one station's change; the volumes of a blade.
#include <boost/geometry.hpp>

#include "base/geometry.hpp"
#include "bench/bench.hpp"
#include "fill/fill.hpp"
#include "plan/plan.hpp"
#include "polygon_areas.hpp"
#include "target/slice.hpp"
#ifdef FAIRBLADE_BENCH_GEOS
#include <geos_c.h>

#include <cstdarg>
#include <memory>
#endif

namespace bench {
namespace {

using namespace fairblade;

plan::Plan whimbrel() {
  const auto job = job::read_job(PROFILES_DIR "/whimbrel/whimbrel.json");
  auto plan = job ? plan::make_plan(*job) : Outcome<plan::Plan>(job.faults());
  if (!plan) throw std::runtime_error(one_line(plan.faults().front()));
  return *plan;
}

#ifdef FAIRBLADE_BENCH_GEOS
/// The two outlines as GEOS holds them.
class Geos {
 public:
  Geos(const Polygon& a, const Polygon& b) : handle_(GEOS_init_r()), a_(polygon(a)), b_(polygon(b)) {}
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;
  ~Geos() {
    GEOSGeom_destroy_r(handle_, a_);
    GEOSGeom_destroy_r(handle_, b_);
    GEOS_finish_r(handle_);
  }
  double area_of_difference() const {
    GEOSGeometry* rest = GEOSDifference_r(handle_, a_, b_);
    double out = -1;
    if (rest != nullptr) GEOSArea_r(handle_, rest, &out), GEOSGeom_destroy_r(handle_, rest);
    return out;
  }

 private:
  GEOSGeometry* polygon(const Polygon& from) const {
    const auto& ring = from.outer();
    GEOSCoordSequence* places = GEOSCoordSeq_create_r(handle_, static_cast<unsigned>(ring.size()), 2);
    for (unsigned k = 0; k < ring.size(); ++k) GEOSCoordSeq_setXY_r(handle_, places, k, ring[k].x(), ring[k].y());
    return GEOSGeom_createPolygon_r(handle_, GEOSGeom_createLinearRing_r(handle_, places), nullptr, 0);
  }
  GEOSContextHandle_t handle_;
  GEOSGeometry *a_, *b_;
};
#endif

}  // namespace

std::vector<Kernel> area_kernels() {
  const auto plan = std::make_shared<const plan::Plan>(whimbrel());
  const auto pair = std::make_shared<const target::Pair>(target::common_outlines(plan->measured[0], plan->targets[0]));
  const Polygon target = polygons_of_outline(pair->target).front(), measured = polygons_of_outline(pair->measured).front();
  const std::string corners =
      std::to_string(target.outer().size()) + " and " + std::to_string(measured.outer().size()) + " corners";
  std::vector<Kernel> out;
  Kernel areas{"difference",
               "areas to add and to take off, " + corners,
               [=] {
                 const auto both = target::areas_between(*pair);
                 return both.add + both.remove;
               },
               "",
               {},
               {},
               ""};
  Kernel shape{"difference-shape",
               "target less measured as polygons to hatch, " + corners,
               [=] { return area(fairblade::difference(target, measured)); },
               "",
               {},
               {},
               ""};
#ifdef FAIRBLADE_BENCH_GEOS
  const auto geos = std::make_shared<const Geos>(target, measured), back = std::make_shared<const Geos>(measured, target);
  areas.reference_name = "GEOS, both differences";
  areas.reference = [=] { return geos->area_of_difference() + back->area_of_difference(); };
  areas.goal = {1.0, {}};
  shape.reference_name = "GEOS";
  shape.reference = [=] { return geos->area_of_difference(); };
  for (Kernel* one : {&areas, &shape}) {
    char text[80];
    std::snprintf(text, sizeof text, "areas %.1e mm2 apart", std::abs(one->ours() - one->reference()));
    one->agreement = text;
  }
#endif
  out.push_back(areas);
  out.push_back(shape);
  out.push_back({"change",
                 "one station: areas, depths at every reading",
                 [=] { return fill::compare(plan->measured[0], plan->targets[0]).add_area; },
                 "",
                 {},
                 {},
                 ""});
  out.push_back({"volumes",
                 "loft between five stations, and the litres",
                 [=] { return fill::sum_volumes(plan->job, plan->measured, plan->targets, plan->changes).add; },
                 "",
                 {},
                 {},
                 ""});
  return out;
}

}  // namespace bench
