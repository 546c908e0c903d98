#include "tackfree/html/fumes_chart.hpp"

#include "tackfree/base/elementary.hpp"
#include "tackfree/html/svg.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// A logarithmic scale over so many tenfold steps; what lies outside stands at its end.
struct TenfoldScale {
  double least = 0.01;
  int steps = 3;
  double from = 0, to = 1;  ///< where the least and the most stand

  double place(double value) const {
    const double share = logarithm(std::max(value, least) / least) / logarithm(power_of_ten(steps));
    return from + (to - from) * std::min(1.0, share);
  }
};

/// The scale up to ten times, or as far as the highest value goes.
TenfoldScale reaching(TenfoldScale scale, double highest) {
  while (highest > scale.least * power_of_ten(scale.steps) && scale.steps < 6) ++scale.steps;
  return scale;
}

void write_limits(Markup& html, const Plan& plan) {
  constexpr std::array<std::string_view, vapour_limit_count> names{
      chart_words::quarter_explosive, chart_words::tenth_explosive, "at work, 15 min",
      "at work, 8 h"};
  constexpr double width = 560, left = 160, right = 500, row = 26, top = 8;
  const double bottom = top + row * static_cast<double>(names.size());
  double highest = 0;
  std::string told;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const double share = plan.room->limits.at(i).share;
    highest = std::max(highest, share);
    told += fmt::format("{}: {} the limit. ", names.at(i), times_text(share));
  }
  const TenfoldScale scale = reaching({.from = left, .to = right}, highest);
  open_chart(html, {"limits", chart_words::vapour_limits, told}, width, bottom + 22);
  for (int step = 0; step <= scale.steps; ++step) {
    const double value = scale.least * power_of_ten(step);
    const double x = scale.place(value);
    const bool limit = std::abs(value - 1) < 1e-9;
    svg_line(html, limit ? "at-limit" : "grid", {x, top}, {x, bottom});
    svg_label(html, "scale", {x - 8, bottom + 14}, limit ? "limit" : tenfold_mark(value));
  }
  for (std::size_t i = 0; i < names.size(); ++i) {
    const double share = plan.room->limits.at(i).share;
    const double y = top + row * static_cast<double>(i) + 4;
    svg_label(html, "row", {4, y + 13}, names.at(i));
    svg_box(html, share >= 1 ? "over" : "under",
            {left, y, std::max(1.0, scale.place(share) - left), row - 8});
    double x = scale.place(share) + 4;  // beyond the line of the limit rather than across it
    if (x < scale.place(1) && x + LabelLine::width_of(times_text(share)) > scale.place(1))
      x = scale.place(1) + 4;
    svg_label(html, "mark", {x, y + 13}, times_text(share));
  }
  close_chart(html);
}

/// Twenty-four hours of one stretch.
class StretchChart {
 public:
  static constexpr double width = 250, height = 130;

  StretchChart(const RoomJudgement& room, const StretchJudgement& stretch, double highest)
      : room_(room), stretch_(stretch), scale_(reaching({.from = bottom, .to = top}, highest)) {}

  void write(Markup& html, const Figures& figures, std::size_t number) const {
    const auto peak = std::ranges::max_element(stretch_.vapour, {}, &VapourAt::times);
    open_chart(
        html,
        {fmt::format("vapour-{}", number), "Vapour from " + figures.moment(stretch_.coating.begin),
         fmt::format(chart_words::at_most, times_text(peak->times), uncounted_clause(room_),
                     figures.moment(peak->at))},
        width, height);
    svg_label(html, "day", {4, 12}, figures.moment(stretch_.coating.begin));
    write_grid(html);
    for (const AiringSpan& span : stretch_.airing)
      svg_box(html, "airing",
              {x(span.time.begin), bottom, x(span.time.end) - x(span.time.begin), 6});
    std::vector<ChartPoint> curve;
    for (const VapourAt& at : stretch_.vapour) curve.push_back({x(at.at), scale_.place(at.times)});
    svg_curve(html, "vapour", curve);
    write_hours(html, figures);
    close_chart(html);
  }

 private:
  static constexpr double left = 34, right = width - 4, top = 20, bottom = height - 24;

  double x(Instant at) const {
    const double share = static_cast<double>((at - stretch_.coating.begin).count()) / (24.0 * 60.0);
    return left + (right - left) * std::clamp(share, 0.0, 1.0);
  }

  void write_grid(Markup& html) const {
    for (int step = 0; step <= scale_.steps; ++step) {
      const double value = scale_.least * power_of_ten(step);
      const bool limit = std::abs(value - 1) < 1e-9;
      const double y = scale_.place(value);
      svg_line(html, limit ? "at-limit" : "grid", {left, y}, {right, y});
      svg_label(html, "scale", {2, y + 4}, limit ? "limit" : tenfold_mark(value));
    }
  }

  void write_hours(Markup& html, const Figures& figures) const {
    for (int hour = 0; hour < 24; hour += 6) {
      const Instant at = stretch_.coating.begin + Minutes(hour * 60L);
      const std::string clock = figures.clock(at);
      svg_line(html, "tick", {x(at), bottom + 6}, {x(at), bottom + 10});
      if (hour % 12 == 0) svg_label(html, "scale", {x(at), height - 3}, clock);
    }
  }

  const RoomJudgement& room_;
  const StretchJudgement& stretch_;
  TenfoldScale scale_;
};

}  // namespace

void write_fumes_chart(Markup& html, const Plan& plan, const Figures& figures) {
  if (!plan.room) return;
  write_limits(html, plan);
  double highest = 0;
  for (const StretchJudgement& stretch : plan.room->stretches)
    for (const VapourAt& at : stretch.vapour) highest = std::max(highest, at.times);
  write_legend(html, {{"vapour", chart_words::vapour_curve, LegendEntry::Shape::line},
                      {"airing", chart_words::room_aired}});
  html.open("div", {{"class", "small-charts"}});
  std::size_t number = 0;
  for (const StretchJudgement& stretch : plan.room->stretches)
    if (!stretch.vapour.empty())
      StretchChart(*plan.room, stretch, highest).write(html, figures, ++number);
  html.close();
}

}  // namespace tackfree
