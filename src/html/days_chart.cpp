#include "tackfree/html/days_chart.hpp"

#include "tackfree/html/days_axis.hpp"
#include "tackfree/words/batch_line.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr double row_bar = 9, lane_bar = 16;

std::string_view meaning_of(WaitKind kind) {
  switch (kind) {
    case WaitKind::drying:
      return "drying";
    case WaitKind::air:
      return "unfit";
    case WaitKind::person:
      break;
  }
  return "idle";
}

struct Row {
  std::string name;
  std::string_view meaning;
  std::vector<Interval> times;
};

/// Hours that open and close: the person's, the sander's, the air's.
std::vector<Row> rows_of(const Plan& plan) {
  std::vector<Row> rows{{chart_words::working_hours, "open", plan.course.working}};
  if (!plan.course.no_power_sanding.empty())
    rows.push_back({chart_words::quiet_hours, "quiet", plan.course.no_power_sanding});
  for (const UnfitAir& unfit : plan.course.unfit)
    if (!unfit.times.empty())
      rows.push_back({fmt::format(chart_words::air_unfit_for,
                                  cut_to(longest_name, plan.job.coatings.at(unfit.coating).name)),
                      "unfit", unfit.times});
  return rows;
}

/// The label above, then the bar; what it takes from `y` on.
double write_row(Markup& svg, const DaysAxis& strip, const Plan& plan, const Row& row, double y) {
  std::vector<ChartBox> boxes;
  for (const Interval& time : row.times)
    if (const auto shown = strip.within(time))
      boxes.push_back(strip.box(*shown, y + label_line, row_bar));
  if (boxes.empty()) return 0;
  svg_label(svg, "row", {DaysAxis::left, y + letter_height}, cut_to(longest_label, row.name));
  write_ground(svg, strip, plan, y + label_line, row_bar);
  svg_boxes(svg, row.meaning, boxes);
  return label_line + row_bar + row_gap;
}

/// The labels below one lane, each on the first line where it is free.
class Marks {
 public:
  explicit Marks(const DaysAxis& strip) : strip_(strip) {}

  /// None where both lines are taken; the table has them all.
  void add(Instant at, std::string_view text) {
    const double room = DaysAxis::width - LabelLine::width_of(text);
    const double x = std::max(DaysAxis::left, std::min(strip_.x(at), room));
    for (std::size_t i = 0; i < lines_.size(); ++i)
      if (lines_.at(i).takes(x, text)) {
        placed_.push_back({x, i, std::string(text)});
        used_ = std::max(used_, i + 1);
        return;
      }
  }

  /// What they take from `y` on.
  double write(Markup& svg, double y) const {
    for (const Placed& each : placed_)
      svg_label(svg, "mark",
                {each.x, y + letter_height + label_line * static_cast<double>(each.line)},
                each.text);
    return label_line * static_cast<double>(used_);
  }

 private:
  struct Placed {
    double x;
    std::size_t line;
    std::string text;
  };
  const DaysAxis& strip_;
  std::array<LabelLine, 2> lines_;
  std::vector<Placed> placed_;
  std::size_t used_ = 0;
};

void write_waits(Markup& svg, const DaysAxis& strip, const Plan& plan, std::size_t batch,
                 double top) {
  for (const WaitSpan& wait : plan.course.waits) {
    if (wait.batch != batch) continue;
    const auto shown = strip.within(wait.time);
    if (!shown) continue;
    const WaitKind kind = kind_of(wait.by);
    if (kind == WaitKind::person)
      svg_line(svg, "idle", {strip.x(shown->begin), top + lane_bar / 2},
               {strip.x(shown->end), top + lane_bar / 2});
    else
      svg_box(svg, meaning_of(kind), strip.box(*shown, top + 2, lane_bar - 4));
  }
}

/// The moment of light use, where it lies within these days.
std::optional<Instant> used_from(const DaysAxis& strip, const Plan& plan, std::size_t batch) {
  for (const DatedOutcome& outcome : plan.schedule.outcomes)
    if (outcome.batch == batch && outcome.stage == Stage::light_use && outcome.at &&
        strip.within({*outcome.at, *outcome.at + Minutes(1)}))
      return outcome.at;
  return std::nullopt;
}

/// Has the batch work, a wait or its light use in these days?
bool has_lane(const DaysAxis& strip, const Plan& plan, std::size_t batch) {
  const auto waits = [&](const WaitSpan& wait) {
    return wait.batch == batch && strip.within(wait.time).has_value();
  };
  const auto works = [&](const DatedStep& step) {
    return plan.list.operations.at(step.operation).batch == batch &&
           std::ranges::any_of(step.pieces,
                               [&](const Interval& piece) { return !!strip.within(piece); });
  };
  return std::ranges::any_of(plan.course.waits, waits) ||
         std::ranges::any_of(plan.schedule.steps, works) || used_from(strip, plan, batch);
}

/// The batch's name, its bar, and what is done below it; what it takes from `y` on.
double write_lane(Markup& svg, const DaysAxis& strip, const Plan& plan, const StepWords& words,
                  std::size_t batch, double y) {
  if (!has_lane(strip, plan, batch)) return 0;
  svg_line(svg, "lane", {0, y}, {DaysAxis::width, y});
  svg_label(svg, "batch", {DaysAxis::left, y + letter_height + 1},
            cut_to(longest_label, plan.job.batches.at(batch).name));
  const double top = y + label_line + 3;
  write_ground(svg, strip, plan, top, lane_bar);
  write_waits(svg, strip, plan, batch, top);
  Marks marks(strip);
  for (const WorkGroup& group : work_groups(plan, words, batch)) {
    if (!strip.within(group.time)) continue;
    svg.open("g");
    svg_told(svg, fmt::format("{}: {}", words.figures().moment(group.time.begin), group.whole));
    svg_box(svg, "work", strip.box(group.time, top, lane_bar, 4));
    svg.close();
    marks.add(group.time.begin, group.mark);
  }
  if (const auto used = used_from(strip, plan, batch)) {
    svg_line(svg, "reached", {strip.x(*used), top - 2}, {strip.x(*used), top + lane_bar + 2});
    marks.add(*used, "light use");
  }
  return label_line + 3 + lane_bar + 2 + marks.write(svg, top + lane_bar + 2) + row_gap;
}

std::string days_described(const Plan& plan, const StepWords& words, const DaysAxis& strip) {
  std::string text;
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch)
    for (const WorkGroup& group : work_groups(plan, words, batch))
      if (strip.within(group.time))
        text += fmt::format("{}{}, {}: {}", text.empty() ? "" : "; ",
                            cut_to(longest_name, plan.job.batches[batch].name),
                            words.figures().moment(group.time.begin), group.mark);
  return text.empty() ? chart_words::no_work : text + ".";
}

void write_days_strip(Markup& html, const Plan& plan, const StepWords& words, const DaysAxis& strip,
                      int number) {
  Markup svg;
  write_day_names(svg, strip, words.figures().zone());
  double y = DaysAxis::head + 2;
  for (const Row& row : rows_of(plan)) y += write_row(svg, strip, plan, row, y);
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch)
    y += write_lane(svg, strip, plan, words, batch, y);
  open_chart(html,
             {fmt::format("days-{}", number),
              fmt::format(chart_words::work_of_week, week_words(strip, words.figures())),
              days_described(plan, words, strip), days_caption(strip, plan, words.figures())},
             DaysAxis::width, y);
  html.raw(svg.markup());
  close_chart(html);
}

/// Work and waits in order of time.
Table table_of(const Plan& plan, const StepWords& words) {
  std::vector<std::pair<Interval, std::vector<std::string>>> rows;
  const auto add = [&](std::size_t batch, Interval time, std::string_view what) {
    rows.push_back({time,
                    {words.figures().moment(time.begin), words.figures().moment(time.end),
                     cut_to(longest_name, plan.job.batches.at(batch).name), std::string(what)}});
  };
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch)
    for (const WorkGroup& group : work_groups(plan, words, batch))
      add(batch, group.time, group.whole);
  for (const WaitSpan& wait : plan.course.waits) add(wait.batch, wait.time, words_for(wait.by));
  std::ranges::stable_sort(rows, {}, [](const auto& row) { return row.first; });
  Table table{.head = {"from", "to", "batch", "what"}};
  for (auto& row : rows) table.rows.push_back(std::move(row.second));
  return table;
}

}  // namespace

void write_days_chart(Markup& html, const Plan& plan, const StepWords& words) {
  if (plan.schedule.steps.empty()) return;
  std::vector<LegendEntry> legend{{"work", "your work"},
                                  {"drying", "dries"},
                                  {"unfit", chart_words::air_unfit},
                                  {"idle", chart_words::waits_for_you, LegendEntry::Shape::line},
                                  {"open", "your hours"}};
  if (!plan.course.no_power_sanding.empty()) legend.push_back({"quiet", "quiet hours"});
  for (LegendEntry& entry : ground_legend(plan, words.figures()))
    legend.push_back(std::move(entry));
  write_legend(html, legend);
  html.open("div", {{"class", "strips"}});
  int number = 0;
  for (const DaysAxis& strip : days_axes(plan.course.days, words.figures()))
    write_days_strip(html, plan, words, strip, ++number);
  html.close();
  html.open("details");
  html.element("summary", {}, chart_words::same_as_table);
  HtmlPage page(html);
  page.table(table_of(plan, words));
  html.close();
}

}  // namespace tackfree
