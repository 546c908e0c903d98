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

constexpr double chart_width = 328;

bool is_limit(double value) { return std::abs(value - 1) < 1e-9; }

/// `0.1`, `limit`, `10`
std::string mark_of(double value) { return is_limit(value) ? "limit" : tenfold_mark(value); }

/// The lines of the scale behind one bar.
void write_bar_ground(Markup& svg, const TenfoldScale& scale, double y, double height) {
  for (int step = 0; step <= scale.steps; ++step) {
    const double value = scale.least * power_of_ten(step);
    const double x = scale.place(value);
    svg_line(svg, is_limit(value) ? "at-limit" : "grid", {x, y - 1}, {x, y + height + 1});
  }
}

void write_limits(Markup& html, const Plan& plan) {
  constexpr std::array<std::string_view, vapour_limit_count> names{
      chart_words::quarter_explosive, chart_words::tenth_explosive, "at work, 15 min",
      "at work, 8 h"};
  constexpr double left = 4, right = chart_width - 30, bar = 12;
  constexpr double row = label_line + bar + row_gap;
  const double bottom = row * static_cast<double>(names.size());
  double highest = 0;
  std::string told;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const double share = plan.room->limits.at(i).share;
    highest = std::max(highest, share);
    told += fmt::format("{}: {} the limit. ", names.at(i), times_text(share));
  }
  const TenfoldScale scale = reaching({.from = left, .to = right}, highest);
  open_chart(html, {"limits", chart_words::vapour_limits, told, chart_words::vapour_limits},
             chart_width, bottom + label_line);
  for (std::size_t i = 0; i < names.size(); ++i) {
    const double share = plan.room->limits.at(i).share;
    const double y = row * static_cast<double>(i);
    svg_label(html, "row", {left, y + letter_height},
              fmt::format(chart_words::share_of_limit, names.at(i), times_text(share)));
    write_bar_ground(html, scale, y + label_line, bar);
    svg_box(html, share >= 1 ? "over" : "under",
            {left, y + label_line, std::max(1.0, scale.place(share) - left), bar});
  }
  for (int step = 0; step <= scale.steps; ++step) {
    const double value = scale.least * power_of_ten(step);
    const std::string mark = mark_of(value);
    const double x = scale.place(value) - (step == 0 ? 0 : LabelLine::width_of(mark) / 2);
    svg_label(html, "scale", {x, bottom + letter_height}, mark);
  }
  close_chart(html);
}

/// Twenty-four hours of one stretch.
class StretchChart {
 public:
  static constexpr double width = chart_width, height = 150;

  StretchChart(const RoomJudgement& room, const StretchJudgement& stretch, double highest)
      : room_(room), stretch_(stretch), scale_(reaching({.from = bottom, .to = top}, highest)) {}

  void write(Markup& html, const Figures& figures, std::size_t number) const {
    const auto peak = std::ranges::max_element(stretch_.vapour, {}, &VapourAt::times);
    open_chart(
        html,
        {fmt::format("vapour-{}", number), "Vapour from " + figures.moment(stretch_.coating.begin),
         fmt::format(chart_words::at_most, times_text(peak->times), uncounted_clause(room_),
                     figures.moment(peak->at)),
         figures.moment(stretch_.coating.begin)},
        width, height);
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
  static constexpr double left = 48, right = width - 30, top = 8, bottom = height - 30;

  double x(Instant at) const {
    const double share = static_cast<double>((at - stretch_.coating.begin).count()) / (24.0 * 60.0);
    return left + (right - left) * std::clamp(share, 0.0, 1.0);
  }

  void write_grid(Markup& html) const {
    for (int step = 0; step <= scale_.steps; ++step) {
      const double value = scale_.least * power_of_ten(step);
      const double y = scale_.place(value);
      svg_line(html, is_limit(value) ? "at-limit" : "grid", {left, y}, {right, y});
      svg_label(html, "scale", {2, y + 4.5}, mark_of(value));
    }
  }

  void write_hours(Markup& html, const Figures& figures) const {
    for (int hour = 0; hour <= 24; hour += 6) {
      const Instant at = stretch_.coating.begin + Minutes(hour * 60L);
      svg_line(html, "tick", {x(at), bottom + 7}, {x(at), bottom + 11});
      if (hour % 12 == 0 && hour < 24)
        svg_label(html, "scale", {x(at), height - 5}, figures.clock(at));
    }
  }

  const RoomJudgement& room_;
  const StretchJudgement& stretch_;
  TenfoldScale scale_;
};

}  // namespace

void write_fumes_chart(Markup& html, const Plan& plan, const Figures& figures) {
  if (!plan.room) return;
  const auto peak = [](const StretchJudgement& stretch) {
    double highest = 0;
    for (const VapourAt& at : stretch.vapour) highest = std::max(highest, at.times);
    return highest;
  };
  const auto& stretches = plan.room->stretches;
  const auto worst = std::ranges::max_element(stretches, {}, peak);
  html.open("div", {{"class", "strips"}});
  write_limits(html, plan);
  std::size_t number = 0;
  const auto write = [&](const StretchJudgement& stretch) {
    if (!stretch.vapour.empty())
      StretchChart(*plan.room, stretch, peak(*worst)).write(html, figures, ++number);
  };
  if (worst != stretches.end()) write(*worst);
  html.close();
  write_legend(html, {{"vapour", chart_words::vapour_curve, LegendEntry::Shape::line},
                      {"airing", chart_words::room_aired}});
  if (stretches.size() < 2) return;
  html.open("details");
  html.element("summary", {}, chart_words::other_stretches);
  html.open("div", {{"class", "strips"}});
  for (const StretchJudgement& stretch : stretches)
    if (&stretch != &*worst) write(stretch);
  html.close();
  html.close();
}

}  // namespace tackfree
