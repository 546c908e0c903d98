// Exposure: peaks, rolling means and the least air flow of the room's vapour against limits.
#pragma once

#include "tackfree/fumes/room_air.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// One limit for each source. Vapours are judged together: the sum of concentration over limit, 1
/// at the limit. Source: 29 CFR 1910.1000(d)(2) for exposure limits (from memory), Le Chatelier's
/// rule for explosive limits.
using Limits = std::vector<MassPerVolume>;

/// The highest value of a sum over limits, and when it is reached.
struct Highest {
  double value = 0;
  Duration at;
};

/// A mean over the window before each moment; a window of 0 is the moment itself.
struct Measure {
  Limits limits;
  Duration window;
};

/// The sum at one moment, or its mean over the window up to then.
double value_at(const RoomAir& air, const Measure& measure, Duration at);

/// The highest value from `from` to `to`. Every stretch between changes is scanned, the best spot
/// refined; stretches whose bound is no higher than what was found, or is known
/// from elsewhere, are passed over.
Highest highest(const RoomAir& air, const Measure& measure, Duration from, Duration to,
                const Highest& known = {});
Highest highest(const RoomAir& air, const Measure& measure);

/// Whether the value never passes `most`; quicker than `highest`.
bool stays_within(const RoomAir& air, const Measure& measure, double most, Duration from,
                  Duration to);
bool stays_within(const RoomAir& air, const Measure& measure, double most);

/// The last moment from `from` to `to` at which the value is over `most`; `to` itself when it still
/// is then, nothing when it never is.
std::optional<Duration> last_above(const RoomAir& air, const Measure& measure, double most,
                                   Duration from, Duration to);

/// The least constant air changes under which the value never passes `most`, to 1e-3 of themselves;
/// 0 when a still room does. Nothing when 100 000 an hour do not. Changes are after mixing: times
/// volume and mixing factor they are a flow. Peaks and means only fall with more air, so that it
/// lies between two trials.
std::optional<ChangeRate> least_changes(Volume room, const std::vector<VapourSource>& sources,
                                        Duration end, const Measure& measure, double most);

}  // namespace tackfree
