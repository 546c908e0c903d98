// Lessons: what the coats of the log took and how they dried, for the next ones to go by.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A coat that was put on: what it was expected to take from the tin and what it took.
struct CoatPutOn {
  std::string coating;
  Instant at;
  Volume expected;
  Volume used;
  bool insisted = false;  ///< counts however far off it is
  int entry = 0;          ///< its number in the log
};

/// A coat that was tried: the drying it had had, as a multiple of what its stage was reckoned to
/// need, at the last trial that it failed and the first that it passed.
struct CoatTried {
  std::string coating;
  std::optional<double> failed_at, passed_at;
  bool insisted = false;
  int entry = 0;  ///< number of the last trial in the log
};

struct Lessons {
  std::vector<CoatPutOn> coats;
  std::vector<CoatTried> tried;
};

}  // namespace tackfree
