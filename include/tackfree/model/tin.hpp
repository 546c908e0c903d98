// Tin: sizes that can be bought and what stands on the shelf, of a coating or of a thinner.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A tin size that can be bought.
struct TinSize {
  std::string label;  ///< as the person writes it: `1 qt`
  Volume volume;      ///< what is really in it
  std::optional<double> price;
};

/// A full or part tin at hand.
struct ShelfTin {
  Volume volume;
  std::optional<Date> opened_on;           ///< nothing: not known, or never opened
  std::optional<std::size_t> shared = {};  ///< index into Shelf::tins, of one that jobs share
};

/// A liquid that coatings are thinned or tools cleaned with, as the person can have it.
struct Thinner {
  std::string name;                ///< as the class calls it: `mineral spirits`
  std::vector<TinSize> tins;       ///< sizes that can be bought
  std::vector<ShelfTin> on_shelf;  ///< it does not spoil, so its age is not asked
  int line = 0;
};

}  // namespace tackfree
