#include "tackfree/solver/open_time.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

namespace tackfree::solver {

OpenTime::OpenTime(std::vector<Rule> closed_by) : closed_by_(std::move(closed_by)) {
  const std::size_t size = closed_by_.size();
  for (std::size_t at = 0; at < size;) {
    const void* found = std::memchr(&closed_by_[at], no_rule, size - at);
    if (found == nullptr) break;
    at = static_cast<std::size_t>(static_cast<const Rule*>(found) - closed_by_.data());
    opens_.push_back(static_cast<Slot>(at));
    while (at < size && closed_by_[at] == no_rule) ++at;
    closes_.push_back(static_cast<Slot>(at));
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

/// The first open stretch that ends after `at`.
std::size_t OpenTime::stretch_from(Slot at) const {
  return static_cast<std::size_t>(std::upper_bound(closes_.begin(), closes_.end(), at) -
                                  closes_.begin());
}

Slot OpenTime::next_open(Slot from) const {
  const std::size_t stretch = stretch_from(from);
  return stretch == opens_.size() ? never : std::max({from, opens_[stretch], Slot{0}});
}

Slot OpenTime::open_until(Slot from) const {
  const std::size_t stretch = stretch_from(from);
  return stretch == opens_.size() || opens_[stretch] > from ? from : closes_[stretch];
}

}  // namespace tackfree::solver
