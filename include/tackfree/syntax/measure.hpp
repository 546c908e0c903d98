// Measure: lengths, areas and volumes as people write them, such as `48 1/4 in`, `2 m2` or `1 qt`.
#pragma once

#include "tackfree/base/units.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// An amount read from text, or what would have been right, as a phrase that begins with "wanted".
template <class Quantity>
struct Reading {
  std::optional<Quantity> value;
  std::string wanted;
};

/// A length over 0, from 0.01 mm to 100 m: one number with its unit (mm, cm, m, in, ft, yd, ' or ")
/// or feet and inches together. A number is a decimal (`2.5`), a whole with a fraction (`48 1/4`,
/// `48-1/4`) or a fraction (`3/4`). A bare number counts in `bare`, where that is given.
Reading<Length> read_length(std::string_view text,
                            const std::optional<Unit<LengthKind>>& bare = std::nullopt);

/// A volume over 0, from 1 ml to 100 000 m3: ml, cl, l, m3, ft3, fl oz, pt, qt, gal. Fluid ounce,
/// pint, quart and gallon are the US ones; imperial ones are not read here.
Reading<Volume> read_volume(std::string_view text);

/// An area over 0, from 1 mm2 to 100 000 m2: mm2, cm2, m2, in2, ft2, yd2, sq in, sq ft, sq yd, sq
/// m.
Reading<Area> read_area(std::string_view text,
                        const std::optional<Unit<AreaKind>>& bare = std::nullopt);

/// A measure from a file with decimal commas, with points instead. Nothing where a point could
/// part thousands as well as decimals: `1.226 mm`.
std::optional<std::string> with_decimal_points(std::string_view text);

/// A column's head as it is looked up: small letters, and one underscore for whatever stands
/// between words: `Length (mm)` becomes `length_mm`.
std::string plain_head(std::string_view head);

/// The unit that the end of a column's head or key names (`length_in`, `area_m2`), if any, and the
/// head without it.
struct HeadUnit {
  std::string name;
  std::optional<Unit<LengthKind>> unit;
  std::optional<Unit<AreaKind>> area_unit;
};
HeadUnit head_unit(std::string_view head);

}  // namespace tackfree
