// Week: days in a row that are shown, from midnight to midnight, such as those of a week.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/words/figures.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace tackfree {

/// Whole local days, in order.
class Week {
 public:
  /// Two midnights or more, in order.
  explicit Week(std::vector<Instant> midnights) : midnights_(std::move(midnights)) {}

  const std::vector<Instant>& midnights() const { return midnights_; }
  std::size_t day_count() const { return midnights_.size() - 1; }
  Interval time() const { return {midnights_.front(), midnights_.back()}; }
  /// What of `time` lies in these days; nothing when none of it does.
  std::optional<Interval> within(Interval time) const;
  /// Days from the first midnight to `at`, each day as long as the others: 0 to `day_count`;
  /// moments outside count as the nearer end.
  double days_to(Instant at) const;

 private:
  std::vector<Instant> midnights_;
};

/// The weeks that hold `shown`, without days before or after it.
std::vector<Week> weeks_of(Interval shown, const Figures& figures);

/// The days that hold `shown`, at most so many in a row.
std::vector<Week> days_in_rows(Interval shown, std::size_t most, const Figures& figures);

/// `Mon 5 Apr to Sun 11 Apr`
std::string week_words(const Week& week, const Figures& figures);

}  // namespace tackfree
