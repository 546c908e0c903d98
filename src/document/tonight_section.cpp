#include "tackfree/document/tonight_section.hpp"

#include "tackfree/base/shell_word.hpp"
#include "tackfree/document/dead_end_section.hpp"
#include "tackfree/document/fumes_section.hpp"
#include "tackfree/document/tonight_work.hpp"
#include "tackfree/document/unlogged_section.hpp"
#include "tackfree/document/wait_section.hpp"
#include "tackfree/words/air_words.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/short_warnings.hpp"
#include "tackfree/words/step_words.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// Minutes after midnight between which one says "today" and not "tonight".
constexpr int morning = 5 * 60, evening = 17 * 60;

class Answer {
 public:
  Answer(Page& page, const Plan& plan, const Tonight& tonight)
      : page_(page), plan_(plan), tonight_(tonight), words_(plan), figures_(words_.figures()) {}

  void write() {
    head();
    write_stop(page_, plan_);
    write_questions(page_, plan_, tonight_.unlogged, words_);
    off();
    work();
    if (tonight_.work.empty()) write_dead_end(page_, plan_, plan_.remedies, words_);
    write_running_clocks(page_, plan_, tonight_, words_);
    air();
    dust();
    waits();
    write_open_faults(page_, plan_, tonight_, words_);
    use();
    airing();
    then();
    if (!tonight_.work.empty()) write_dead_end(page_, plan_, plan_.remedies, words_);
    put_away();
    rags();
    page_.paragraph(Lead::plain(), plan_.job.data.texts.deference);
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
    if (!tonight_.read_at) return ", " + record_words(plan_.job.air);
    const Minutes ago = plan_.now - *tonight_.read_at;
    if (ago <= plan_.job.grid) return ", as read";
    return fmt::format(", by your reading {} ago", duration_text(to_duration(ago)));
  }

  void head() {
    page_.paragraph(Lead::plain(), fmt::format("{}: {}. The {} has {} and {}{}.", plan_.job.name,
                                               figures_.moment(plan_.now), room(),
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
    if (!tonight_.today) return another_day();
    const std::string length = duration_text(to_duration(tonight_.stretch.length()));
    const std::string until = figures_.clock(tonight_.stretch.end);
    if (begin - plan_.now > one_hour)
      page_.paragraph(Lead::labelled("Do", answer_columns),
                      fmt::format("nothing before {}, {}; then {} of work, until {}.",
                                  figures_.clock(begin), in(begin), length, until));
    else
      page_.paragraph(
          Lead::labelled("Do", answer_columns),
          fmt::format("{}: {} of work, until {}.",
                      begin > plan_.now ? fmt::format("at {}, {}", figures_.clock(begin), in(begin))
                                        : "now",
                      length, until));
    write_tonight_work(page_, plan_, tonight_, words_);
  }

  /// All steps are done, or none of what is left has a time.
  void no_work_left() {
    const auto& ready = plan_.schedule.ready_at;
    std::string text = "nothing is left to do.";
    if (!plan_.schedule.unplaced.empty())
      text = "nothing that has a time.";
    else if (ready && *ready > plan_.now)
      text = fmt::format(
          "nothing: all the work is done, it only needs time. Ready for light use {}, {}.",
          when(figures_.full_hour_up(*ready)), in(*ready));
    page_.paragraph(Lead::labelled("Do", answer_columns), text);
  }

  void another_day() {
    const Instant begin = tonight_.stretch.begin;
    const DatedStep& first = step(tonight_.work.front());
    page_.paragraph(
        Lead::labelled("Do", answer_columns),
        fmt::format("{}. Next, {} at {}, {}: {}; {} of work in all{}.", nothing(),
                    figures_.day_seen_from(plan_.now, begin), figures_.clock(begin), in(begin),
                    title_of(tonight_.work.front()),
                    duration_text(to_duration(tonight_.stretch.length())), coats_of_stretch()));
    if (const std::string why = why_later(first); !why.empty())
      page_.paragraph(Lead::plain(answer_columns + 1), fmt::format("Why not sooner? {}", why));
  }

  /// The coats of the stretch but one that it begins with.
  std::string coats_of_stretch() const {
    std::vector<std::string> titles;
    for (const std::size_t index : tonight_.work)
      if (operation(index).coating && &operation(index) != &chief_of(tonight_.work.front()))
        titles.push_back(words_.full_title(operation(index)));
    return titles.empty() ? "" : fmt::format(", with {}", fmt::join(titles, "; "));
  }

  /// Nothing where a line on what its batch waits for says it.
  std::string why_later(const DatedStep& first) const {
    if (first.held.empty()) return {};
    const HeldBy by = first.held.back().by;
    const std::size_t batch = plan_.list.operations.at(first.operation).batch;
    const bool told = std::ranges::any_of(tonight_.waits, [&](const BatchWait& wait) {
      return plan_.list.operations.at(wait.operation).batch == batch && !wait.is_over(plan_.now);
    });
    if (told && by != HeldBy::air) return {};
    std::string why = words_.why(first);
    return why.empty() && by == HeldBy::calendar ? "These are your next working hours." : why;
  }

  /// Every rule that fails; each with its own hour where it is kept before all of them are.
  std::string rules_against(const AirNow& air, const Coating& coating) const {
    std::vector<std::string> rules;
    for (const GateAt& each : air.failing) {
      const bool sooner = each.opens && each.opens != air.changes;
      std::string rule = words_.rule_with_origin(each.gate, coating);
      if (each.gate == Gate::dew && air.dew_at)
        rule = fmt::format("before the coat is dry to touch, at {}, the air gets {}",
                           when(*air.dew_at), rule);
      else if (sooner)
        rule += fmt::format(" until {}", when(*each.opens));
      rules.push_back(std::move(rule));
    }
    return fmt::format("{}", fmt::join(rules, "; "));
  }

  void air() {
    if (!tonight_.air) return;
    const AirNow& air = *tonight_.air;
    const Coating& coating = plan_.job.coatings.at(air.coating);
    const std::string name = cut_to(longest_name, coating.name);
    if (!air.failing.empty()) {
      page_.paragraph(
          Lead::labelled("Don't", answer_columns),
          fmt::format("coat with {} in this air: {}. {}", name, rules_against(air, coating),
                      air.changes ? fmt::format("It is fit again {}, {}.", when(*air.changes),
                                                in(*air.changes))
                                  : "It does not get fit within two weeks."));
      return;
    }
    // What ends in days says nothing of tonight.
    const bool ends_soon = air.changes && *air.changes - plan_.now < 2 * one_day;
    page_.paragraph(Lead::labelled("Air", answer_columns),
                    ends_soon ? fmt::format("fit for {}, for a coat begun before {}; then {}.",
                                            name, when(*air.changes),
                                            words_.rule_with_origin(*air.closes_by, coating))
                              : fmt::format("fit for {} now.", name));
  }

  /// What must be off now, or before the tin of the next stretch of work today is opened: before
  /// the work itself, as it comes before it.
  void off() {
    if (!has_ignition_source(plan_.job)) return;
    const FlammableTime* last = nullptr;
    for (const FlammableTime& flammable : plan_.flammable) {
      const bool on = flammable.time.begin <= plan_.now && plan_.now < flammable.time.end;
      const bool next = tonight_.today && std::ranges::find(tonight_.work, flammable.first_step) !=
                                              tonight_.work.end();
      if (on || next) last = &flammable;
    }
    if (last != nullptr)
      page_.paragraph(Lead::labelled("Off", answer_columns), off_words(plan_, *last));
  }

  bool is_one_room() const { return plan_.job.rooms.size() < 2; }
  std::string room() const { return plan_.job.room.name.empty() ? "room" : plan_.job.room.name; }

  void dust() {
    if (!tonight_.dust_free_at) return;
    page_.paragraph(Lead::labelled("Don't", answer_columns),
                    fmt::format("sand or sweep {} before {}: wet boards take the dust.",
                                is_one_room() ? "in the " + room() : "beside wet boards",
                                when(*tonight_.dust_free_at)));
  }

  /// Of sanding that waits for nothing but the dust rule, the line on the room tells.
  void waits() {
    std::vector<BatchWait> told = tonight_.waits;
    if (tonight_.dust_free_at && is_one_room())
      std::erase_if(told, [&](const BatchWait& wait) {
        return wait.by == HeldBy::dust && plan_.list.operations.at(wait.operation).grit;
      });
    write_batch_waits(page_, plan_, told, words_);
  }

  /// What the finished batches bear; batches of which the same is to be said share a line.
  void use() {
    std::vector<std::pair<std::string, std::string>> lines;
    for (const BatchUse& use : tonight_.uses) {
      const std::string name = cut_inside(longest_name, plan_.job.batches.at(use.batch).name);
      const std::string text = use_words(use);
      const auto alike =
          std::ranges::find(lines, text, &std::pair<std::string, std::string>::second);
      if (alike == lines.end())
        lines.emplace_back(name, text);
      else
        alike->first.append(", ").append(name);
    }
    for (const auto& [names, text] : lines)
      page_.paragraph(Lead::labelled("Use", answer_columns), fmt::format("{}: {}", names, text));
  }

  std::string use_words(const BatchUse& use) const {
    const Instant now = plan_.now;
    if (use.full_cure && *use.full_cure <= now)
      return fmt::format("fully cured since {}: it may be used, loaded and washed.",
                         figures_.day(*use.full_cure));
    std::string text = "no light use within this plan.";
    if (use.light_use)
      text = *use.light_use <= now
                 ? fmt::format("light use since {}", figures_.moment(*use.light_use))
                 : fmt::format("light use from {} ({})",
                               figures_.moment(figures_.full_hour_up(*use.light_use)),
                               in(*use.light_use));
    if (!use.light_use) return text;
    return fmt::format("{}: nothing wet, hot or heavy. {}", text,
                       use.full_cure
                           ? fmt::format("Load and wash it from {}, when it is fully cured.",
                                         figures_.day(*use.full_cure))
                           : fmt::format("It is not fully cured before {}.",
                                         figures_.day(plan_.schedule.span.end)));
  }

  void airing() {
    const AiringNow& airing = tonight_.airing;
    const std::string text = airing_advice(plan_, airing.spans, airing.proposed, figures_);
    if (!text.empty()) page_.paragraph(Lead::labelled("Airing", answer_columns), text + ".");
  }

  void then() {
    if (!tonight_.then) {
      if (plan_.schedule.ready_at && !tonight_.work.empty())
        page_.paragraph(
            Lead::labelled("Then", answer_columns),
            fmt::format("that was the last work. Ready {} for light use.",
                        figures_.moment(figures_.full_hour_up(*plan_.schedule.ready_at))));
      return;
    }
    const DatedStep& next = step(*tonight_.then);
    const bool dusts_off = &chief_of(*tonight_.then) != &operation(*tonight_.then);
    std::string pour = is_today(next.begin()) ? words_.pour(chief_of(*tonight_.then)) : "";
    if (!pour.empty()) pour = ", pour " + pour;
    page_.paragraph(
        Lead::labelled("Then", answer_columns),
        fmt::format("{}, {}: {}{}{}.", figures_.moment(tonight_.then_at), in(tonight_.then_at),
                    dusts_off ? "dust off, then " : "", title_of(*tonight_.then), pour));
  }

  /// The coat, of its dusting off; else the step itself.
  const Operation& chief_of(std::size_t index) const {
    const Operation& op = operation(index);
    const std::size_t next = step(index).operation + 1;
    const bool dusts_off = op.kind == OperationKind::dust_off &&
                           next < plan_.list.operations.size() &&
                           plan_.list.operations[next].right_after;
    return dusts_off ? plan_.list.operations[next] : op;
  }

  std::string title_of(std::size_t index) const { return words_.full_title(chief_of(index)); }

  /// A coating with the way it is put on.
  using CoatedBy = std::pair<std::size_t, std::size_t>;

  /// Of the coats of this stretch, and of those just put on.
  std::set<CoatedBy> sessions() const {
    std::set<CoatedBy> all;
    const auto add = [&](const Operation& op) {
      if (op.coating && op.method) all.insert({*op.coating, *op.method});
    };
    if (tonight_.today)
      for (const std::size_t index : tonight_.work) add(operation(index));
    for (const Operation& op : plan_.list.operations)
      if (op.done && !op.skipped() && plan_.now - op.done->time.end < one_hour) add(op);
    return all;
  }

  void put_away() {
    for (const auto& [coating, method] : sessions())
      page_.paragraph(Lead::labelled("After", answer_columns),
                      clean_up(plan_.job.coatings.at(coating), plan_.job.data.methods.at(method)));
  }

  static std::string clean_up(const Coating& coating, const Method& method) {
    if (method.sprayed)
      return fmt::format("clean the spray gun with {}, and shut the tin.", coating.words.cleaner);
    if (!method.applicator_each_session)
      return fmt::format("wash the {} with {}, and shut the tin.", method.applicator,
                         coating.words.cleaner);
    const std::string used = method.applicator.substr(0, method.applicator.find(" to "));
    return fmt::format("shut the tin. The used {} {}.", used,
                       coating.dries_by_oxidation ? "count as oily rags" : "are for the bin");
  }

  /// Out until the log has them dealt with; then a reminder until noon of the next day.
  void rags() {
    const OilyRags& rags = tonight_.rags;
    const bool to_come =
        tonight_.today && std::ranges::any_of(tonight_.work, [&](std::size_t index) {
          return leaves_oily_rags(plan_.job, plan_.list, operation(index));
        });
    if (rags.out_since || to_come) {
      page_.paragraph(
          Lead::labelled("Rags", answer_columns),
          fmt::format(
              "{}oily rags, cloths and sanding dust heat themselves and can catch fire hours "
              "later. {} Then `tackfree log rags {}`.",
              rags.out_since ? fmt::format("out since {}: ", when(*rags.out_since)) : "",
              rags_remedy(plan_), shell_word(plan_.job.file)));
      return;
    }
    if (!rags.dealt_with) return;
    const Zone& zone = figures_.zone();
    const Instant noon = zone.instant({next_day(zone.local(*rags.dealt_with).on), 12 * 60});
    if (plan_.now < noon)
      page_.paragraph(Lead::labelled("Rags", answer_columns),
                      fmt::format("dealt with {}. Look once more: none may be warm or smell hot.",
                                  when(*rags.dealt_with)));
  }

  Page& page_;
  const Plan& plan_;
  const Tonight& tonight_;
  StepWords words_;
  const Figures& figures_;
};

}  // namespace

void write_tonight(Page& page, const Plan& plan, const Tonight& tonight) {
  Answer(page, plan, tonight).write();
}

}  // namespace tackfree
