#include "tackfree/volume/film.hpp"

#include <algorithm>

namespace tackfree {
namespace {

// A film that meets its aim to the last digit must not fail by a rounding error.
constexpr double rounding = 1e-9;

}  // namespace

FilmThickness wet_film(SpreadRate spread) {
  return micrometres(1000.0 / spread.in(square_metres_per_litre));
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the order of the formula
FilmThickness dry_film(FilmThickness wet, Fraction solids, Fraction thinner) {
  return wet * (solids.in(fraction) / (1.0 + thinner.in(fraction)));
}

Fraction thinner_per_coating(Fraction of_mix) {
  const double share = of_mix.in(fraction);
  return fraction(share / (1.0 - share));
}

FilmBuild film_build(const Coating& coating, const Thinning& thinning, int coats,
                     const NeedSpread& figures) {
  FilmBuild build;
  build.coats = coats;
  build.wet = wet_film(coating.spread.value);
  build.first_dry = dry_film(build.wet, coating.solids.value, thinning.first);
  build.later_dry = dry_film(build.wet, coating.solids.value, thinning.later);
  if (coats < 1 || !coating.builds_film) return build;
  int sandings = 0;
  for (int coat = 1; coating.needs_sanding_between && coat < coats; ++coat)
    if (coating.grits.after_coat(coat, coats)) ++sandings;
  build.counted_dry = build.first_dry * figures.first_coat_film_share.value +
                      build.later_dry * (coats - 1) - coating.lost_to_sanding.value * sandings;
  return build;
}

int coats_for_aim(const Coating& coating, const Thinning& thinning, Wear wear,
                  const NeedSpread& figures, const SameClass& other) {
  const FilmThickness aim = coating.film_aim.at(static_cast<std::size_t>(wear)).value;
  const auto film = [&](int coats) {
    return film_build(coating, thinning, coats, figures).counted_dry + other.film;
  };
  int coats = std::max(1, coating.coats_min.value - other.coats);
  while (coats + other.coats < coating.coats_max.value && is_thin(film(coats), aim)) ++coats;
  return coats;
}

bool is_thin(FilmThickness counted, FilmThickness aim) { return counted < aim * (0.9 - rounding); }

}  // namespace tackfree
