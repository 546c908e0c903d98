#include "tackfree/evening/log_entry.hpp"

#include "tackfree/air/coating_limits.hpp"
#include "tackfree/air/psychrometrics.hpp"
#include "tackfree/base/name.hpp"
#include "tackfree/learning/thirst.hpp"
#include "tackfree/logged/log_facts.hpp"
#include "tackfree/operations/repairs.hpp"
#include "tackfree/plan/make_work_at_hand.hpp"
#include "tackfree/schedule/check_shop_rules.hpp"
#include "tackfree/schedule/done_work.hpp"
#include "tackfree/schedule/make_schedule.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The end of an operation's key, which tells it from others of its coat.
std::string_view tail_of(const Operation& op) {
  return std::string_view(op.key).substr(op.key.rfind('/') + 1);
}

bool goes_with_a_coat(const Operation& op) {
  return op.kind == OperationKind::dust_off || op.kind == OperationKind::wipe_off;
}

TooSoon too_soon(const Operation& work, std::optional<Stage> stage) {
  if (stage == Stage::handle || work.kind == OperationKind::turn_over) return TooSoon::turned;
  if (work.grit) return TooSoon::sanded;
  if (work.kind == OperationKind::fit_hardware) return TooSoon::hardware_fitted;
  const bool on_film =
      work.kind == OperationKind::repair || work.kind == OperationKind::finishing_touch;
  return on_film ? TooSoon::repaired : TooSoon::coated;
}

class Understanding {
 public:
  Understanding(const Report& report, Instant now, WorkAtHand standing, Problems& problems)
      : report_(report), now_(now), problems_(problems) {
    result_.standing = std::move(standing);
  }

  std::optional<UnderstoodReport> result() {
    const std::size_t before = problems_.size();
    LogEntry& entry = result_.entry;
    entry.kind = report_.kind;
    entry.written_at = now_;
    entry.at = report_.at;
    entry.note = report_.note;
    entry.corrects = report_.corrects;
    entry.corrects_line = report_.corrects_line;
    entry.temperature = report_.temperature;
    entry.humidity = report_.humidity;
    entry.test = report_.test;
    entry.passed = report_.passed;
    entry.fault = report_.fault;
    entry.tin = report_.tin;
    entry.amount = report_.amount;
    entry.insisted = report_.insists;
    if (report_.at > now_)
      problem("--at", local(report_.at), fmt::format("wanted a time up to now, {}", local(now_)));
    entry.bought = report_.bought;
    entry.hours = report_.hours;
    if (report_.kind == LogKind::tin && !report_.thinner.empty())
      thinner();
    else if (report_.kind == LogKind::tin || report_.kind == LogKind::waste)
      coating();
    if (report_.kind == LogKind::bought && entry.bought.empty())
      problem("bought-all", "", "wanted a plan with something to buy; all it takes is at hand");
    if (report_.kind == LogKind::away || report_.kind == LogKind::free) person();
    if (report_.kind == LogKind::coat || report_.kind == LogKind::done ||
        report_.kind == LogKind::skipped || report_.kind == LogKind::test ||
        report_.kind == LogKind::fault)
      of_a_step();
    if (problems_.size() > before) return std::nullopt;
    return std::move(result_);
  }

 private:
  const Job& job() const { return result_.standing.job; }
  const std::vector<Operation>& operations() const { return result_.standing.list.operations; }
  /// As it may be given to the command.
  std::string local(Instant at) const {
    const LocalTime time = job().calendar.zone.local(at);
    return fmt::format("{} {}", iso_date(time.on),
                       job().clock_form() == ClockForm::hours_12
                           ? clock_of_12_hours(time.minute_of_day)
                           : iso_clock(time.minute_of_day));
  }

  void problem(std::string key, std::string found, std::string wanted, std::string hint = {}) {
    problems_.push_back({.key = std::move(key),
                         .found = std::move(found),
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
  }

  void coating() {
    std::vector<std::string> names;
    for (const Coating& coating : job().coatings) names.push_back(coating.name);
    std::string& name = result_.entry.coating;
    name = report_.coating.empty() && names.size() == 1 ? names.front() : report_.coating;
    if (std::ranges::find(names, name) == names.end())
      problem("--coating", name, "wanted a coating of the job", name_hint(name, names));
  }

  void thinner() {
    const std::vector<std::string> names = liquids_of(job().coatings);
    result_.entry.thinner = report_.thinner;
    if (std::ranges::find(names, report_.thinner) == names.end())
      problem("--thinner", report_.thinner,
              "wanted what the job's coatings are thinned or cleaned with",
              name_hint(report_.thinner, names));
  }

  void person() {
    std::vector<std::string> names;
    for (const Person& each : job().people) names.push_back(each.name);
    result_.entry.person = report_.person;
    if (!report_.person.empty() && std::ranges::find(names, report_.person) == names.end())
      problem("--person", report_.person, "wanted one of the people of the job",
              name_hint(report_.person, names));
    if (report_.hours && report_.hours->end <= now_)
      problem("--until", local(report_.hours->end), "wanted hours that are still to come");
  }

  std::optional<std::size_t> batch() {
    std::vector<std::string> names;
    for (const Batch& batch : job().batches) names.push_back(batch.name);
    if (report_.batch.empty() && names.size() == 1) return 0;
    const auto found = std::ranges::find(names, report_.batch);
    if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
    problem("--batch", report_.batch, "wanted a batch of the job", name_hint(report_.batch, names));
    return std::nullopt;
  }

  /// Nothing where any side will do.
  std::optional<Side> side(const Batch& batch) {
    const std::string& word = report_.side;
    if (word.empty()) return std::nullopt;
    for (const Side each : {Side::back, Side::show, Side::both})
      if (word == word_for(each)) return each;
    if (word == "top" || word == "bottom")
      return (word == "bottom") == batch.show_side_is_bottom ? Side::show : Side::back;
    const std::vector<std::string> known{"back", "show", "both", "top", "bottom"};
    problem("--side", word, "wanted a side", name_hint(word, known));
    return std::nullopt;
  }

  bool is_meant(const Operation& op, std::optional<Side> side) const {
    const bool of_coat =
        report_.kind != LogKind::done &&
        (report_.kind != LogKind::skipped || report_.step.empty() || report_.step == "coat");
    if (of_coat != (op.kind == OperationKind::coat) || goes_with_a_coat(op)) return false;
    if (report_.coat && op.coat != *report_.coat) return false;
    if (side && of_coat && op.side != *side) return false;
    return of_coat || report_.step.empty() || report_.step == tail_of(op) || report_.step == op.key;
  }

  /// The next one that is not done; of trials and faults the last one that is.
  void of_a_step() {
    const auto of_batch = batch();
    if (!of_batch) return;
    const std::size_t before = problems_.size();
    const auto of_side = side(job().batches[*of_batch]);
    if (problems_.size() > before) return;
    const bool of_done = report_.kind == LogKind::test || report_.kind == LogKind::fault;
    std::optional<std::size_t> done;
    for (std::size_t i = 0; i < operations().size(); ++i) {
      const Operation& op = operations()[i];
      if (op.batch != *of_batch || !is_meant(op, of_side)) continue;
      const bool is_done = op.done && op.done->logged;
      if (is_done && !op.skipped()) done = i;
      if (!of_done && !is_done && !result_.operation) result_.operation = i;
    }
    if (of_done) result_.operation = done;
    if (!result_.operation) return nothing_meant(*of_batch, done);
    result_.entry.step = operations()[*result_.operation].key;
    if (report_.fault) repair(operations()[*result_.operation]);
    if (!of_done) work();
  }

  void nothing_meant(std::size_t of_batch, std::optional<std::size_t> done) {
    const Batch& batch = job().batches[of_batch];
    if (report_.kind == LogKind::test || report_.kind == LogKind::fault)
      return problem("--coat", report_.coat ? fmt::to_string(*report_.coat) : "",
                     fmt::format("wanted a coat of \"{}\" that is on, by the log", batch.name),
                     "log the coat first");
    if (done && (report_.coat || report_.kind == LogKind::done)) {
      for (const LogEntry& entry : job().history.entries)
        if (entry.step == operations()[*done].key)
          return problem(
              "--batch", batch.name,
              fmt::format("wanted work that is not done; number {} of the log has this", entry.id),
              fmt::format("to put that line right, add --corrects {}", entry.id));
    }
    std::vector<std::string> open;
    for (const Operation& op : operations())
      if (op.batch == of_batch && !op.done && op.kind != OperationKind::coat &&
          !goes_with_a_coat(op))
        if (std::string tail(tail_of(op)); std::ranges::find(open, tail) == open.end())
          open.push_back(std::move(tail));
    if (report_.kind == LogKind::coat || open.empty())
      return problem("--batch", batch.name,
                     report_.kind == LogKind::coat ? "wanted a batch with that coat still to come"
                                                   : "wanted a batch with such work still to do");
    problem("--step", report_.step, fmt::format("wanted work of \"{}\" still to do", batch.name),
            name_hint(report_.step, open));
  }

  void work() {
    const Operation& op = operations()[*result_.operation];
    LogEntry& entry = result_.entry;
    entry.began_at = report_.began_at;
    if (entry.began_at && *entry.began_at > entry.at)
      problem("--from", local(*entry.began_at), "wanted a time before the work was done");
    std::size_t first = *result_.operation;
    while (operations()[first].right_after) --first;
    const std::vector<DryingClock> clocks = drying_clocks(job(), result_.standing.air);
    for (std::size_t i = first; i <= *result_.operation; ++i)
      for (const Wait& wait : operations()[i].waits) waited(wait, clocks);
    if (report_.kind == LogKind::skipped) return;
    if (op.grit) dust_beside_wet(op, clocks);
    if (!op.coating) return;
    fit_air(op);
    usual_amount(op);
  }

  /// It has happened; the coat that took the dust is named.
  void dust_beside_wet(const Operation& sanding, const std::vector<DryingClock>& clocks) {
    for (const Operation& coat : operations()) {
      if (!coat.done || !coat.coating || coat.skipped() || coat.batch == sanding.batch ||
          in_other_rooms(job(), coat.batch, sanding.batch))
        continue;
      const auto dry = done_reaches(job(), coat, clocks.at(*coat.coating), Stage::dust_free);
      if (coat.done->time.end >= report_.at || (dry && *dry <= report_.at - length())) continue;
      result_.consequences.emplace_back(
          DustInCoat{static_cast<std::size_t>(&coat - operations().data())});
    }
  }

  /// What would not count for the person's rate is asked about at once.
  void usual_amount(const Operation& op) {
    if (!report_.amount || op.mixed <= Volume()) return;
    const double learnt = result_.standing.thirst.at(*op.coating).factor;
    std::vector<CoatPutOn> with = result_.standing.lessons.coats;
    with.push_back({job().coatings.at(*op.coating).name, report_.at, op.mixed / learnt,
                    *report_.amount, report_.insists});
    if (learnt_thirst(job(), with).at(*op.coating).asked_of.size() ==
        result_.standing.thirst.at(*op.coating).asked_of.size())
      return;
    result_.consequences.emplace_back(FarFromExpected{*report_.amount / op.mixed});
  }

  /// From the begin that was told, else from the end by the usual pace.
  Minutes length() const {
    if (result_.entry.began_at) return report_.at - *result_.entry.began_at;
    if (report_.kind == LogKind::skipped) return Minutes(0);
    return whole_minutes_up(operations()[*result_.operation].work);
  }

  void waited(const Wait& wait, const std::vector<DryingClock>& clocks) {
    const Operation& before = operations()[wait.operation];
    const Instant began = report_.at - length();
    const std::string title =
        before.coating ? fmt::format("coat {} ({}){}", before.coat, word_for(before.side),
                                     wait.films > 1 ? ", where it is twice as thick," : "")
                       : std::string(word_for(before.kind));
    if (!before.done) {
      const std::string wanted = fmt::format("wanted {} in the log first", title);
      // What is left out counts as what came before it done, so nobody may insist.
      if (before.kind == OperationKind::coat && report_.kind == LogKind::skipped)
        return problem("--step", report_.step, wanted, "leave it out when its turn has come");
      if (before.kind == OperationKind::coat) return forbid("--coat", "", wanted, std::nullopt);
      // Taken as done in time; what it waits for is not.
      for (const Wait& earlier : before.waits)
        if (operations()[earlier.operation].batch == before.batch) waited(earlier, clocks);
      return;
    }
    if (report_.kind == LogKind::skipped) return;
    // Sanding, turning and the like are taken as done in time; drying is not.
    if (before.done->time.end > began && before.done->logged && !wait.stage)
      return problem(
          "--at", local(report_.at),
          fmt::format("wanted a time after {} was done, {}", title, local(before.done->time.end)));
    if (!wait.stage && !wait.dry_for && !wait.next_day) return;
    const auto over = done_wait_over(job(), result_.standing.list, clocks, wait);
    if (over && *over <= began) return;
    const bool told = result_.entry.began_at.has_value();
    forbid(told ? "--from" : "--at", local(told ? began : report_.at),
           over ? fmt::format("wanted a time from {} on: {} {}",
                              local(told ? *over : *over + length()),
                              wait.next_day ? "it is one coat too many for the day of" : title,
                              wait.next_day ? title : "is not dry enough before " + local(*over))
                : fmt::format("{} is not dry enough within the plan", title),
           too_soon(operations()[*result_.operation], wait.stage));
  }

  /// A rule that the person may insist against.
  void forbid(const std::string& key, const std::string& found, const std::string& wanted,
              std::optional<TooSoon> consequence) {
    const auto known = std::ranges::any_of(problems_, [&](const Problem& p) {
      return p.key == key && p.found == found && p.wanted == wanted;
    });
    if (known) return;
    if (!report_.insists)
      return problem(key, found, wanted,
                     fmt::format("{}if it was so all the same, add --insist",
                                 consequence ? fmt::format("{}; ", words_for(*consequence)) : ""));
    auto& told = result_.consequences;
    if (consequence && std::ranges::find(told, Consequence(*consequence)) == told.end())
      told.emplace_back(*consequence);
  }

  void repair(const Operation& coat) {
    result_.consequences.emplace_back(
        RepairAdvice{repair_advice(job(), job().coatings.at(*coat.coating), *report_.fault)});
  }

  void fit_air(const Operation& op) {
    const AirSeries& air = result_.standing.air;
    AirState state = air.at(report_.at);
    if (report_.temperature) {
      const Humidity humidity = relative_humidity(state.temperature, state.vapour);
      state = {*report_.temperature,
               vapour_pressure(*report_.temperature, report_.humidity.value_or(humidity))};
    }
    const CoatingLimits& limits = job().coatings.at(*op.coating).limits;
    if (const auto gate = put_on_gate(limits, state))
      result_.consequences.emplace_back(CoatedInUnfitAir{*gate});
  }

  const Report& report_;
  Instant now_;
  Problems& problems_;
  UnderstoodReport result_;
};

}  // namespace

std::string_view words_for(TooSoon too_soon) {
  switch (too_soon) {
    case TooSoon::turned:
      return "a side that is not dry to handle may stick to what it rests on and print";
    case TooSoon::sanded:
      return "a film that is not dry to sand rolls up under the paper, clogs it and tears";
    case TooSoon::hardware_fitted:
      return "a film that is not hard enough prints under the hardware and sticks to it";
    case TooSoon::repaired:
      return "a film that is still soft is marked by working on it";
    case TooSoon::coated:
      break;
  }
  return "the coat below dries more slowly under the new one: the film stays soft for longer, may "
         "wrinkle, and can craze later";
}

std::optional<UnderstoodReport> understood(Job job, const Report& report, Instant now,
                                           Problems& problems) {
  History& history = job.history;
  if (report.corrects &&
      std::erase_if(history.entries, [&](const LogEntry& e) { return e.id == *report.corrects; }) +
              std::erase_if(history.left_out,
                            [&](const LeftOutLine& l) { return l.id == *report.corrects; }) ==
          0)
    problems.push_back({.key = "--corrects",
                        .found = fmt::to_string(*report.corrects),
                        .wanted = "wanted the number of a line of the log that still counts"});
  if (report.corrects_line && std::erase_if(history.left_out, [&](const LeftOutLine& l) {
                                return l.line == *report.corrects_line && l.id == 0;
                              }) == 0)
    problems.push_back({.key = "--line",
                        .found = fmt::to_string(*report.corrects_line),
                        .wanted = "wanted a line of the log that cannot be read and has no number",
                        .hint = "withdraw others by their number"});
  auto standing = make_work_at_hand(job, now, problems);
  if (!standing) return std::nullopt;
  return Understanding(report, now, std::move(*standing), problems).result();
}

}  // namespace tackfree
