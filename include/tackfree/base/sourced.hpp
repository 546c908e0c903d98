// Sourced: a value that knows where it comes from.
#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace tackfree {

/// Where a figure comes from; the five words that every output uses.
enum class Origin {
  measured,   ///< the person's own reading
  label,      ///< the tin or its data sheet
  published,  ///< a standard, handbook or paper, named in `source`
  practice,   ///< common practice in the trade, no source
  assumed     ///< this project's own choice
};

/// The word itself: "measured", "label", "published", "practice" or "assumed".
constexpr std::string_view word_for(Origin origin) {
  switch (origin) {
    case Origin::measured:
      return "measured";
    case Origin::label:
      return "label";
    case Origin::published:
      return "published";
    case Origin::practice:
      return "practice";
    case Origin::assumed:
      return "assumed";
  }
  return "assumed";
}

/// A value with its origin and, where there is one, the name of its source.
template <class T>
struct Sourced {
  T value{};
  Origin origin = Origin::assumed;
  std::string source;
};

template <class T>
Sourced<T> sourced(T value, Origin origin, std::string source = {}) {
  return {std::move(value), origin, std::move(source)};
}

}  // namespace tackfree
