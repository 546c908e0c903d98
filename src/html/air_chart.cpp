#include "tackfree/html/air_chart.hpp"

#include "tackfree/html/temperature_scale.hpp"
#include "tackfree/html/week_axis.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr double air_height = 130, track_height = 58, track_name = 16, foot = 16;

const Operation& operation_of(const Plan& plan, const DryingCourse& course) {
  return plan.list.operations.at(plan.schedule.steps.at(course.dated_step).operation);
}

/// A limit that one or more coatings share.
struct Limit {
  Temperature at;
  std::string words;
};

std::vector<Limit> limits_of(const Plan& plan, const Figures& figures) {
  std::vector<Limit> limits;
  const auto add = [&](Temperature at, std::string_view what, const Coating& coating) {
    const std::string name = cut_to(longest_name, coating.name);
    for (Limit& limit : limits)
      if (limit.at == at) {
        limit.words += ", " + name;
        return;
      }
    limits.push_back(
        {at, fmt::format(chart_words::put_on_limit, what, figures.temperature(at).text(), name)});
  };
  for (const UnfitAir& unfit : plan.course.unfit) {
    const Coating& coating = plan.job.coatings.at(unfit.coating);
    add(coating.limits.put_on_min.value, "least", coating);
    add(coating.limits.put_on_max.value, "most", coating);
  }
  return limits;
}

void write_grid(Markup& svg, const WeekAxis& week, const TemperatureScale& scale,
                const Figures& figures) {
  for (const Temperature at : scale.steps()) {
    svg_line(svg, "grid", {WeekAxis::left, scale.y(at)}, {week.right(), scale.y(at)});
    svg_label(svg, "scale", {4, scale.y(at) + 4}, scale_words(at, figures));
  }
}

/// Bands above the most and below the least that every coating bears.
void write_limits(Markup& svg, const WeekAxis& week, const Plan& plan,
                  const TemperatureScale& scale, const Figures& figures) {
  const double right = week.right();
  for (const UnfitAir& unfit : plan.course.unfit) {
    const CoatingLimits& limits = plan.job.coatings.at(unfit.coating).limits;
    const double low = scale.y(limits.put_on_min.value), high = scale.y(limits.put_on_max.value);
    if (low < scale.bottom())
      svg_box(svg, "outside", {WeekAxis::left, low, right - WeekAxis::left, scale.bottom() - low});
    if (high > scale.top())
      svg_box(svg, "outside",
              {WeekAxis::left, scale.top(), right - WeekAxis::left, high - scale.top()});
  }
  for (const Limit& limit : limits_of(plan, figures)) {
    if (!scale.shows(limit.at)) continue;
    svg_line(svg, "limit", {WeekAxis::left, scale.y(limit.at)}, {right, scale.y(limit.at)});
  }
}

/// Below their line, where no air is that a coat bears; above it where it runs along the bottom.
void write_limit_words(Markup& svg, const Plan& plan, const TemperatureScale& scale,
                       const Figures& figures) {
  constexpr double letters = 11;
  for (const Limit& limit : limits_of(plan, figures)) {
    if (!scale.shows(limit.at)) continue;
    const double y = scale.y(limit.at);
    svg_label(svg, "limit-word",
              {WeekAxis::left + 4, y + letters > scale.bottom() ? y - 3 : y + letters},
              limit.words);
  }
}

void write_curves(Markup& svg, const Plan& plan, const WeekAxis& week,
                  const TemperatureScale& scale) {
  std::vector<ChartPoint> air, dew;
  for (const AirHour& hour : plan.course.air) {
    if (hour.at < week.time().begin || hour.at > week.time().end) continue;
    air.push_back({week.x(hour.at), scale.y(hour.temperature)});
    dew.push_back({week.x(hour.at), scale.y(hour.dew_point)});
  }
  svg_curve(svg, "dew", dew);
  svg_curve(svg, "air", air);
}

/// The share that is done at `at`, on the straight line between the hours.
double done_at(const DryingCourse& course, Instant at) {
  const double hours_on =
      std::max(0.0, static_cast<double>((at - course.time.begin).count()) / 60.0);
  const auto before = static_cast<std::size_t>(std::floor(hours_on));
  if (before + 1 >= course.done.size()) return course.done.back();
  const double last =
      std::min(1.0, static_cast<double>((course.time.end - course.time.begin).count()) / 60.0 -
                        static_cast<double>(before));
  const double part = last <= 0 ? 1.0 : std::min(1.0, (hours_on - std::floor(hours_on)) / last);
  return course.done[before] + (course.done[before + 1] - course.done[before]) * part;
}

void write_curve(Markup& svg, const WeekAxis& week, const DryingCourse& course, double y) {
  const double bottom = y + track_height - 4, full = track_height - track_name - 6;
  std::vector<ChartPoint> curve;
  const auto add = [&](Instant at) {
    curve.push_back({week.x(at), bottom - full * done_at(course, at)});
  };
  const auto shown = week.within(course.time);
  if (!shown) return;
  for (Instant at = shown->begin; at < shown->end; at += Minutes(60)) add(at);
  add(shown->end);
  std::vector<ChartPoint> area = curve;
  area.push_back({curve.back().x, bottom});
  area.push_back({curve.front().x, bottom});
  svg_area(svg, "drying", area);
  svg_curve(svg, "progress", curve);
  if (course.time.end == shown->end)
    svg_line(svg, "reached", {curve.back().x, curve.back().y}, {curve.back().x, bottom});
}

/// Earlier stages as dots on the curve.
void write_stages(Markup& svg, const Plan& plan, const WeekAxis& week, const DryingCourse& course,
                  double y) {
  const double bottom = y + track_height - 4, full = track_height - track_name - 6;
  const DatedStep& step = plan.schedule.steps.at(course.dated_step);
  for (const Stage stage : {Stage::touch, Stage::handle}) {
    const auto& at = step.reaches.at(index_of(stage));
    if (!at || *at >= course.time.end || !week.within({*at, *at + Minutes(1)})) continue;
    svg_dot(svg, stage == Stage::touch ? "touch" : "handle",
            {week.x(*at), bottom - full * done_at(course, *at)});
  }
}

std::string coat_name(const Operation& op) {
  return fmt::format("coat {}{}", op.coat, op.side == Side::back ? " back" : "");
}

void write_track(Markup& svg, const WeekAxis& week, const Plan& plan, std::size_t batch, double y) {
  svg_line(svg, "lane", {0, y}, {week.width(), y});
  const std::string name = cut_to(longest_name, plan.job.batches.at(batch).name);
  LabelLine line;
  line.takes(4, name);
  svg_label(svg, "batch", {4, y + 12}, name);
  svg_label(svg, "scale", {4, y + track_height - 6}, "drying");
  for (const DryingCourse& course : plan.course.drying) {
    const Operation& op = operation_of(plan, course);
    if (op.batch != batch || !week.within(course.time)) continue;
    write_curve(svg, week, course, y);
    write_stages(svg, plan, week, course, y);
    const std::string words = coat_name(op);
    const double x = week.x(course.time.begin);
    if (week.within({course.time.begin, course.time.begin + Minutes(1)}) && line.takes(x, words))
      svg_label(svg, "mark", {x, y + 12}, words);
    const std::string reached = reached_words(course.towards);
    const double end = week.x(course.time.end) - LabelLine::width_of(reached);
    if (week.within({course.time.end - Minutes(1), course.time.end}) && line.takes(end, reached))
      svg_label(svg, "scale", {end, y + 12}, reached);
  }
}

std::string air_described(const Plan& plan, const StepWords& words, const WeekAxis& week) {
  const Figures& figures = words.figures();
  std::string text;
  for (const AirDay& day : plan.course.air_days) {
    const Instant midnight = figures.zone().instant({day.on, 0});
    if (!week.within({midnight, midnight + Minutes(1)})) continue;
    text += fmt::format("{}: {} to {}. ", figures.day_of(day.on),
                        figures.temperature(day.low).text(), figures.temperature(day.high).text());
  }
  for (const DryingCourse& course : plan.course.drying)
    if (week.within({course.time.end - Minutes(1), course.time.end})) {
      const Operation& op = operation_of(plan, course);
      text += fmt::format("{}, {}: {} {}. ",
                          cut_to(longest_name, plan.job.batches.at(op.batch).name), coat_name(op),
                          reached_words(course.towards), figures.moment(course.time.end));
    }
  return text;
}

void write_week_of_air(Markup& html, const Plan& plan, const StepWords& words, const WeekAxis& week,
                       int number) {
  const double tracks = WeekAxis::head + 6 + air_height + 8;
  const double height = tracks + track_height * static_cast<double>(plan.job.batches.size()) + foot;
  const TemperatureScale scale(plan, words.figures(),
                               {WeekAxis::head + 6, WeekAxis::head + 6 + air_height});
  open_chart(html,
             {fmt::format("air-{}", number),
              fmt::format(chart_words::air_of_week, week_words(week, words.figures())),
              air_described(plan, words, week)},
             week.width(), height);
  write_axis(html, week, plan, words.figures(), height);
  write_grid(html, week, scale, words.figures());
  write_limits(html, week, plan, scale, words.figures());
  write_curves(html, plan, week, scale);
  write_limit_words(html, plan, scale, words.figures());
  double y = tracks;
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch) {
    write_track(html, week, plan, batch, y);
    y += track_height;
  }
  close_chart(html);
}

Table air_table(const Plan& plan, const Figures& figures) {
  Table table{.head = {"day", chart_words::air_low, chart_words::air_high, chart_words::dew_low,
                       chart_words::dew_high}};
  for (const AirDay& day : plan.course.air_days)
    table.rows.push_back({figures.day_of(day.on), figures.temperature(day.low).text(),
                          figures.temperature(day.high).text(),
                          figures.temperature(day.dew_low).text(),
                          figures.temperature(day.dew_high).text()});
  return table;
}

Table coat_table(const Plan& plan, const StepWords& words) {
  const Figures& figures = words.figures();
  Table table{
      .head = {"coat", "on", "touch-dry", chart_words::dry_to_handle, "awaited", "reached"}};
  for (const DryingCourse& course : plan.course.drying) {
    const DatedStep& step = plan.schedule.steps.at(course.dated_step);
    const auto when = [&](Stage stage) {
      const auto& at = step.reaches.at(index_of(stage));
      return at ? figures.moment(*at) : "-";
    };
    table.rows.push_back({words.full_title(operation_of(plan, course)),
                          figures.moment(course.time.begin), when(Stage::touch),
                          when(Stage::handle), reached_words(course.towards),
                          figures.moment(course.time.end)});
  }
  return table;
}

}  // namespace

void write_air_chart(Markup& html, const Plan& plan, const StepWords& words) {
  if (plan.schedule.steps.empty()) return;
  write_legend(html, {{"air", chart_words::air_curve, LegendEntry::Shape::line},
                      {"dew", "dew point", LegendEntry::Shape::line},
                      {"outside", chart_words::outside_limits},
                      {"drying", chart_words::dried_share},
                      {"touch", "touch-dry", LegendEntry::Shape::dot},
                      {"handle", chart_words::dry_to_handle, LegendEntry::Shape::dot}});
  int number = 0;
  for (const WeekAxis& week : week_axes(plan.course.days, words.figures()))
    write_week_of_air(html, plan, words, week, ++number);
  html.open("details");
  html.element("summary", {}, chart_words::same_as_tables);
  HtmlPage page(html);
  page.table(air_table(plan, words.figures()));
  page.table(coat_table(plan, words));
  html.close();
}

}  // namespace tackfree
