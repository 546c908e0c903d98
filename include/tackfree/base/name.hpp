// Names: the nearest known name to one that was mistyped, and text made fit for identifiers.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace tackfree {

/// The known name closest to `typed` (Damerau-Levenshtein, case ignored), if it is close enough to
/// be a likely slip: at most a third of the longer length. Ties go to the earlier name.
std::optional<std::string> nearest_name(std::string_view typed, std::span<const std::string> known);

/// The hint `did you mean "x"?`, or the list of what is known when nothing is near.
std::string name_hint(std::string_view typed, std::span<const std::string> known);

/// Lower-case letters, digits and single hyphens: `Seat, top` becomes `seat-top`. Other bytes of
/// UTF-8 text are written as hexadecimal so that different names stay different.
std::string slug(std::string_view text);

}  // namespace tackfree
