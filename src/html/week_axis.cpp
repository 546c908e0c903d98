#include "tackfree/html/week_axis.hpp"

#include "tackfree/words/air_words.hpp"
#include "tackfree/words/chart_words.hpp"

#include <algorithm>

namespace tackfree {

namespace {

void write_day(Markup& svg, const WeekAxis& week, std::size_t day, const Figures& figures,
               double height) {
  const Instant begin = week.midnights().at(day), end = week.midnights().at(day + 1);
  const Date on = figures.local_date(begin);
  const bool weekend = weekday_index(on) > 4;
  const auto clock = [&](int minute) { return figures.zone().instant({on, minute}); };
  const double top = WeekAxis::head;
  svg_box(svg, "night", week.box({begin, clock(WeekAxis::night_ends)}, top, height - top));
  svg_box(svg, "night", week.box({clock(WeekAxis::night_begins), end}, top, height - top));
  svg_box(svg, weekend ? "weekend" : "weekday", week.box({begin, end}, 0, top));
  svg_label(svg, weekend ? "day weekend-day" : "day", {week.x(begin) + 5, 14}, figures.day_of(on));
  for (const int hour : {6, 12, 18})
    svg_line(svg, "tick", {week.x(clock(hour * 60)), top}, {week.x(clock(hour * 60)), top + 4});
  svg_line(svg, "midnight", {week.x(begin), 0}, {week.x(begin), height});
}

/// A moment that divides the whole strip, with a word at its foot.
void write_divide(Markup& svg, const WeekAxis& week, std::string_view meaning, Instant at,
                  std::string_view word, double height) {
  if (!week.within({at, at + Minutes(1)})) return;
  const double x = week.x(at);
  svg_line(svg, meaning, {x, WeekAxis::head}, {x, height});
  const double width = LabelLine::width_of(word);
  const bool fits = x + 3 + width < week.width();
  svg_label(svg, "divide-word", {fits ? x + 3 : x - 3 - width, height - 3}, word);
}

}  // namespace

double WeekAxis::x(Instant at) const { return left + day_width * days_to(at); }

ChartBox WeekAxis::box(Interval time, double y, double height, double least) const {
  const double from = x(time.begin);
  return {from, y, std::max(least, x(time.end) - from), height};
}

std::vector<WeekAxis> week_axes(Interval shown, const Figures& figures) {
  const std::vector<Week> weeks = weeks_of(shown, figures);
  return {weeks.begin(), weeks.end()};
}

void write_axis(Markup& svg, const WeekAxis& week, const Plan& plan, const Figures& figures,
                double height) {
  for (std::size_t day = 0; day + 1 < week.midnights().size(); ++day)
    write_day(svg, week, day, figures, height);
  svg_line(svg, "midnight", {week.x(week.midnights().back()), 0},
           {week.x(week.midnights().back()), height});
  write_divide(svg, week, "now", plan.now, "now", height);
  for (const AirSeam& seam : plan.air.seams())
    if (seam.at != plan.air.typical_from())
      write_divide(svg, week, "seam", seam.at, source_words(seam.after), height);
  if (const auto typical = plan.air.typical_from())
    write_divide(svg, week, "seam", *typical, chart_words::typical_from_here, height);
}

}  // namespace tackfree
