#include "tackfree/html/days_chart.hpp"

#include "tackfree/html/week_axis.hpp"
#include "tackfree/words/batch_line.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr double row_height = 24;   // your hours, unfit air
constexpr double lane_height = 58;  // a batch
constexpr double strip_foot = 16;   // words of what divides the strip
constexpr double row_bar = 9, lane_bar = 16;
constexpr std::size_t longest_row = 60;

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

void write_row(Markup& svg, const WeekAxis& week, const Row& row, double y) {
  svg_label(svg, "row", {WeekAxis::left + 4, y + 10}, cut_to(longest_row, row.name));
  svg_line(svg, "rail", {WeekAxis::left, y + 14 + row_bar}, {week.right(), y + 14 + row_bar});
  for (const Interval& time : row.times)
    if (const auto shown = week.within(time))
      svg_box(svg, row.meaning, week.box(*shown, y + 14, row_bar));
}

/// The labels of one lane.
class Marks {
 public:
  Marks(const WeekAxis& week, double y) : week_(week), y_(y) {}

  /// On the first line where it is free, else on the second, else none; the table has them all.
  void write(Markup& svg, Instant at, std::string_view text) {
    const double room = week_.right() - LabelLine::width_of(text);
    const double x = std::max(WeekAxis::left, std::min(week_.x(at), room));
    for (std::size_t i = 0; i < lines_.size(); ++i)
      if (lines_.at(i).takes(x, text)) {
        svg_label(svg, "mark", {x, y_ + 11 + 11 * static_cast<double>(i)}, text);
        return;
      }
  }

 private:
  const WeekAxis& week_;
  double y_;
  std::array<LabelLine, 2> lines_;
};

void write_waits(Markup& svg, const WeekAxis& week, const Plan& plan, std::size_t batch,
                 double top) {
  for (const WaitSpan& wait : plan.course.waits) {
    if (wait.batch != batch) continue;
    const auto shown = week.within(wait.time);
    if (!shown) continue;
    const WaitKind kind = kind_of(wait.by);
    if (kind == WaitKind::person)
      svg_line(svg, "idle", {week.x(shown->begin), top + lane_bar / 2},
               {week.x(shown->end), top + lane_bar / 2});
    else
      svg_box(svg, meaning_of(kind), week.box(*shown, top + 2, lane_bar - 4));
  }
}

void write_lane(Markup& svg, const WeekAxis& week, const Plan& plan, const StepWords& words,
                std::size_t batch, double y) {
  svg_line(svg, "lane", {0, y}, {week.width(), y});
  svg_label(svg, "batch", {4, y + 12}, cut_to(longest_row, plan.job.batches.at(batch).name));
  const double top = y + 16;
  write_waits(svg, week, plan, batch, top);
  Marks marks(week, top + lane_bar);
  for (const WorkGroup& group : work_groups(plan, words, batch)) {
    if (!week.within(group.time)) continue;
    svg.open("g");
    svg_told(svg, fmt::format("{}: {}", words.figures().moment(group.time.begin), group.whole));
    svg_box(svg, "work", week.box(group.time, top, lane_bar, 4));
    svg.close();
    marks.write(svg, group.time.begin, group.mark);
  }
  for (const DatedOutcome& outcome : plan.schedule.outcomes) {
    if (outcome.batch != batch || outcome.stage != Stage::light_use || !outcome.at) continue;
    if (!week.within({*outcome.at, *outcome.at + Minutes(1)})) continue;
    const double x = week.x(*outcome.at);
    svg_line(svg, "reached", {x, top - 2}, {x, top + lane_bar + 2});
    marks.write(svg, *outcome.at, "light use");
  }
}

std::string days_described(const Plan& plan, const StepWords& words, const WeekAxis& week) {
  std::string text;
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch)
    for (const WorkGroup& group : work_groups(plan, words, batch))
      if (week.within(group.time))
        text += fmt::format("{}{}, {}: {}", text.empty() ? "" : "; ",
                            cut_to(longest_name, plan.job.batches[batch].name),
                            words.figures().moment(group.time.begin), group.mark);
  return text.empty() ? chart_words::no_work : text + ".";
}

void write_week_of_days(Markup& html, const Plan& plan, const StepWords& words,
                        const WeekAxis& week, int number) {
  const std::vector<Row> rows = rows_of(plan);
  const double height = WeekAxis::head + row_height * static_cast<double>(rows.size()) + 6 +
                        lane_height * static_cast<double>(plan.job.batches.size()) + strip_foot;
  open_chart(html,
             {fmt::format("days-{}", number),
              fmt::format(chart_words::work_of_week, week_words(week, words.figures())),
              days_described(plan, words, week)},
             week.width(), height);
  write_axis(html, week, plan, words.figures(), height);
  double y = WeekAxis::head + 4;
  for (const Row& row : rows) {
    write_row(html, week, row, y);
    y += row_height;
  }
  y += 4;
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch) {
    write_lane(html, week, plan, words, batch, y);
    y += lane_height;
  }
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
  write_legend(html, {{"work", "your work"},
                      {"drying", "dries"},
                      {"unfit", chart_words::air_unfit},
                      {"idle", chart_words::waits_for_you, LegendEntry::Shape::line},
                      {"open", "your hours"},
                      {"night", fmt::format("night, {} to {}",
                                            words.figures().clock_of_day(WeekAxis::night_begins),
                                            words.figures().clock_of_day(WeekAxis::night_ends))}});
  int number = 0;
  for (const WeekAxis& week : week_axes(plan.course.days, words.figures()))
    write_week_of_days(html, plan, words, week, ++number);
  html.open("details");
  html.element("summary", {}, chart_words::same_as_table);
  HtmlPage page(html);
  page.table(table_of(plan, words));
  html.close();
}

}  // namespace tackfree
