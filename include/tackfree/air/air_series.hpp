// Air series: temperature and vapour pressure at any time of the plan, from what the person knows.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/model/air.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

struct AirState {
  Temperature temperature;
  Pressure vapour;
};

/// The air over a stretch of time: nodes an hour or less apart, both values linear between them.
class AirSeries {
 public:
  struct Node {
    Instant at;
    AirState state;
  };
  /// A stretch without rows that was bridged by a straight line.
  struct Bridged {
    Interval gap;
  };

  /// The air at `at`, which lies inside `covers()`; outside, the nearest end.
  AirState at(Instant at) const;
  Interval covers() const;
  const std::vector<Node>& nodes() const { return nodes_; }
  const std::vector<Bridged>& bridged() const { return bridged_; }
  /// From here on the mean day of the last seven days repeats; nothing if the rows reach the end
  /// or the air is constant.
  std::optional<Instant> typical_from() const { return typical_from_; }

  /// The series over `span`. Rows that leave a gap of more than three hours inside the span, or
  /// begin after it, or cover less than a day when they must be repeated, are Problems.
  static std::optional<AirSeries> over(const AirRecord& record, Interval span, Problems& problems);

 private:
  std::vector<Node> nodes_;
  std::vector<Bridged> bridged_;
  std::optional<Instant> typical_from_;
};

}  // namespace tackfree
