// What is put on the blade, and where: coats, cloth, fillers, packs, the workshop. Read with the job (job.hpp).
// Where the owner gave a data sheet's figure it is here; what stays at its default is generic and listed as such.
// Verbs: glass_layer, filler_with.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace fairblade::job {

/// Both ends of a waiting time, in hours.
struct Window {
  double from = 0, to = 0;
};

constexpr double mixed_epoxy_density = 1.15;  ///< kg/L, where no data sheet was given

/// Thickness of one layer of cloth and the resin in it, mm: W/rho_f + W (1 - X)/(X rho_r), g/m² over kg/L giving micrometres.
inline double glass_layer(double g_per_m2, double fibre_fraction, double fibre_density, double resin_density) {
  return g_per_m2 / 1000 * (1 / fibre_density + (1 - fibre_fraction) / (fibre_fraction * resin_density));
}

struct Cloth {
  double g_per_m2 = 0;
  double width = 1000;               ///< mm, of the roll
  double fibre_weight_percent = 50;  ///< of the finished laminate
  double fibre_density = 2.54;       ///< kg/L
  std::optional<double> price_per_m;
};

/// A pack as it is sold: kg, or litres for a coat.
struct Pack {
  double size = 0;
  std::optional<double> price;
};

/// How long a mix can be worked, and the temperature that was said of.
struct WorkingTime {
  double minutes = 0, at = 25;  ///< degrees C
};

enum class CoatedPart { all, filled, bare, old };

/// One coat over the filler, in the order of `coats`. One of thickness and dry_film_um is given, or cloth alone, from
/// which the thickness then follows.
struct Coat {
  std::string name;
  std::optional<double> thickness;  ///< mm per layer
  std::optional<double> dry_film_um;
  int layers = 1;
  std::optional<double> volume_solids_percent;
  std::string stage;  ///< "glass" or "paint"
  CoatedPart on = CoatedPart::all;
  std::optional<Cloth> cloth;
  std::optional<double> spreading_rate;                  ///< m² per litre and layer, as the data sheet has it
  std::optional<Pack> pack;                              ///< litres
  std::optional<double> density;                         ///< kg/L, mixed
  std::optional<std::array<double, 2>> parts_by_weight;  ///< of a two-part coat: base, hardener (or powder)
  std::optional<double> thinner_percent;                 ///< of the liquid, by volume
  std::optional<WorkingTime> working_time;
  std::optional<Window> recoat;  ///< hours
  bool one_day = false;          ///< all layers must go on in one day
  std::optional<double> life_years;
  int line = 0;  ///< where it begins in the job's file
};

/// A filler's mix; what the owner did not give is a default, listed.
struct Filler {
  double resin_density = mixed_epoxy_density;  ///< kg/L, mixed
  double resin_by_weight = 100, hardener_by_weight = 38;
  double powder_density = 0.35;      ///< kg/L of the particles, not of the bulk
  double powder_per_100_epoxy = 35;  ///< mass
  double layer_limit = 6;            ///< mm
  /// kg/L before mixing. The defaults are estimates that mix to 1.15 at 100 : 38.
  double unmixed_resin_density = 1.18, hardener_density = 1.08;
  bool parts_estimated = true;     ///< at least one of the two is a default
  bool ratio_by_volume = false;    ///< the owner gave it so; the weights follow from the two densities
  std::optional<Window> overcoat;  ///< hours, between passes without sanding
  std::optional<double> sand_after_hours;
};

/// The default filler with another powder: density of its particles, kg/L, and mass to 100 of epoxy.
inline Filler filler_with(double powder_density, double powder_per_100_epoxy) {
  Filler out;
  out.powder_density = powder_density;
  out.powder_per_100_epoxy = powder_per_100_epoxy;
  return out;
}

struct Workshop {
  double temperature = 20;  ///< degrees C
  double humidity_percent = 60;
  double pot_life_minutes = 25, pot_life_at = 25, pot_life_mass_g = 100;
  double batch_limit_g = 300;
  double loss_percent = 12;                               ///< of what is mixed
  double kept() const { return 1 - loss_percent / 100; }  ///< the share that stays on the blade
  double sanding_allowance = 0.5;                         ///< mm over the faces that are filled
  double spread_kg_per_minute = 0.05;                     ///< filler, one pair of hands; common practice, no source
  double paint_m2_per_minute = 0.1;                       ///< one pair of hands with a roller; common practice, no source
  double pinhole_litres_per_m2 = 0.1;                     ///< common practice
  bool coat_tip = true, coat_top = false;
  double support_patches_m2 = 0;       ///< under the blade's supports, coated after the rest
  std::optional<double> bare_percent;  ///< of the surface that is not filled
  int start = 9 * 60, dusk = 19 * 60;  ///< minutes after midnight
};

/// Packs of what the fillers are made of, kg.
struct Packs {
  std::optional<Pack> resin, hardener, edges_powder, faces_powder;
  std::string currency;
};

/// Zones by chord fraction: the first and the last part of the measured chord, extensions with them.
struct ZoneBounds {
  double leading_edge = 0.15, trailing_edge = 0.15;
};

/// The nose built up in cloth first.
struct NoseGlass {
  Cloth cloth;
  double cover = 2;  ///< mm of filler over the glass, to shape
};

/// Two ways of coating, for the cost of a year: price of the whole coat, and how long it lasts.
struct ComparedCoating {
  std::string name;
  double price = 0, life_years = 0;
};

}  // namespace fairblade::job
