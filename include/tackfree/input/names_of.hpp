// Names of: the names in a list, for "did you mean".
#pragma once

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

namespace tackfree {

/// One member of each item, such as `names_of(job.batches, &Batch::name)`.
template <class Items, class Member>
std::vector<std::string> names_of(const Items& items, Member member) {
  std::vector<std::string> names;
  std::ranges::transform(
      items, std::back_inserter(names), [](const auto& name) { return std::string(name); }, member);
  return names;
}

}  // namespace tackfree
