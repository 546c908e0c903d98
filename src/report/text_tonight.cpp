#include "tackfree/report/text_tonight.hpp"

#include "tackfree/report/display_text.hpp"
#include "tackfree/report/step_words.hpp"
#include "tackfree/report/text_fumes.hpp"

#include <algorithm>
#include <set>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr std::size_t most_steps = 5;
/// Minutes after midnight between which one says "today" and not "tonight".
constexpr int morning = 5 * 60, evening = 17 * 60;

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
    return is_today(at) ? figures_.clock(at) : figures_.moment(at);
  }

  /// Where the air of now is known from.
  std::string air_known_from() const {
    if (!tonight_.read_at) return ", by the forecast";
    const Minutes ago = plan_.now - *tonight_.read_at;
    if (ago <= plan_.job.grid) return ", as read";
    return fmt::format(", by your reading {} ago", duration_text(to_duration(ago)));
  }

  void head() {
    const std::string room = plan_.job.room.name.empty() ? "room" : plan_.job.room.name;
    page_.paragraph({0, ""}, fmt::format("{}: {}. The {} has {} and {}{}.", plan_.job.name,
                                         figures_.moment(plan_.now), room,
                                         figures_.temperature(tonight_.temperature).text(),
                                         humidity_text(tonight_.humidity), air_known_from()));
    page_.blank();
  }

  bool is_today(Instant at) const {
    return figures_.local_date(at) == figures_.local_date(plan_.now);
  }

  /// `nothing today`, from the late afternoon on `nothing tonight`; `nothing more` on a day that
  /// had work.
  std::string nothing() const {
    const int minute = figures_.zone().local(plan_.now).minute_of_day;
    const bool by_day = minute >= morning && minute < evening;
    const bool worked = std::ranges::any_of(plan_.list.operations, [&](const Operation& op) {
      return op.done && op.done->logged && !op.skipped() && is_today(op.done->time.end);
    });
    return fmt::format("nothing{} {}", worked ? " more" : "", by_day ? "today" : "tonight");
  }

  void work() {
    const Instant begin = tonight_.stretch.begin;
    if (tonight_.work.empty()) return no_work_left();
    if (!is_today(begin)) return another_day();
    const std::string length = duration_text(to_duration(tonight_.stretch.length()));
    const std::string until = figures_.clock(tonight_.stretch.end);
    if (begin - plan_.now > one_hour)
      page_.paragraph({0, "Do  "}, fmt::format("nothing before {}, {}; then {} of work, until {}.",
                                               figures_.clock(begin), in(begin), length, until));
    else
      page_.paragraph(
          {0, "Do  "},
          fmt::format("{}: {} of work, until {}.",
                      begin > plan_.now ? fmt::format("at {}, {}", figures_.clock(begin), in(begin))
                                        : "now",
                      length, until));
    steps_of_stretch();
  }

  /// All steps are done, or none of what is left has a time.
  void no_work_left() {
    const auto& ready = plan_.schedule.ready_at;
    std::string text = "nothing is left to do.";
    if (!plan_.schedule.unplaced.empty())
      text = "nothing that has a time; `tackfree plan` says what is in the way.";
    else if (ready && *ready > plan_.now)
      text = fmt::format(
          "nothing: all the work is done, it only needs time. Ready for light use {}, {}.",
          when(figures_.full_hour_up(*ready)), in(*ready));
    page_.paragraph({0, "Do  "}, text);
  }

  void another_day() {
    const Instant begin = tonight_.stretch.begin;
    const DatedStep& first = step(tonight_.work.front());
    page_.paragraph({0, "Do  "},
                    fmt::format("{}. Next, {} at {}, {}: {}; {} of work in all.", nothing(),
                                figures_.day_seen_from(plan_.now, begin), figures_.clock(begin),
                                in(begin), words_.full_title(operation(tonight_.work.front())),
                                duration_text(to_duration(tonight_.stretch.length()))));
    std::string why = words_.why(first);
    if (why.empty() && !first.held.empty() && first.held.back().by == HeldBy::calendar)
      why = "your next working hours";
    if (!why.empty()) page_.paragraph({5, ""}, fmt::format("Why not sooner: {}.", why));
  }

  void steps_of_stretch() {
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
    page_.paragraph({5, pad_left(figures_.clock_columns(), figures_.clock(piece.begin)) + " "},
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
      text = fmt::format("not fit for {} now: {}. {}", name, rules_against(air, coating),
                         air.changes ? fmt::format("Fit again {}", when(*air.changes))
                                     : "It does not get fit within two weeks");
    }
    page_.paragraph({0, "Air "}, text + ".");
  }

  /// Every rule that fails; each with its own hour where it is kept before all of them are.
  std::string rules_against(const AirNow& air, const Coating& coating) const {
    std::vector<std::string> rules;
    for (const GateAt& each : air.failing) {
      const bool sooner = each.opens && each.opens != air.changes;
      rules.push_back(words_.rule_with_origin(each.gate, coating) +
                      (sooner ? fmt::format(" until {}", when(*each.opens)) : ""));
    }
    return fmt::format("{}", fmt::join(rules, "; "));
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
          fmt::format("sanding or sweeping in there before {}: wet boards take the dust.",
                      when(*tonight_.dust_free_at)));
    if (tonight_.air && !tonight_.air->failing.empty()) rules.emplace_back("coat in this air.");
    for (const WaitingCoat& coat : tonight_.waiting)
      if (coat.share < 1 && coat.towards != Stage::light_use)
        if (std::string rule = left_alone(coat); std::ranges::find(rules, rule) == rules.end())
          rules.push_back(std::move(rule));
    for (const std::string& rule : rules) page_.paragraph({0, "No  "}, rule);
  }

  /// What must wait for the coat.
  std::string left_alone(const WaitingCoat& coat) const {
    const Batch& batch = plan_.job.batches.at(operation(coat.step).batch);
    const std::string name = cut_to(longest_name, batch.name);
    const std::string before = coat.ready ? "before " + when(*coat.ready)
                                          : "while it is not " + reached_words(coat.towards);
    if (coat.towards == Stage::handle || coat.towards == Stage::touch)
      return fmt::format("turning or moving of {} {}.", name, before);
    if (coat.towards == Stage::hardware) return fmt::format("hardware on {} {}.", name, before);
    return fmt::format("sanding or coating of {} {}.", name, before);
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
    if (!tonight_.work.empty() && is_today(tonight_.stretch.begin))
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
