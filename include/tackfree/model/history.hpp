// History: what has happened already, as the person's log says it.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// A coat that was put on: what it was expected to take from the tin and what it took.
struct CoatPutOn {
  std::string coating;
  Instant at;
  Volume expected;
  Volume used;
};

/// Facts in the order they happened. They never move.
struct History {
  std::vector<CoatPutOn> coats;
};

}  // namespace tackfree
