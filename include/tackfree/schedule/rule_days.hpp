// Rule days: on which days a repeating event happens, by period, counted in long strides.
#pragma once

#include "tackfree/model/busy_event.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace tackfree {

/// The days on which one rule lets its event happen. A period is a day, week, month or year of the
/// rule, from 0, which holds the first one.
class RuleDays {
 public:
  using Day = date::sys_days;

  RuleDays(const Recurrence& rule, Date first);

  Day period_begin(int number) const;
  /// The last period that begins at or before `day`; at least 0.
  int period_at(Day day) const;
  /// Puts the days of one period, in order, in place of what is in `found`.
  void days_in(int number, std::vector<Day>& found) const;
  /// How many days later than the first one there are before the period `number`. Years that are
  /// alike, beginning on the same weekday, are counted once: no walk from the first year on.
  std::int64_t days_before(int number) const;

 private:
  Day week_of(Day day) const;
  bool fits_weekday(Day day) const;
  bool fits_month_day(Date on) const;
  bool fits_nth(Date on) const;
  bool fits_month(Date on) const;
  void add_month(date::year_month month, std::vector<Day>& found) const;
  void add_year(date::year year, std::vector<Day>& found) const;
  void keep_positions(std::vector<Day>& found) const;
  int first_period_from(Day day) const;

  const Recurrence& rule_;
  Date first_;
  // The lists of the rule, ready to be looked up; a list that is empty lets everything through.
  std::array<bool, 7> weekdays_{};
  std::array<std::array<bool, 11>, 7> nths_{};  ///< by weekday and number in the month, from -5
  std::array<bool, 63> month_days_{};           ///< from -31
  std::array<bool, 13> months_{};
  std::vector<bool> positions_;  ///< from -366
};

}  // namespace tackfree
