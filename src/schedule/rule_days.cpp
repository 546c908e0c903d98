#include "tackfree/schedule/rule_days.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace tackfree {

namespace {

using Every = Recurrence::Every;

constexpr int most_positions = 366;

std::size_t at(int number) { return static_cast<std::size_t>(number); }

int weekday_of_day(date::sys_days day) { return weekday_index(Date(day)); }

int day_number(Date on) { return static_cast<int>(unsigned(on.day())); }

int days_of(date::year_month month) {
  return static_cast<int>(unsigned((month / date::last).day()));
}

}  // namespace

RuleDays::RuleDays(const Recurrence& rule, Date first)
    : rule_(rule), first_(first), positions_(rule.positions.empty() ? 0 : 2 * most_positions + 1) {
  for (const Recurrence::Weekday& each : rule.weekdays) {
    weekdays_[at(each.weekday)] = true;
    nths_[at(each.weekday)][at(each.nth + 5)] = true;
  }
  for (const int each : rule.month_days) month_days_[at(each + 31)] = true;
  for (const int each : rule.months) months_[at(each)] = true;
  for (const int each : rule.positions) positions_[at(each + most_positions)] = true;
}

RuleDays::Day RuleDays::period_begin(int number) const {
  const int steps = number * rule_.interval;
  switch (rule_.every) {
    case Every::day:
      return Day(first_) + date::days(steps);
    case Every::week:
      return week_of(Day(first_)) + date::days(7 * steps);
    case Every::month:
      return Day(first_.year() / first_.month() / 1 + date::months(steps));
    case Every::year:
      break;
  }
  return Day((first_.year() + date::years(steps)) / 1 / 1);
}

int RuleDays::period_at(Day day) const {
  const auto since = static_cast<int>((day - period_begin(0)).count());
  const int years = int(Date(day).year()) - int(first_.year());
  const int months = 12 * years + static_cast<int>(unsigned(Date(day).month())) -
                     static_cast<int>(unsigned(first_.month()));
  int steps = since;
  if (rule_.every == Every::week) steps = since / 7;
  if (rule_.every == Every::month) steps = months;
  if (rule_.every == Every::year) steps = years;
  return std::max(0, steps / rule_.interval);
}

void RuleDays::days_in(int number, std::vector<Day>& found) const {
  found.clear();
  const Day begin = period_begin(number);
  switch (rule_.every) {
    case Every::day:
      if (fits_weekday(begin) && fits_month_day(Date(begin))) found.push_back(begin);
      break;
    case Every::week:
      for (int i = 0; i < 7; ++i) {
        const Day day = begin + date::days(i);
        const bool same = weekday_of_day(day) == weekday_of_day(Day(first_));
        if (rule_.weekdays.empty() ? same : fits_weekday(day)) found.push_back(day);
      }
      break;
    case Every::month:
      add_month(Date(begin).year() / Date(begin).month(), found);
      break;
    case Every::year:
      add_year(Date(begin).year(), found);
      break;
  }
  if (!rule_.months.empty()) std::erase_if(found, [&](Day day) { return !fits_month(Date(day)); });
  keep_positions(found);
}

std::int64_t RuleDays::days_before(int number) const {
  std::vector<Day> found;
  std::int64_t sum = 0;
  if (number > 0) {
    days_in(0, found);
    sum += std::count_if(found.begin(), found.end(), [&](Day day) { return day > Day(first_); });
  }
  const bool all_days = rule_.every == Every::day && rule_.weekdays.empty() &&
                        rule_.month_days.empty() && rule_.months.empty() && rule_.positions.empty();
  if (all_days) return sum + std::max(0, number - 1);
  // What the periods of a year hold follows from the weekday it begins with, whether it is a leap
  // year, and where in it the first of them begins.
  std::map<std::pair<int, int>, std::int64_t> of_years;
  for (int period = 1; period < number;) {
    const Day begin = period_begin(period);
    const date::year year = Date(begin).year();
    const Day new_year = year / 1 / 1;
    const int end = first_period_from((year + date::years(1)) / 1 / 1);
    const std::pair key{2 * weekday_of_day(new_year) + (year.is_leap() ? 1 : 0),
                        static_cast<int>((begin - new_year).count())};
    auto known = end > number ? of_years.end() : of_years.find(key);
    std::int64_t in_year = known == of_years.end() ? 0 : known->second;
    if (known == of_years.end()) {
      for (int each = period; each < std::min(end, number); ++each) {
        days_in(each, found);
        in_year += static_cast<std::int64_t>(found.size());
      }
      if (end <= number) of_years.emplace(key, in_year);
    }
    sum += in_year;
    period = end;
  }
  return sum;
}

/// The first period that begins at or after the first day of a year.
int RuleDays::first_period_from(Day day) const {
  const int period = period_at(day);
  return period_begin(period) < day ? period + 1 : period;
}

RuleDays::Day RuleDays::week_of(Day day) const {
  return day - date::days((weekday_of_day(day) - rule_.week_begins_on + 7) % 7);
}

bool RuleDays::fits_weekday(Day day) const {
  return rule_.weekdays.empty() || weekdays_[at(weekday_of_day(day))];
}

bool RuleDays::fits_month_day(Date on) const {
  const int from_begin = day_number(on);
  return rule_.month_days.empty() || month_days_[at(from_begin + 31)] ||
         month_days_[at(from_begin - days_of(on.year() / on.month()) + 30)];
}

bool RuleDays::fits_month(Date on) const { return months_[unsigned(on.month())]; }

/// By weekday and its number within the month.
bool RuleDays::fits_nth(Date on) const {
  const int from_begin = (day_number(on) - 1) / 7 + 1;
  const int from_end = -((days_of(on.year() / on.month()) - day_number(on)) / 7 + 1);
  const auto& nths = nths_[at(weekday_index(on))];
  return nths[5] || nths[at(from_begin + 5)] || nths[at(from_end + 5)];
}

void RuleDays::add_month(date::year_month month, std::vector<Day>& found) const {
  const bool by_day = !rule_.weekdays.empty(), by_number = !rule_.month_days.empty();
  for (int d = 1; d <= days_of(month); ++d) {
    const Date on = month / date::day(static_cast<unsigned>(d));
    if (!by_day && !by_number ? on.day() == first_.day()
                              : (!by_day || fits_nth(on)) && fits_month_day(on))
      found.push_back(on);
  }
}

void RuleDays::add_year(date::year year, std::vector<Day>& found) const {
  const bool any_month = !rule_.months.empty() || !rule_.month_days.empty();
  for (unsigned m = 1; m <= 12; ++m)
    if (any_month || date::month(m) == first_.month()) add_month(year / date::month(m), found);
}

void RuleDays::keep_positions(std::vector<Day>& found) const {
  if (positions_.empty()) return;
  const int count = static_cast<int>(found.size());
  std::size_t kept = 0;
  for (int i = 0; i < count; ++i)
    if (positions_[at(i + 1 + most_positions)] || positions_[at(i - count + most_positions)])
      found[kept++] = found[at(i)];
  found.resize(kept);
}

}  // namespace tackfree
