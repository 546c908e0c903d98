#include "tackfree/text/day_chart.hpp"

#include "tackfree/words/batch_line.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/week.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t name_columns = 15;
constexpr std::size_t days_of_week = 7;

/// The characters of one line, written over each other.
class Line {
 public:
  Line(const Week& week, std::size_t cells) : week_(week), cells_(cells) {
    text_.assign(cells * week.day_count(), ' ');
  }

  /// Cells that `time` fills for half or more; at least one where `always`.
  void put(Interval time, char mark, bool always = false) {
    const auto shown = week_.within(time);
    if (!shown) return;
    const double from = cell_of(shown->begin), to = cell_of(shown->end);
    auto first = static_cast<std::size_t>(std::round(from));
    auto last = static_cast<std::size_t>(std::round(to));
    if (always) {
      first = static_cast<std::size_t>(from);
      last = std::max(first + 1, static_cast<std::size_t>(std::ceil(to)));
    }
    for (std::size_t i = first; i < std::min(last, text_.size()); ++i) text_[i] = mark;
  }

  /// With a bar at each midnight.
  std::string text() const {
    std::string all = "|";
    for (std::size_t day = 0; day < week_.day_count(); ++day)
      all += text_.substr(day * cells_, cells_) + "|";
    return all;
  }

 private:
  double cell_of(Instant at) const {
    const double share = week_.days_to(at) / static_cast<double>(week_.day_count());
    return share * static_cast<double>(text_.size());
  }

  const Week& week_;
  std::size_t cells_;
  std::string text_;
};

void write_line(Page& page, std::string_view name, const std::string& cells) {
  page.line(0, pad_right(name_columns, name) + cells);
}

/// The days' names; a `?` where the day's air is typical, not known.
void write_day_names(Page& page, const Week& week, const Plan& plan, const Figures& figures,
                     std::size_t cells) {
  std::string days = " ";
  const auto typical = plan.air.typical_from();
  for (std::size_t day = 0; day < week.day_count(); ++day) {
    const bool known = !typical || week.midnights().at(day + 1) <= *typical;
    const std::string name =
        figures.weekday_and_number(figures.local_date(week.midnights().at(day)));
    days += pad_right(cells + 1, name + (known ? "" : " ?"));
  }
  write_line(page, "", days);
}

void write_week(Page& page, const Plan& plan, const StepWords& words, const Week& week,
                std::size_t cells) {
  write_day_names(page, week, plan, words.figures(), cells);
  Line open(week, cells);
  for (const Interval& time : plan.course.working) open.put(time, '=');
  write_line(page, "your hours", open.text());
  for (std::size_t batch = 0; batch < plan.job.batches.size(); ++batch) {
    Line line(week, cells);
    for (const WaitSpan& wait : plan.course.waits) {
      constexpr std::string_view marks = "~x.";
      if (wait.batch == batch)
        line.put(wait.time, marks.at(static_cast<std::size_t>(kind_of(wait.by))));
    }
    for (const WorkGroup& group : work_groups(plan, words, batch)) line.put(group.time, '#', true);
    write_line(page, cut_inside(name_columns - 1, plan.job.batches[batch].name), line.text());
  }
}

}  // namespace

void write_text_chart(Page& page, const Plan& plan, const StepWords& words) {
  const auto needed = [](std::size_t cells) {
    return name_columns + 1 + (cells + 1) * days_of_week;
  };
  constexpr std::size_t narrow = 8, wide = 12;
  if (plan.schedule.steps.empty() || page.columns() < needed(narrow)) return;
  const std::size_t cells = page.columns() < needed(wide) ? narrow : wide;
  page.heading(chart_words::the_weeks);
  page.paragraph(Lead::plain(),
                 fmt::format(chart_words::characters, 24 / cells,
                             plan.air.typical_from() ? chart_words::typical_mark : ""));
  for (const Week& week : weeks_of(plan.course.days, words.figures())) {
    page.blank();
    write_week(page, plan, words, week, cells);
  }
}

}  // namespace tackfree
