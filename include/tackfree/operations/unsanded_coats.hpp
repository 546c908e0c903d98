// Unsanded coats: what lies on each side of a batch with nothing sanded since, as work goes on.
#pragma once

#include "tackfree/operations/operation.hpp"

#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace tackfree {

/// Operations are passed in the order in which they are done; `Coat` is what the caller knows a
/// coat by. A coat that is washed off lies there no longer, and the one below it lies open again.
template <class Coat>
class UnsandedCoats {
 public:
  /// Goes past one operation. Of a coat that is put on: the one it lies on unsanded, if any.
  std::optional<Coat> pass(const Operation& op, Coat coat) {
    if (op.gives_key())
      for (auto& [where, lying] : lying_)
        if (where.first == op.batch && (op.side == Side::both || op.side == where.second))
          lying.clear();
    std::vector<Coat>& lying = lying_[{op.batch, op.side}];
    if (op.takes_off && !op.skipped() && !lying.empty()) lying.pop_back();
    if (!op.coating || op.skipped()) return std::nullopt;
    const auto below = lying.empty() ? std::nullopt : std::optional(lying.back());
    lying.push_back(coat);
    return below;
  }

 private:
  std::map<std::pair<std::size_t, Side>, std::vector<Coat>> lying_;
};

}  // namespace tackfree
