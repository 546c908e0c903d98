// Busy calendar: any text as a person's calendar, its repeats expanded over a plan of eight weeks.

#include "tackfree/input/busy_calendar_reader.hpp"
#include "tackfree/schedule/busy_hours.hpp"

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  static const Zone home = Zone::named("Europe/Berlin").value();
  static const Instant begin = parse_instant("2027-03-01T08:00Z").value();
  const Interval span{begin, begin + 56 * one_day};
  Problems problems;
  const auto events = busy_events(text, "mine.ics", home, problems);
  must_help(problems, "mine.ics");
  const auto busy = busy_hours(events, span);
  for (std::size_t i = 0; i < busy.size(); ++i) {
    must(busy[i].begin < busy[i].end, "a stretch has a length");
    must(busy[i].begin >= span.begin && busy[i].end <= span.end, "a stretch lies within the plan");
    must(i == 0 || busy[i - 1].end < busy[i].begin, "stretches are joined and stand in order");
  }
}
