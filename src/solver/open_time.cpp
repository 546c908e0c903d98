#include "tackfree/solver/open_time.hpp"

#include <algorithm>
#include <utility>

namespace tackfree::solver {

OpenTime::OpenTime(std::vector<Rule> closed_by)
    : closed_by_(std::move(closed_by)),
      next_open_(closed_by_.size()),
      open_until_(closed_by_.size()) {
  Slot next = never;
  Slot closes = horizon();
  for (std::size_t i = closed_by_.size(); i-- > 0;) {
    const auto here = static_cast<Slot>(i);
    if (closed_by_[i] == no_rule)
      next = here;
    else
      closes = here;
    next_open_[i] = next;
    open_until_[i] = closes;
  }
}

Slot OpenTime::next_open(Slot from) const {
  if (from >= horizon()) return never;
  return next_open_[static_cast<std::size_t>(std::max(from, Slot{0}))];
}

Slot OpenTime::open_until(Slot from) const {
  if (from < 0 || from >= horizon()) return from;
  return open_until_[static_cast<std::size_t>(from)];
}

}  // namespace tackfree::solver
