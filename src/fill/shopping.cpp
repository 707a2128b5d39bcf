#include "fill/shopping.hpp"

#include <cmath>

namespace fairblade::fill {
namespace {

ShoppingItem item(const std::string& what, double needed, const std::string& unit, const std::optional<job::Pack>& pack) {
  ShoppingItem out{what, needed, unit, std::nullopt, 0, std::nullopt};
  if (!pack) return out;
  out.pack_size = pack->size;
  out.packs = static_cast<int>(std::ceil(needed / pack->size - 1e-9));
  if (pack->price) out.cost = out.packs * *pack->price;
  return out;
}

bool same_epoxy(const job::Filler& a, const job::Filler& b) {
  const auto near = [](double p, double q) { return std::abs(p - q) < 1e-9; };
  return near(a.hardener_by_weight / a.resin_by_weight, b.hardener_by_weight / b.resin_by_weight) &&
         near(a.resin_density, b.resin_density) && near(a.unmixed_resin_density, b.unmixed_resin_density) &&
         near(a.hardener_density, b.hardener_density);
}

struct Epoxy {
  double resin = 0, hardener = 0;  // kg
  void add(const Mix& mix) {
    resin += mix.resin_kg;
    hardener += mix.hardener_kg;
  }
  void add_mixed(double kg, const job::Filler& of) {
    const double parts = of.resin_by_weight + of.hardener_by_weight;
    resin += kg * of.resin_by_weight / parts;
    hardener += kg * of.hardener_by_weight / parts;
  }
};

void add_epoxy(const job::Packs& packs, const Epoxy& epoxy, const std::string& whose, std::vector<ShoppingItem>& out) {
  if (!(epoxy.resin > 0)) return;
  out.push_back(item("epoxy resin" + whose, epoxy.resin, "kg", packs.resin));
  out.push_back(item("epoxy hardener" + whose, epoxy.hardener, "kg", packs.hardener));
}

void add_fillers(const job::Job& job, const std::array<ZoneMix, 3>& mixes, const Coats& coats, std::vector<ShoppingItem>& out) {
  Epoxy edges, faces;
  double edges_powder = 0, faces_powder = 0;
  for (const ZoneMix& one : mixes) {
    const bool of_faces = one.zone == Zone::faces;
    (of_faces ? faces : edges).add(one.mix);
    (of_faces ? faces_powder : edges_powder) += one.mix.powder_kg;
  }
  // Cloth is wetted, and pinholes skimmed, with the edges' epoxy.
  double neat = coats.pinhole_litres * job.edges.resin_density;
  for (const CoatPlan& coat : coats.coats) neat += coat.cloth ? coat.cloth->resin_kg : 0;
  if (coats.nose_glass) neat += coats.nose_glass->resin_kg / job.workshop.kept();
  edges.add_mixed(neat, job.edges);
  if (same_epoxy(job.edges, job.faces)) {
    edges.resin += faces.resin;
    edges.hardener += faces.hardener;
    add_epoxy(job.packs, edges, "", out);
  } else {
    add_epoxy(job.packs, edges, " for the edges", out);
    add_epoxy(job.packs, faces, " for the faces", out);
  }
  if (edges_powder > 0) out.push_back(item("filler powder for the edges", edges_powder, "kg", job.packs.edges_powder));
  if (faces_powder > 0) out.push_back(item("filler powder for the faces", faces_powder, "kg", job.packs.faces_powder));
}

void add_coats(const job::Job& job, const Coats& coats, std::vector<ShoppingItem>& out) {
  if (coats.nose_glass && coats.nose_glass->cloth_area > 0) {
    const job::Cloth& cloth = job.nose_glass->cloth;
    const double metres = metres_down(coats.nose_glass->cloth_area, coats.wetted.height, cloth.width / 1000);
    out.push_back(item("cloth for the nose, in strips down the blade", metres, "m", std::nullopt));
    if (cloth.price_per_m) out.back().cost = metres * *cloth.price_per_m;
  }
  for (std::size_t k = 0; k < coats.coats.size(); ++k) {
    const CoatPlan& coat = coats.coats[k];
    if (coat.cloth) {
      out.push_back(item(coat.name, coat.cloth->metres, "m", std::nullopt));
      out.back().cost = coat.cost;
    } else if (coat.litres > 0) {
      out.push_back(item(coat.name, coat.litres, "L", job.coats[k].pack));
      if (coat.thinner_litres > 0) out.push_back(item("thinner for " + coat.name, coat.thinner_litres, "L", std::nullopt));
    }
  }
}

}  // namespace

Shopping shopping_of(const job::Job& job, const std::array<ZoneMix, 3>& mixes, const Coats& coats) {
  Shopping out;
  out.currency = job.packs.currency;
  add_fillers(job, mixes, coats, out.items);
  add_coats(job, coats, out.items);
  out.all_priced = !out.items.empty();
  for (const ShoppingItem& one : out.items) {
    if (one.cost) out.cost = out.cost.value_or(0) + *one.cost;
    else out.all_priced = false;
  }
  return out;
}

YearCost compare_coatings(const job::ComparedCoating& a, const job::ComparedCoating& b) {
  const job::ComparedCoating& cheap = a.price <= b.price ? a : b;
  const job::ComparedCoating& dear = a.price <= b.price ? b : a;
  return {cheap.name, dear.name, cheap.price / cheap.life_years, dear.price / dear.life_years,
          cheap.life_years * dear.price / cheap.price};
}

}  // namespace fairblade::fill
