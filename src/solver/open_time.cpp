#include "tackfree/solver/open_time.hpp"

#include <algorithm>
#include <cstring>
#include <numeric>
#include <utility>

namespace tackfree::solver {

OpenTime::OpenTime(std::vector<Rule> closed_by)
    : closed_by_(std::move(closed_by)),
      next_open_(closed_by_.size()),
      open_until_(closed_by_.size()) {
  // Run by run: most slots lie in long closed ones.
  std::iota(next_open_.begin(), next_open_.end(), Slot{0});
  std::iota(open_until_.begin(), open_until_.end(), Slot{0});
  const std::size_t size = closed_by_.size();
  for (std::size_t at = 0; at < size;) {
    const void* found = std::memchr(&closed_by_[at], no_rule, size - at);
    const std::size_t opens =
        found == nullptr
            ? size
            : static_cast<std::size_t>(static_cast<const Rule*>(found) - closed_by_.data());
    std::size_t closes = opens;
    while (closes < size && closed_by_[closes] == no_rule) ++closes;
    std::fill(next_open_.begin() + static_cast<std::ptrdiff_t>(at),
              next_open_.begin() + static_cast<std::ptrdiff_t>(opens),
              opens == size ? never : static_cast<Slot>(opens));
    std::fill(open_until_.begin() + static_cast<std::ptrdiff_t>(opens),
              open_until_.begin() + static_cast<std::ptrdiff_t>(closes), static_cast<Slot>(closes));
    at = closes;
  }
  for (std::size_t at = 1; at < size; ++at)
    if (closed_by_[at] != closed_by_[at - 1]) changes_.push_back(static_cast<Slot>(at));
  changes_.push_back(horizon());
}

OpenTime OpenTime::until(Slot horizon) const {
  const auto end = closed_by_.begin() + std::min(horizon, this->horizon());
  return OpenTime({closed_by_.begin(), end});
}

Slot OpenTime::same_rule_until(Slot at) const {
  return *std::upper_bound(changes_.begin(), changes_.end() - 1, at);
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
