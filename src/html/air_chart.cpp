#include "tackfree/html/air_chart.hpp"

#include "tackfree/html/drying_track.hpp"
#include "tackfree/html/temperature_scale.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr double air_height = 104, humidity_height = 60, panel_gap = 8;

/// The limits of every coating in use, in the legend: `oil varnish 50 °F to 90 °F, up to 80 % RH`.
std::string limits_words(const Plan& plan, const Figures& figures) {
  std::vector<std::string> all;
  for (const UnfitAir& unfit : plan.course.unfit) {
    const Coating& coating = plan.job.coatings.at(unfit.coating);
    const CoatingLimits& limits = coating.limits;
    all.push_back(fmt::format(chart_words::put_on_limit, cut_to(longest_name, coating.name),
                              scale_words(limits.put_on_min.value, figures),
                              scale_words(limits.put_on_max.value, figures)) +
                  fmt::format(chart_words::damp_limit, humidity_text(limits.humidity_max.value)));
  }
  return fmt::format(chart_words::coat_limits, fmt::join(all, "; "));
}

/// Marks of the scale beside the plot, each clear of the one below it.
void write_grid(Markup& svg, const DaysAxis& strip, const TemperatureScale& scale,
                const Figures& figures) {
  std::vector<ChartLine> lines;
  double free_above = 1e9;
  for (const Temperature at : scale.steps()) {
    const double y = scale.y(at);
    lines.push_back({{DaysAxis::left, y}, {strip.right(), y}});
    if (y > free_above) continue;
    svg_label(svg, "scale", {2, y + 4.5}, scale_number(at, figures));
    free_above = y - letter_height - 3;
  }
  svg_lines(svg, "grid", lines);
}

/// Bands where no coating in use goes on, and a line at each limit.
void write_limits(Markup& svg, const DaysAxis& strip, const Plan& plan,
                  const TemperatureScale& scale) {
  if (plan.course.unfit.empty()) return;
  const double right = strip.right(), width = right - DaysAxis::left;
  double low = scale.top(), high = scale.bottom();
  for (const UnfitAir& unfit : plan.course.unfit) {
    const CoatingLimits& limits = plan.job.coatings.at(unfit.coating).limits;
    low = std::max(low, scale.y(limits.put_on_min.value));
    high = std::min(high, scale.y(limits.put_on_max.value));
    for (const Temperature at : {limits.put_on_min.value, limits.put_on_max.value})
      if (scale.shows(at))
        svg_line(svg, "limit", {DaysAxis::left, scale.y(at)}, {right, scale.y(at)});
  }
  std::vector<ChartBox> outside;
  if (low < scale.bottom()) outside.push_back({DaysAxis::left, low, width, scale.bottom() - low});
  if (high > scale.top())
    outside.push_back({DaysAxis::left, scale.top(), width, high - scale.top()});
  svg_boxes(svg, "outside", outside);
}

void write_temperature(Markup& svg, const Plan& plan, const DaysAxis& strip,
                       const TemperatureScale& scale, const Figures& figures) {
  svg_label(svg, "row", {DaysAxis::left, scale.top() - 8},
            fmt::format(chart_words::temperature_panel, figures.temperature(celsius(20)).unit));
  write_ground(svg, strip, plan, scale.top(), scale.bottom() - scale.top());
  write_grid(svg, strip, scale, figures);
  write_limits(svg, strip, plan, scale);
  std::vector<ChartPoint> air, dew;
  for (const AirHour& hour : plan.course.air) {
    if (hour.at < strip.time().begin || hour.at > strip.time().end) continue;
    air.push_back({strip.x(hour.at), scale.y(hour.temperature)});
    dew.push_back({strip.x(hour.at), scale.y(hour.dew_point)});
  }
  svg_curve(svg, "dew", dew);
  svg_curve(svg, "air", air);
}

/// The highest humidity that any coating in use bears.
Humidity most_humidity(const Plan& plan) {
  Humidity most = humidity_fraction(0);
  for (const UnfitAir& unfit : plan.course.unfit)
    most = std::max(most, plan.job.coatings.at(unfit.coating).limits.humidity_max.value);
  return most;
}

/// Is the air ever too damp for a coating in use?
bool dampness_decides(const Plan& plan) {
  return std::ranges::any_of(plan.course.unfit, [&](const UnfitAir& unfit) {
    const Humidity most = plan.job.coatings.at(unfit.coating).limits.humidity_max.value;
    return std::ranges::any_of(plan.course.air,
                               [&](const AirHour& hour) { return hour.humidity > most; });
  });
}

void write_humidity(Markup& svg, const Plan& plan, const DaysAxis& strip, double top) {
  const double bottom = top + humidity_height, right = strip.right();
  const auto y = [&](Humidity h) { return bottom - humidity_height * h.in(humidity_fraction); };
  svg_label(svg, "row", {DaysAxis::left, top - 8}, chart_words::humidity_panel);
  write_ground(svg, strip, plan, top, humidity_height);
  std::vector<ChartLine> lines;
  for (const int percent : {0, 50, 100}) {
    const double at = bottom - humidity_height * percent / 100.0;
    svg_label(svg, "scale", {2, at + 4.5}, fmt::format("{}", percent));
    lines.push_back({{DaysAxis::left, at}, {right, at}});
  }
  svg_lines(svg, "grid", lines);
  const double most = y(most_humidity(plan));
  svg_boxes(svg, "outside", {{DaysAxis::left, top, right - DaysAxis::left, most - top}});
  for (const UnfitAir& unfit : plan.course.unfit) {
    const double limit = y(plan.job.coatings.at(unfit.coating).limits.humidity_max.value);
    svg_line(svg, "limit", {DaysAxis::left, limit}, {right, limit});
  }
  std::vector<ChartPoint> curve;
  for (const AirHour& hour : plan.course.air)
    if (hour.at >= strip.time().begin && hour.at <= strip.time().end)
      curve.push_back({strip.x(hour.at), y(hour.humidity)});
  svg_curve(svg, "humid", curve);
}

std::string air_described(const Plan& plan, const StepWords& words, const DaysAxis& strip) {
  const Figures& figures = words.figures();
  std::string text;
  for (const AirDay& day : plan.course.air_days) {
    const Instant midnight = figures.zone().instant({day.on, 0});
    if (!strip.within({midnight, midnight + Minutes(1)})) continue;
    text += fmt::format("{}: {} to {}. ", figures.day_of(day.on),
                        figures.temperature(day.low).text(), figures.temperature(day.high).text());
  }
  for (const DryingCourse& course : plan.course.drying)
    if (strip.within({course.time.end - Minutes(1), course.time.end})) {
      const Operation& op = dried_operation(plan, course);
      text += fmt::format("{}, {}: {} {}. ",
                          cut_to(longest_name, plan.job.batches.at(op.batch).name), coat_mark(op),
                          reached_words(course.towards), figures.moment(course.time.end));
    }
  return text;
}

void write_air_strip(Markup& html, const Plan& plan, const StepWords& words, const DaysAxis& strip,
                     bool with_humidity, int number) {
  const Figures& figures = words.figures();
  Markup svg;
  write_day_names(svg, strip, figures.zone());
  double y = DaysAxis::head + label_line + panel_gap;
  const TemperatureScale scale(plan, figures, {y, y + air_height});
  write_temperature(svg, plan, strip, scale, figures);
  y += air_height + panel_gap;
  if (with_humidity) {
    write_humidity(svg, plan, strip, y + label_line + panel_gap);
    y += label_line + panel_gap + humidity_height + panel_gap;
  }
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch)
    y += write_drying_track(svg, strip, plan, batch, y);
  open_chart(html,
             {fmt::format("air-{}", number),
              fmt::format(chart_words::air_of_week, week_words(strip, figures)),
              air_described(plan, words, strip), days_caption(strip, plan, figures)},
             DaysAxis::width, y);
  html.raw(svg.markup());
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
    table.rows.push_back({words.full_title(dried_operation(plan, course)),
                          figures.moment(course.time.begin), when(Stage::touch),
                          when(Stage::handle), reached_words(course.towards),
                          figures.moment(course.time.end)});
  }
  return table;
}

}  // namespace

void write_air_chart(Markup& html, const Plan& plan, const StepWords& words) {
  if (plan.schedule.steps.empty()) return;
  const bool damp = dampness_decides(plan);
  std::vector<LegendEntry> legend{{"air", chart_words::air_curve, LegendEntry::Shape::line},
                                  {"dew", "dew point", LegendEntry::Shape::line}};
  if (damp) legend.push_back({"humid", "humidity", LegendEntry::Shape::line});
  if (!plan.course.unfit.empty()) {
    legend.push_back({"limit", limits_words(plan, words.figures()), LegendEntry::Shape::line});
    legend.push_back({"outside", chart_words::outside_limits});
  }
  legend.push_back({"drying", chart_words::dried_share});
  legend.push_back({"touch", "touch-dry", LegendEntry::Shape::dot});
  legend.push_back({"handle", chart_words::dry_to_handle, LegendEntry::Shape::dot});
  for (LegendEntry& entry : ground_legend(plan, words.figures()))
    legend.push_back(std::move(entry));
  write_legend(html, legend);
  html.open("div", {{"class", "strips"}});
  int number = 0;
  for (const DaysAxis& strip : days_axes(plan.course.days, words.figures()))
    write_air_strip(html, plan, words, strip, damp, ++number);
  html.close();
  html.open("details");
  html.element("summary", {}, chart_words::same_as_tables);
  HtmlPage page(html);
  page.table(air_table(plan, words.figures()));
  page.table(coat_table(plan, words));
  html.close();
}

}  // namespace tackfree
