#include "tackfree/html/drying_track.hpp"

#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/step_words.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr double drying_height = 34;

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

/// The share that is done, as a hill above `bottom`.
void write_curve(Markup& svg, const DaysAxis& strip, const DryingCourse& course, double bottom) {
  std::vector<ChartPoint> curve;
  const auto add = [&](Instant at) {
    curve.push_back({strip.x(at), bottom - drying_height * done_at(course, at)});
  };
  const auto shown = strip.within(course.time);
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
void write_stages(Markup& svg, const Plan& plan, const DaysAxis& strip, const DryingCourse& course,
                  double bottom) {
  const DatedStep& step = plan.schedule.steps.at(course.dated_step);
  for (const Stage stage : {Stage::touch, Stage::handle}) {
    const auto& at = step.reaches.at(index_of(stage));
    if (!at || *at >= course.time.end || !strip.within({*at, *at + Minutes(1)})) continue;
    svg_dot(svg, stage == Stage::touch ? "touch" : "handle",
            {strip.x(*at), bottom - drying_height * done_at(course, *at)});
  }
}

}  // namespace

const Operation& dried_operation(const Plan& plan, const DryingCourse& course) {
  return plan.list.operations.at(plan.schedule.steps.at(course.dated_step).operation);
}

std::string coat_mark(const Operation& op) {
  return fmt::format("coat {}{}", op.coat, op.side == Side::back ? " back" : "");
}

double write_drying_track(Markup& svg, const DaysAxis& strip, const Plan& plan, std::size_t batch,
                          double y) {
  const double top = y + 2 * label_line, bottom = top + drying_height;
  LabelLine line;
  Markup labels, curves;
  for (const DryingCourse& course : plan.course.drying) {
    const Operation& op = dried_operation(plan, course);
    if (op.batch != batch || !strip.within(course.time)) continue;
    write_curve(curves, strip, course, bottom);
    write_stages(curves, plan, strip, course, bottom);
    const std::string words = coat_mark(op);
    const double begin =
        std::min(strip.x(course.time.begin), DaysAxis::width - LabelLine::width_of(words));
    if (strip.within({course.time.begin, course.time.begin + Minutes(1)}) &&
        line.takes(begin, words))
      svg_label(labels, "mark", {begin, top - 5}, words);
    const std::string reached = reached_words(course.towards);
    const double end =
        std::max(DaysAxis::left, strip.x(course.time.end) - LabelLine::width_of(reached));
    if (strip.within({course.time.end - Minutes(1), course.time.end}) && line.takes(end, reached))
      svg_label(labels, "scale", {end, top - 5}, reached);
  }
  if (curves.markup().empty()) return 0;
  svg_line(svg, "lane", {0, y}, {DaysAxis::width, y});
  svg_label(
      svg, "batch", {DaysAxis::left, y + letter_height},
      fmt::format(chart_words::drying_of, cut_to(longest_name, plan.job.batches.at(batch).name)));
  write_ground(svg, strip, plan, top, drying_height);
  svg.raw(curves.markup());
  svg.raw(labels.markup());
  return 2 * label_line + drying_height + row_gap;
}

}  // namespace tackfree
