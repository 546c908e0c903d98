#include "tackfree/document/first_screen.hpp"

#include "tackfree/document/day_sections.hpp"
#include "tackfree/plan/due_dates.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/look_words.hpp"
#include "tackfree/words/ready_words.hpp"
#include "tackfree/words/session_lines.hpp"
#include "tackfree/words/short_warnings.hpp"
#include "tackfree/words/tins_words.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// How much is told one by one.
struct Shown {
  std::size_t looks, look_columns;
  std::size_t summary_columns;
  std::size_t tins_columns;
  std::size_t step_warnings;
};

constexpr std::array ample_to_tight{Shown{3, 230, 200, 200, 3}, Shown{3, 150, 140, 140, 2},
                                    Shown{2, 140, 70, 70, 2}, Shown{2, 70, 70, 70, 1},
                                    Shown{1, 70, 70, 70, 1}};

/// Counts the lines that a terminal of 80 columns takes.
class LinesTaken : public Page {
 public:
  std::size_t columns() const override { return width; }
  void line(std::size_t /*indent*/, std::string_view /*text*/) override { ++lines_; }
  void blank() override { ++lines_; }
  void heading(std::string_view /*title*/) override { lines_ += 2; }
  void subheading(std::string_view title) override { lines_ += wrapped(width, title).size(); }
  void paragraph(Lead lead, std::string_view text) override {
    constexpr std::size_t mark = 2;
    const std::size_t label = lead.label.empty() ? mark : display_width(lead.label) + 1;
    const std::size_t beside = lead.indent + std::max(label, lead.columns + 1);
    lines_ += wrapped(width - beside, text).size();
  }
  void table(const Table& table) override { lines_ += table.rows.size() + 1; }

  std::size_t lines() const { return lines_; }

 private:
  static constexpr std::size_t width = 80;
  std::size_t lines_ = 0;
};

class FirstScreen {
 public:
  FirstScreen(Page& page, const Plan& plan, const StepWords& words, const Shown& detail)
      : page_(page),
        plan_(plan),
        words_(words),
        figures_(words.figures()),
        shown_(detail),
        sessions_(session_lines(plan, words)) {}

  void write() {
    for (const ShortWarning& warning : short_warnings(plan_))
      page_.paragraph(
          warning.word == "DANGER" ? Lead::danger(word_columns) : Lead::warning(word_columns),
          warning.text);
    looks();
    page_.blank();
    now();
    ready();
    due();
    buy();
    next();
  }

 private:
  static constexpr std::size_t word_columns = 7, sessions_told = 3;

  void looks() {
    const std::vector<std::string> all = things_to_look_at(plan_, words_);
    const std::size_t shown = all.size() > shown_.looks ? shown_.looks - 1 : all.size();
    for (std::size_t i = 0; i < shown; ++i)
      page_.paragraph(Lead::look(0), cut_to(shown_.look_columns, all[i]));
    if (shown < all.size())
      page_.paragraph(Lead::look(0), fmt::format("{} to look at.",
                                                 count_text(static_cast<double>(all.size() - shown),
                                                            "more thing", "more things")));
  }

  bool goes_on_now() const {
    return !sessions_.empty() && sessions_.front().time.begin <= plan_.now;
  }
  bool is_today() const {
    return !sessions_.empty() &&
           figures_.local_date(sessions_.front().time.begin) == figures_.local_date(plan_.now);
  }

  void now() {
    std::string text;
    if (sessions_.empty())
      text =
          plan_.schedule.unplaced.empty() ? "Nothing is left to do." : "Nothing that has a time.";
    else if (!is_today())
      text = fmt::format("Nothing until {}, {}. Then: {}",
                         figures_.day_seen_from(plan_.now, sessions_.front().time.begin),
                         figures_.clock(sessions_.front().time.begin),
                         session_summary(sessions_.front(), plan_, words_, shown_.summary_columns));
    else
      text = fmt::format(
          "{} ({} of work{}). {}",
          goes_on_now() ? "Until " + figures_.clock(sessions_.front().time.end)
                        : "Today, " + figures_.clock_span(sessions_.front().time),
          hours_text(sessions_.front().work),
          sessions_.front().people > 1 ? fmt::format(", {} people", sessions_.front().people) : "",
          session_summary(sessions_.front(), plan_, words_, shown_.summary_columns));
    page_.paragraph(Lead::labelled("Now", first_columns), text);
    if (is_today()) step_warnings(sessions_.front(), first_columns + 1);
  }

  void step_warnings(const SessionLines& session, std::size_t indent) {
    std::vector<LineWarning> all = warnings_of(session, plan_);
    if (all.size() > shown_.step_warnings) all.resize(shown_.step_warnings);
    for (const LineWarning& each : all) page_.paragraph(Lead::look(indent), each.warning.text);
  }

  void ready() {
    page_.paragraph(Lead::labelled("Ready", first_columns), ready_words(plan_, figures_));
    if (const std::string holding = holding_words(plan_, words_); !holding.empty())
      page_.paragraph(Lead::plain(first_columns + 1), "What holds you up: " + holding);
    if (const std::string proof = proof_words(plan_, figures_); !proof.empty())
      page_.paragraph(Lead::plain(first_columns + 1), proof);
    if (const std::string moved = moved_words(plan_, figures_); !moved.empty())
      page_.paragraph(Lead::plain(first_columns + 1), moved);
  }

  /// Missed dates stand among what needs a look.
  void due() {
    std::vector<std::string> kept;
    for (const DueDate& date : due_dates(plan_))
      if (date.in_time())
        kept.push_back(cut_inside(longest_name, plan_.job.batches.at(date.batch).name));
    if (kept.empty()) return;
    constexpr std::size_t most_named = 3;
    const std::size_t more = kept.size() > most_named ? kept.size() - most_named + 1 : 0;
    kept.resize(kept.size() - more);
    page_.paragraph(Lead::labelled("Due", first_columns),
                    fmt::format("In time: {}{}.", fmt::join(kept, "; "),
                                more > 0 ? fmt::format("; and {} more", more) : ""));
  }

  void buy() {
    page_.paragraph(Lead::labelled("Buy", first_columns),
                    cut_to(shown_.tins_columns, all_tins_text(plan_)));
  }

  void next() {
    const std::size_t from = is_today() ? 1 : 0;
    const std::size_t to = std::min(sessions_.size(), from + sessions_told);
    if (from >= to) return;
    page_.heading("The next sessions");
    for (std::size_t i = from; i < to; ++i) {
      const SessionLines& session = sessions_[i];
      page_.subheading(session_heading(session, figures_));
      page_.paragraph(Lead::plain(2),
                      session_summary(session, plan_, words_, shown_.summary_columns));
      step_warnings(session, 2);
    }
    if (to < sessions_.size())
      page_.paragraph(Lead::plain(),
                      fmt::format("Then {}. Your own work: {} in total.",
                                  count_text(static_cast<double>(sessions_.size() - to),
                                             "more session", "more sessions"),
                                  hours_text(plan_.work.in_all)));
  }

  Page& page_;
  const Plan& plan_;
  const StepWords& words_;
  const Figures& figures_;
  Shown shown_;
  std::vector<SessionLines> sessions_;
};

}  // namespace

void write_first_screen(Page& page, const Plan& plan, const StepWords& words) {
  for (const Shown& detail : ample_to_tight) {
    LinesTaken taken;
    FirstScreen(taken, plan, words, detail).write();
    if (taken.lines() > most_first_lines && &detail != &ample_to_tight.back()) continue;
    FirstScreen(page, plan, words, detail).write();
    return;
  }
}

void write_nothing(Page& page) {
  page.paragraph(Lead::plain(), "There is nothing to tell here in this plan.");
}

void write_rest(Page& page) {
  page.blank();
  page.paragraph(Lead::plain(),
                 "See more: --only days (or warnings, buy, areas, coats, air, vapour), --full.");
}

}  // namespace tackfree
