// Measure: any text as a length, an area or a volume, as a decimal and as a column's head.

#include "tackfree/syntax/measure.hpp"

#include "fuzz/fuzzed.hpp"

namespace {

using namespace tackfree;

template <class Kind>
void must_lie(const Reading<Quantity<Kind>>& reading, Quantity<Kind> least, Quantity<Kind> most) {
  fuzz::must(reading.value.has_value() == reading.wanted.empty(), "a size, or what would be one");
  fuzz::must(!reading.value || (*reading.value >= least && *reading.value <= most),
             "a size is one that things have");
}

}  // namespace

void tackfree::fuzz::read(std::string_view text) {
  must_lie<LengthKind>(read_length(text), millimetres(0.01), metres(100));
  must_lie<LengthKind>(read_length(text, inches), millimetres(0.01), metres(100));
  must_lie<AreaKind>(read_area(text), square_metres(1e-6), square_metres(1e5));
  must_lie<AreaKind>(read_area(text, square_feet), square_metres(1e-6), square_metres(1e5));
  must_lie<VolumeKind>(read_volume(text), millilitres(1), cubic_metres(1e5));
  const auto decimal = with_decimal_points(text);
  must(!decimal || decimal->find(',') == std::string::npos, "no commas are left");
  const std::string head = plain_head(text);
  must(plain_head(head) == head, "a plain head stays as it is");
  must(head.starts_with(head_unit(head).name), "a head without its unit is its beginning");
}
