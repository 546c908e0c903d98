// Pots: how many pots of a two-part coating a coat takes, and portions of what is wiped off again.
#pragma once

#include "tackfree/operations/operation.hpp"

namespace tackfree {

/// The label's pot life, halved for every 10 K that `air` is warmer than the label's air; in cooler
/// air it stays the label's. Nothing for a coating without one.
/// The source of the half stands beside it; that it is never longer than the label is practice.
std::optional<Duration> pot_life_in(const Coating& coating, Temperature air);

/// Counts the pots of a two-part coat, each mixed anew when the one before is over, and adds their
/// mixing to its work. They live as in the `warmest` air that the class may be put on in; without
/// it as in the label's.
void add_pots(Operation& coat, const Coating& coating, Duration mixing,
              std::optional<Temperature> warmest);

/// Portions that one person puts on within the time in which the first of it must come off again;
/// all but the last are left and wiped, at `wiping_off`, before the next is begun, which is work
/// too.
void add_portions(Operation& coat, const Coating& coating, WorkRate wiping_off);

}  // namespace tackfree
