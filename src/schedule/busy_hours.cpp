#include "tackfree/schedule/busy_hours.hpp"

#include <algorithm>
#include <utility>

namespace tackfree {

namespace {

using Day = date::sys_days;

int weekday_of_day(Day day) { return weekday_index(Date(day)); }

/// The days on which one rule lets its event happen, period after period.
class RuleDays {
 public:
  RuleDays(const Recurrence& rule, Date first) : rule_(rule), first_(first) {}

  /// The first day of the period `number`, from 0.
  Day period_begin(int number) const {
    const int steps = number * rule_.interval;
    switch (rule_.every) {
      case Recurrence::Every::day:
        return Day(first_) + date::days(steps);
      case Recurrence::Every::week:
        return week_of(Day(first_)) + date::days(7 * steps);
      case Recurrence::Every::month:
        return Day(first_.year() / first_.month() / 1 + date::months(steps));
      case Recurrence::Every::year:
        break;
    }
    return Day((first_.year() + date::years(steps)) / 1 / 1);
  }

  /// The last period that begins at or before `day`, at least 0.
  int period_at(Day day) const {
    const int since = static_cast<int>((day - period_begin(0)).count());
    int guess = 0;
    switch (rule_.every) {
      case Recurrence::Every::day:
        guess = since / rule_.interval;
        break;
      case Recurrence::Every::week:
        guess = since / (7 * rule_.interval);
        break;
      case Recurrence::Every::month:
        guess = since / (31 * rule_.interval);
        break;
      case Recurrence::Every::year:
        guess = since / (366 * rule_.interval);
        break;
    }
    return std::max(0, guess);
  }

  /// The days of one period, in order.
  std::vector<Day> days_in(int number) const {
    const Day begin = period_begin(number);
    std::vector<Day> days;
    switch (rule_.every) {
      case Recurrence::Every::day:
        if (fits_weekday(begin) && fits_month_day(begin)) days.push_back(begin);
        break;
      case Recurrence::Every::week:
        for (int i = 0; i < 7; ++i) {
          const Day day = begin + date::days(i);
          const bool same = weekday_of_day(day) == weekday_of_day(Day(first_));
          if (rule_.weekdays.empty() ? same : fits_weekday(day)) days.push_back(day);
        }
        break;
      case Recurrence::Every::month:
        add_month(Date(begin).year() / Date(begin).month(), days);
        break;
      case Recurrence::Every::year:
        add_year(Date(begin).year(), days);
        break;
    }
    std::erase_if(days, [&](Day day) { return !fits_month(day); });
    return chosen(std::move(days));
  }

 private:
  Day week_of(Day day) const {
    return day - date::days((weekday_of_day(day) - rule_.week_begins_on + 7) % 7);
  }

  bool fits_weekday(Day day) const {
    return rule_.weekdays.empty() ||
           std::any_of(rule_.weekdays.begin(), rule_.weekdays.end(),
                       [&](const auto& each) { return each.weekday == weekday_of_day(day); });
  }

  static int days_of(date::year_month month) {
    return static_cast<int>(unsigned((month / date::last).day()));
  }

  bool fits_month_day(Day day) const {
    const Date on(day);
    const int from_begin = static_cast<int>(unsigned(on.day()));
    const int from_end = from_begin - days_of(on.year() / on.month()) - 1;
    return rule_.month_days.empty() ||
           std::any_of(rule_.month_days.begin(), rule_.month_days.end(),
                       [&](int each) { return each == from_begin || each == from_end; });
  }

  bool fits_month(Day day) const {
    const auto month = static_cast<int>(unsigned(Date(day).month()));
    return rule_.months.empty() ||
           std::find(rule_.months.begin(), rule_.months.end(), month) != rule_.months.end();
  }

  /// By weekday and its number within the month.
  bool fits_nth(Day day) const {
    const Date on(day);
    const int from_begin = (static_cast<int>(unsigned(on.day())) - 1) / 7 + 1;
    const int from_end =
        -((days_of(on.year() / on.month()) - static_cast<int>(unsigned(on.day()))) / 7 + 1);
    return std::any_of(rule_.weekdays.begin(), rule_.weekdays.end(), [&](const auto& each) {
      return each.weekday == weekday_of_day(day) &&
             (each.nth == 0 || each.nth == from_begin || each.nth == from_end);
    });
  }

  void add_month(date::year_month month, std::vector<Day>& days) const {
    const bool by_day = !rule_.weekdays.empty(), by_number = !rule_.month_days.empty();
    for (int d = 1; d <= days_of(month); ++d) {
      const Day day = month / date::day(static_cast<unsigned>(d));
      if (!by_day && !by_number ? date::day(static_cast<unsigned>(d)) == first_.day()
                                : (!by_day || fits_nth(day)) && fits_month_day(day))
        days.push_back(day);
    }
  }

  void add_year(date::year year, std::vector<Day>& days) const {
    for (unsigned m = 1; m <= 12; ++m) {
      const bool any_month = !rule_.months.empty() || !rule_.month_days.empty();
      if (any_month || date::month(m) == first_.month()) add_month(year / date::month(m), days);
    }
  }

  std::vector<Day> chosen(std::vector<Day> days) const {
    if (rule_.positions.empty()) return days;
    std::vector<Day> result;
    const int count = static_cast<int>(days.size());
    for (int i = 0; i < count; ++i)
      for (const int position : rule_.positions)
        if (position == i + 1 || position == i - count) {
          result.push_back(days[static_cast<std::size_t>(i)]);
          break;
        }
    return result;
  }

  const Recurrence& rule_;
  Date first_;
};

/// Adds the stretches of one event.
class EventHours {
 public:
  EventHours(const BusyEvent& event, Interval span, std::vector<Interval>& found)
      : event_(event), span_(span), found_(found) {}

  void add() {
    add_on(event_.begin.on);
    if (!event_.repeats) return;
    const Recurrence& rule = *event_.repeats;
    const RuleDays days(rule, event_.begin.on);
    const Day last(event_.zone.local(span_.end).on);
    const int before = event_.days + static_cast<int>(event_.longer / one_day) + 2;
    const Day wanted = Day(event_.zone.local(span_.begin).on) - date::days(before);
    int left = rule.count.value_or(0) - 1;
    for (int period = rule.count ? 0 : days.period_at(wanted); days.period_begin(period) <= last;
         ++period)
      for (const Day day : days.days_in(period)) {
        if (day <= Day(event_.begin.on)) continue;
        if (rule.count && left-- <= 0) return;
        if (is_over(rule, day)) return;
        if (day >= wanted && day <= last) add_on(Date(day));
      }
  }

 private:
  bool is_over(const Recurrence& rule, Day day) const {
    if (rule.until_day && day > Day(*rule.until_day)) return true;
    return rule.until && event_.zone.instant({Date(day), event_.begin.minute_of_day}) > *rule.until;
  }

  void add_on(Date on) {
    const int clock = event_.begin.minute_of_day;
    const Instant begin = event_.zone.instant({on, clock});
    if (std::binary_search(event_.not_at.begin(), event_.not_at.end(), begin) ||
        std::binary_search(event_.not_on.begin(), event_.not_on.end(), on))
      return;
    const Instant end = event_.zone.instant({add_days(on, event_.days), clock}) + event_.longer;
    const Interval stretch{std::max(begin, span_.begin), std::min(end, span_.end)};
    if (stretch.begin < stretch.end) found_.push_back(stretch);
  }

  const BusyEvent& event_;
  Interval span_;
  std::vector<Interval>& found_;
};

}  // namespace

std::vector<Interval> busy_hours(const std::vector<BusyEvent>& events, Interval span) {
  std::vector<Interval> found;
  for (const BusyEvent& event : events) EventHours(event, span, found).add();
  return joined(std::move(found));
}

}  // namespace tackfree
