// Film: wet and dry film from spread and solids, and the number of coats a system needs.
#pragma once

#include "tackfree/base/units.hpp"
#include "tackfree/model/finishing_data.hpp"

namespace tackfree {

/// Wet film of one coat: 1000 / spread(m2/L), in um.
/// Source: geometry: 1 L spread 1 um thick covers 1000 m2.
FilmThickness wet_film(SpreadRate spread);

/// Dry film = wet x solids / (1 + T), T = thinner per volume of coating.
/// Source: MIL-HDBK-1110 par. 2.1.5 (without thinner); painters' conversion rule (thinned).
FilmThickness dry_film(FilmThickness wet, Fraction solids, Fraction thinner = {});

/// Thinner per volume of coating from thinner per volume of finished mix: T = p / (1 - p).
/// Range: 0 <= p < 1.
Fraction thinner_per_coating(Fraction of_mix);

/// Thinner per volume of coating: in the first coat of a step, and in its later ones.
struct Thinning {
  Fraction first;
  Fraction later;
};

/// Coats of the same class in the steps right before or after: they make one film.
struct SameClass {
  FilmThickness film;
  int coats = 0;
};

/// The film of a run of coats.
struct FilmBuild {
  int coats = 0;
  FilmThickness wet;          ///< of each coat as applied
  FilmThickness first_dry;    ///< of the first coat, all of it
  FilmThickness later_dry;    ///< of each later coat
  FilmThickness counted_dry;  ///< half of the first, all later, less what sanding takes
};

/// The dry film that counts after `coats` coats on bare wood, with sanding between each two where
/// the class asks for a grit there. On sealed wood the first coat counts whole: `figures` then says
/// share 1. Source: assumption of this project (half of the first coat, 4 um off for each sanding).
FilmBuild film_build(const Coating& coating, const Thinning& thinning, int coats,
                     const NeedSpread& figures);

/// Whether a counted film falls short of its aim by more than 10 %. An aim of 0 is always met: the
/// class builds no film, or goes by the number of its coats.
bool is_thin(FilmThickness counted, FilmThickness aim);

/// The fewest coats within the class's range whose film comes within 10 % of the aim;
/// the most the class allows when none does. `other` counts towards film and coats.
/// Source: assumption of this project (a system within 10 % of its aim is good).
int coats_for_aim(const Coating& coating, const Thinning& thinning, Wear wear,
                  const NeedSpread& figures, const SameClass& other = {});

}  // namespace tackfree
