// Closing rules: why a slot is closed to a piece of work, as numbers that the solver hands back.
#pragma once

#include "tackfree/schedule/schedule.hpp"
#include "tackfree/solver/open_time.hpp"

#include <cstddef>
#include <optional>

namespace tackfree {

/// Why a slot is closed, as the solver's rule numbers.
namespace rules {
inline constexpr solver::Rule calendar = 1;   ///< nobody at work
inline constexpr solver::Rule too_short = 2;  ///< somebody at work, but not for long enough
inline constexpr solver::Rule quiet = 3;
inline constexpr solver::Rule not_before = 4;
inline constexpr solver::Rule no_coating = 5;
inline constexpr solver::Rule pinned = 6;
inline constexpr solver::Rule due = 7;
inline constexpr solver::Rule window_below = 8;    ///< the coat below takes none unsanded any more
inline constexpr solver::Rule first_gate = 10;     ///< + index of the Gate
inline constexpr solver::Rule as_last = 20;        ///< the last plan has it later
inline constexpr solver::Rule put_off = 21;        ///< later is better for the whole
inline constexpr solver::Rule first_release = 30;  ///< + index of the Release; the last is shared
inline constexpr std::size_t most_releases = 225;
}  // namespace rules

/// What a rule says of the step that it keeps out, and which rule of the air it is; not of
/// releases, which only the problem knows.
HeldBy held_by(solver::Rule rule);
std::optional<Gate> gate_of(solver::Rule rule);

}  // namespace tackfree
