#include "tackfree/report/text_tonight.hpp"

#include "tackfree/report/display_text.hpp"
#include "tackfree/report/step_words.hpp"
#include "tackfree/report/text_fumes.hpp"

#include <algorithm>
#include <set>
#include <vector>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t most_steps = 5;

class Answer {
 public:
  Answer(const Plan& plan, const Tonight& tonight, int columns, Ink ink)
      : plan_(plan),
        tonight_(tonight),
        words_(plan),
        figures_(words_.figures()),
        page_(columns, ink) {}

  std::string text() {
    head();
    write_stop(page_, plan_);
    work();
    air();
    for (const WaitingCoat& coat : tonight_.waiting) waiting(coat);
    must_not();
    then();
    put_away();
    page_.paragraph({0, ""}, plan_.job.data.texts.deference);
    return page_.text();
  }

 private:
  const DatedStep& step(std::size_t index) const { return plan_.schedule.steps.at(index); }
  const Operation& operation(std::size_t index) const {
    return plan_.list.operations.at(step(index).operation);
  }

  std::string in(Instant at) const {
    if (at <= plan_.now) return "now";
    const Duration left = to_duration(at - plan_.now);
    return "in " + (left < hours(2) ? duration_text(left) : wait_text(left));
  }

  /// The clock alone today, else the day with it.
  std::string when(Instant at) const {
    return figures_.local_date(at) == figures_.local_date(plan_.now) ? figures_.clock(at)
                                                                     : figures_.moment(at);
  }

  bool is_read() const {
    return std::ranges::any_of(plan_.job.history.entries, [&](const LogEntry& entry) {
      return entry.temperature && entry.at <= plan_.now && plan_.now - entry.at <= one_hour;
    });
  }

  void head() {
    const std::string room = plan_.job.room.name.empty() ? "room" : plan_.job.room.name;
    page_.paragraph({0, ""}, fmt::format("{}: {}. The {} has {} and {}{}.", plan_.job.name,
                                         figures_.moment(plan_.now), room,
                                         figures_.temperature(tonight_.temperature).text(),
                                         humidity_text(tonight_.humidity),
                                         is_read() ? ", as read" : ", by the forecast"));
    page_.blank();
  }

  void work() {
    if (tonight_.work.empty()) {
      page_.paragraph({0, "Do  "}, "nothing is left to do.");
      return;
    }
    const bool today =
        figures_.local_date(tonight_.stretch.begin) == figures_.local_date(plan_.now);
    const std::string length = duration_text(to_duration(tonight_.stretch.length()));
    if (!today) {
      page_.paragraph(
          {0, "Do  "},
          fmt::format("nothing tonight. Next on {}: {}.", figures_.moment(tonight_.stretch.begin),
                      words_.full_title(operation(tonight_.work.front()))));
      if (const std::string why = words_.why(step(tonight_.work.front())); !why.empty())
        page_.paragraph({5, ""}, fmt::format("It waits: {}.", why));
      return;
    }
    page_.paragraph({0, "Do  "},
                    fmt::format("{}: {} of work, until {}.",
                                tonight_.stretch.begin > plan_.now
                                    ? fmt::format("{} ({})", when(tonight_.stretch.begin),
                                                  in(tonight_.stretch.begin))
                                    : "now",
                                length, figures_.clock(tonight_.stretch.end)));
    std::size_t told = 0;
    for (const std::size_t index : tonight_.work) {
      if (told == most_steps) break;
      ++told;
      one_step(index);
    }
    if (tonight_.work.size() > told)
      page_.paragraph(
          {5, ""}, fmt::format("and {} more; `tackfree plan` has them all.",
                               count_text(static_cast<double>(tonight_.work.size() - told), "step",
                                          "steps")));
    how();
  }

  void one_step(std::size_t index) {
    const std::vector<Interval>& pieces = step(index).pieces;
    const auto next =
        std::ranges::find_if(pieces, [&](const Interval& piece) { return piece.end > plan_.now; });
    const Interval piece = next == pieces.end() ? pieces.back() : *next;
    page_.paragraph({5, figures_.clock(piece.begin) + " "},
                    fmt::format("{}{} ({})", words_.full_title(operation(index)),
                                pieces.size() > 1 ? ", part of it" : "",
                                duration_text(to_duration(piece.length()))));
    if (const std::string pour = words_.pour(operation(index)); !pour.empty())
      page_.paragraph({13, "pour"}, pour);
  }

  /// The first line on how to do the first thing that has one.
  void how() {
    for (const std::size_t index : tonight_.work)
      if (const auto& lines = operation(index).how; !lines.empty()) {
        page_.paragraph({5, ""}, lines.front());
        return;
      }
  }

  void air() {
    if (!tonight_.air) return;
    const AirNow& air = *tonight_.air;
    const Coating& coating = plan_.job.coatings.at(air.coating);
    const std::string name = cut_to(longest_name, coating.name);
    std::string text;
    if (air.failing.empty()) {
      text = fmt::format("fit for {} now", name);
      if (air.changes)
        text += fmt::format(", for a coat begun before {}; then {}", when(*air.changes),
                            words_.rule_with_origin(*air.closes_by, coating));
    } else {
      text = fmt::format("not fit for {} now: {}", name,
                         words_.rule_with_origin(air.failing.front(), coating));
      text += air.changes ? fmt::format("; fit again {}", when(*air.changes))
                          : "; it does not get fit within two weeks";
    }
    page_.paragraph({0, "Air "}, text + ".");
  }

  void waiting(const WaitingCoat& coat) {
    const std::string title = words_.full_title(operation(coat.step));
    if (coat.share >= 1) {
      page_.paragraph({0, "Coat"},
                      fmt::format("{}: {} by this estimate. Try it where it does not show.", title,
                                  reached_words(coat.towards)));
      return;
    }
    page_.paragraph(
        {0, "Coat"},
        fmt::format("{}: {} of the way to {}{}.{}", title, percent_text(fraction(coat.share)),
                    word_for(coat.towards),
                    coat.ready ? fmt::format("; ready {}, {}", when(*coat.ready), in(*coat.ready))
                               : ", which it does not reach within the plan",
                    coat.failed ? " It failed its test and gets more time." : ""));
  }

  void must_not() {
    std::vector<std::string> rules;
    if (tonight_.dust_free_at)
      rules.push_back(
          fmt::format("No sanding or sweeping in there before {}: wet boards take the "
                      "dust.",
                      when(*tonight_.dust_free_at)));
    if (tonight_.air && !tonight_.air->failing.empty()) rules.emplace_back("No coat in this air.");
    for (const WaitingCoat& coat : tonight_.waiting)
      if (coat.share < 1 && coat.towards != Stage::light_use) {
        rules.emplace_back("No coat over one that is not ready.");
        break;
      }
    for (const std::string& rule : rules) page_.paragraph({0, "Not "}, rule);
  }

  void then() {
    if (!tonight_.then) {
      if (plan_.schedule.ready_at && !tonight_.work.empty())
        page_.paragraph(
            {0, "Then"},
            fmt::format("that was the last work. Ready {} for light use.",
                        figures_.moment(figures_.full_hour_up(*plan_.schedule.ready_at))));
      return;
    }
    const DatedStep& next = step(*tonight_.then);
    page_.paragraph({0, "Then"},
                    fmt::format("{}, {}: {}.", figures_.moment(next.begin()), in(next.begin()),
                                words_.full_title(operation(*tonight_.then))));
  }

  /// After the coats of this stretch, or of one that is just over.
  void put_away() {
    std::set<std::size_t> coatings;
    const bool today = !tonight_.work.empty() && figures_.local_date(tonight_.stretch.begin) ==
                                                     figures_.local_date(plan_.now);
    if (today)
      for (const std::size_t index : tonight_.work)
        if (operation(index).coating) coatings.insert(*operation(index).coating);
    for (const Operation& op : plan_.list.operations)
      if (op.coating && op.done && !op.skipped() && plan_.now - op.done->time.end < one_hour)
        coatings.insert(*op.coating);
    for (const std::size_t index : coatings) {
      const Coating& coating = plan_.job.coatings[index];
      page_.paragraph(
          {0, "Away"},
          fmt::format("Brush clean with {}, tin shut.{}{}", coating.words.cleaner,
                      coating.dries_by_oxidation
                          ? " Oily rags heat themselves and can catch fire: flat to dry outdoors, "
                            "or under water in a lidded metal can."
                          : "",
                      airing()));
    }
  }

  std::string airing() const {
    const AiringHabit habit = plan_.job.room.airing.value_or(AiringHabit());
    if (habit.after == Opening::closed || habit.after_for <= Duration()) return {};
    return fmt::format(" Air for {} after the last coat: {}.", duration_text(habit.after_for),
                       words_for(habit.after));
  }

  const Plan& plan_;
  const Tonight& tonight_;
  StepWords words_;
  const Figures& figures_;
  TextPage page_;
};

}  // namespace

std::string tonight_text(const Plan& plan, const Tonight& tonight, int columns, Ink ink) {
  return Answer(plan, tonight, columns, ink).text();
}

}  // namespace tackfree
