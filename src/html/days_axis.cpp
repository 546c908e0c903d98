#include "tackfree/html/days_axis.hpp"

#include "tackfree/words/air_words.hpp"
#include "tackfree/words/chart_words.hpp"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Where known air ends, and what is counted on from there.
struct Seam {
  Instant at;
  std::string words;
};

std::vector<Seam> seams_of(const Plan& plan) {
  std::vector<Seam> seams;
  for (const AirSeam& seam : plan.air.seams())
    if (seam.at != plan.air.typical_from()) seams.push_back({seam.at, source_words(seam.after)});
  if (const auto typical = plan.air.typical_from())
    seams.push_back({*typical, chart_words::typical_from_here});
  return seams;
}

Date date_of(Instant midnight, const Zone& zone) { return zone.local(midnight).on; }

}  // namespace

double DaysAxis::x(Instant at) const { return left + day_width * days_to(at); }

ChartBox DaysAxis::box(Interval time, double y, double height, double least) const {
  const double from = x(time.begin);
  return {from, y, std::max(least, x(time.end) - from), height};
}

std::vector<DaysAxis> days_axes(Interval shown, const Figures& figures) {
  const std::vector<Week> strips = days_in_rows(shown, DaysAxis::most_days, figures);
  return {strips.begin(), strips.end()};
}

std::string days_caption(const DaysAxis& strip, const Plan& plan, const Figures& figures) {
  std::string words = week_words(strip, figures);
  for (const Seam& seam : seams_of(plan))
    if (strip.within({seam.at, seam.at + Minutes(1)}))
      words += fmt::format(chart_words::from_then, seam.words, figures.moment(seam.at));
  return words;
}

void write_day_names(Markup& svg, const DaysAxis& strip, const Zone& zone) {
  std::vector<ChartBox> weekdays, weekends;
  for (std::size_t day = 0; day < strip.day_count(); ++day) {
    const Instant begin = strip.midnights().at(day);
    const bool weekend = weekday_index(date_of(begin, zone)) > 4;
    (weekend ? weekends : weekdays)
        .push_back(strip.box({begin, strip.midnights().at(day + 1)}, 0, DaysAxis::head));
  }
  svg_boxes(svg, "weekday", weekdays);
  svg_boxes(svg, "weekend", weekends);
  for (std::size_t day = 0; day < strip.day_count(); ++day)
    svg_label(svg, "day", {strip.x(strip.midnights().at(day)) + 4, 15},
              Figures::weekday_and_number(date_of(strip.midnights().at(day), zone)));
}

void write_ground(Markup& svg, const DaysAxis& strip, const Plan& plan, double top, double height) {
  const Zone& zone = plan.job.calendar.zone;
  std::vector<ChartBox> nights;
  std::vector<ChartLine> midnights;
  for (std::size_t day = 0; day < strip.day_count(); ++day) {
    const Instant begin = strip.midnights().at(day), end = strip.midnights().at(day + 1);
    const auto clock = [&](int minute) { return zone.instant({date_of(begin, zone), minute}); };
    nights.push_back(strip.box({begin, clock(DaysAxis::night_ends)}, top, height));
    nights.push_back(strip.box({clock(DaysAxis::night_begins), end}, top, height));
    midnights.push_back({{strip.x(begin), top}, {strip.x(begin), top + height}});
  }
  midnights.push_back({{strip.right(), top}, {strip.right(), top + height}});
  svg_boxes(svg, "night", nights);
  svg_lines(svg, "midnight", midnights);
  const auto divide = [&](std::string_view meaning, Instant at) {
    if (strip.within({at, at + Minutes(1)}))
      svg_line(svg, meaning, {strip.x(at), top}, {strip.x(at), top + height});
  };
  divide("now", plan.now);
  for (const Seam& seam : seams_of(plan)) divide("seam", seam.at);
}

std::vector<LegendEntry> ground_legend(const Plan& plan, const Figures& figures) {
  std::vector<LegendEntry> entries{
      {"night", fmt::format("night, {} to {}", figures.clock_of_day(DaysAxis::night_begins),
                            figures.clock_of_day(DaysAxis::night_ends))},
      {"now", "now", LegendEntry::Shape::upright}};
  if (!seams_of(plan).empty())
    entries.push_back({"seam", chart_words::known_air_ends, LegendEntry::Shape::upright});
  return entries;
}

}  // namespace tackfree
