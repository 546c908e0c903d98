#include "tackfree/logged/log_facts.hpp"

#include "tackfree/base/name.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

bool is_of_work(LogKind kind) {
  return kind == LogKind::coat || kind == LogKind::done || kind == LogKind::skipped;
}

/// The work with what is exactly before and after it, as one stretch.
struct Stretch {
  std::size_t first, last;
};

Stretch stretch_of(const OperationList& list, std::size_t operation) {
  Stretch stretch{operation, operation};
  while (list.operations[stretch.first].right_after) --stretch.first;
  while (stretch.last + 1 < list.operations.size() && list.operations[stretch.last + 1].right_after)
    ++stretch.last;
  return stretch;
}

using Places = std::map<std::string_view, std::size_t>;

/// Where operations stand in the list, by their keys.
Places places_in(const OperationList& list) {
  Places places;
  for (std::size_t i = 0; i < list.operations.size(); ++i) places[list.operations[i].key] = i;
  return places;
}

/// Marks what is done, of what the log says and of what came before it.
class Marking {
 public:
  Marking(OperationList& list, const LogFacts& facts) : list_(list), facts_(facts) {}

  void mark() {
    const Places places = places_in(list_);
    for (const auto& [key, entry] : facts_.work)
      if (const auto found = places.find(key); found != places.end())
        mark_logged(found->second, entry);
    for (std::size_t i = 0; i < list_.operations.size(); ++i)
      if (list_.operations[i].done) begin_after_what_came_before(i);
    for (std::size_t i = list_.operations.size(); i-- > 0;)
      if (list_.operations[i].done) mark_what_came_before(i);
    pass_over_skipped();
  }

 private:
  void mark_logged(std::size_t index, const LogEntry& entry) {
    Operation& op = list_.operations[index];
    // What goes with a coat is done when the coat is.
    const bool alone = !op.right_after && stretch_of(list_, index).last == index;
    if (op.kind != OperationKind::coat && !alone) return;
    if (op.kind == OperationKind::dust_off || op.kind == OperationKind::wipe_off) return;
    const bool skipped = entry.kind == LogKind::skipped;
    const Minutes length = skipped ? Minutes(0) : whole_minutes_up(op.work);
    const Instant began = skipped ? entry.at : entry.began_at.value_or(entry.at - length);
    op.done = Done{.time = {began, entry.at}, .skipped = skipped, .insisted = entry.insisted};
  }

  /// At the earliest hour by which it must have been done.
  void mark_unlogged(std::size_t operation, Instant at) {
    auto& done = list_.operations[operation].done;
    if (!done || (!done->logged && at < done->time.end))
      done = Done{.time = {at, at}, .logged = false};
  }

  /// Who was quicker than usual had not begun before what is below was done.
  void begin_after_what_came_before(std::size_t index) {
    Interval& time = list_.operations[index].done->time;
    for (std::size_t i = stretch_of(list_, index).first; i <= index; ++i)
      for (const Wait& wait : list_.operations[i].waits) {
        const Operation& before = list_.operations[wait.operation];
        if (before.batch == list_.operations[index].batch && before.done &&
            before.done->time.end <= time.end)
          time.begin = std::max(time.begin, before.done->time.end);
      }
  }

  void mark_what_came_before(std::size_t index) {
    const Interval time = list_.operations[index].done->time;
    const Stretch stretch = stretch_of(list_, index);
    for (std::size_t i = stretch.first; i < index; ++i) mark_unlogged(i, time.begin);
    for (std::size_t i = index + 1; i <= stretch.last; ++i) mark_unlogged(i, time.end);
    for (std::size_t i = stretch.first; i <= index; ++i)
      for (const Wait& wait : list_.operations[i].waits)
        if (list_.operations[wait.operation].batch == list_.operations[index].batch)
          mark_unlogged(wait.operation, time.begin);
  }

  /// The coat that a skipped one would have gone on; nothing where that is the bare wood.
  std::optional<std::size_t> lies_below(std::size_t skipped) const {
    int washed_off = 0;
    for (std::size_t below = skipped; below-- > 0;) {
      const Operation& op = list_.operations[below];
      if (op.batch != list_.operations[skipped].batch || op.side != list_.operations[skipped].side)
        continue;
      if (op.skipped()) continue;
      if (op.takes_off) ++washed_off;
      if (op.coating && washed_off-- <= 0) return below;
    }
    return std::nullopt;
  }

  /// What would have waited for a skipped coat waits for the one below it: by the same stage, or as
  /// long as a pair of classes asks where the one below is of the same.
  void pass_over_skipped() {
    const auto& operations = list_.operations;
    for (Operation& op : list_.operations)
      for (Wait& wait : op.waits) {
        const Operation& before = operations[wait.operation];
        if (!before.coating || !before.skipped()) continue;
        const auto below = lies_below(wait.operation);
        if (below && (wait.stage || (wait.dry_for && operations[*below].step == before.step)))
          wait.operation = *below;
      }
    for (Outcome& outcome : list_.outcomes)
      for (std::size_t& coat : outcome.coats)
        if (operations[coat].skipped()) coat = lies_below(coat).value_or(coat);
  }

  OperationList& list_;
  const LogFacts& facts_;
};

/// Goes through the lines of the log and takes those that fit.
class Fitting {
 public:
  Fitting(const OperationList& list, const Job& job, Instant now)
      : list_(list), job_(job), now_(now), places_(places_in(list)) {}

  LogFacts facts() {
    for (const LogEntry& entry : job_.history.entries) {
      if (entry.at > now_) {
        report(entry, "at", iso_local(entry.at, job_.calendar.zone),
               fmt::format("wanted a time up to now, {}", iso_local(now_, job_.calendar.zone)),
               "plan as of a later time: --now");
        continue;
      }
      if (!entry.step.empty()) take(entry);
      know(entry);
    }
    check_order();
    for (auto& [line, misfit] : misfits_) facts_.misfits.push_back(std::move(misfit));
    return std::move(facts_);
  }

 private:
  void report(const LogEntry& entry, std::string key, std::string found, std::string wanted,
              std::string hint = {}) {
    LeftOutLine& misfit = misfits_[entry.line];
    misfit.line = entry.line;
    misfit.id = entry.id;
    misfit.why.push_back({.file = job_.history.file,
                          .line = entry.line,
                          .key = std::move(key),
                          .found = std::move(found),
                          .wanted = std::move(wanted),
                          .hint = std::move(hint)});
  }

  void know(const LogEntry& entry) {
    if (!entry.coating.empty()) know_coating(entry, entry.coating);
    if (!entry.thinner.empty()) know_thinner(entry, entry.thinner);
    for (const BoughtTins& tins : entry.bought)
      tins.thinner ? know_thinner(entry, tins.product) : know_coating(entry, tins.product);
    if (entry.person.empty() || find_named(job_.people, entry.person) != nullptr) return;
    std::vector<std::string> names;
    for (const Person& person : job_.people) names.push_back(person.name);
    report(entry, "person", entry.person, "wanted one of the people of the job",
           name_hint(entry.person, names));
  }

  void know_coating(const LogEntry& entry, const std::string& name) {
    if (find_named(job_.coatings, name) != nullptr) return;
    std::vector<std::string> names;
    for (const Coating& coating : job_.coatings) names.push_back(coating.name);
    report(entry, "coating", name, "wanted a coating of the job", name_hint(name, names));
  }

  void know_thinner(const LogEntry& entry, const std::string& name) {
    const std::vector<std::string> names = liquids_of(job_.coatings);
    if (std::ranges::find(names, name) == names.end())
      report(entry, "thinner", name, "wanted what the job's coatings are thinned or cleaned with",
             name_hint(name, names));
  }

  void unknown(const LogEntry& entry) {
    std::vector<std::string> keys;
    for (const Operation& op : list_.operations) keys.push_back(op.key);
    const auto near = nearest_name(entry.step, keys);
    report(entry, "step", entry.step, "wanted a step of the job's plan",
           near ? fmt::format("did you mean \"{}\"?", *near) : "");
  }

  void take(const LogEntry& entry) {
    const auto place = places_.find(entry.step);
    if (place == places_.end()) return unknown(entry);
    const Operation& op = list_.operations[place->second];
    const bool is_coat = op.kind == OperationKind::coat;
    if (entry.kind != LogKind::done && entry.kind != LogKind::skipped && !is_coat)
      return report(entry, "step", entry.step, "wanted the step of a coat");
    if (entry.kind == LogKind::done && is_coat)
      return report(entry, "kind", "done", "wanted \"coat\" for a coat");
    if (!is_of_work(entry.kind)) return;
    const auto [other, is_first] = facts_.work.try_emplace(entry.step, entry);
    if (!is_first)
      report(entry, "step", entry.step,
             fmt::format("wanted a step that is not done yet; line {} has it", other->second.line),
             fmt::format("to correct that line, add \"corrects\": {}", other->second.id));
  }

  const LogEntry* line_of(std::size_t operation) const {
    const std::string& key = list_.operations[operation].key;
    const auto found = facts_.work.find(key);
    return found == facts_.work.end() || places_.at(key) != operation ? nullptr : &found->second;
  }

  void check_order() {
    OperationList marked = list_;
    Marking(marked, facts_).mark();
    for (std::size_t i = 0; i < list_.operations.size(); ++i) {
      const LogEntry* entry = line_of(i);
      if (entry == nullptr || !marked.operations[i].done) continue;
      for (const LogEntry* before : logged_before(i))
        if (before->at > entry->at)
          report(*entry, "at", iso_local(entry->at, job_.calendar.zone),
                 fmt::format("wanted a time after that of line {}, which comes before it",
                             before->line));
    }
  }

  /// The lines of what the operation waits for; where there is none, of what that waits for in its
  /// batch, for it was done in time.
  std::vector<const LogEntry*> logged_before(std::size_t operation) const {
    std::vector<const LogEntry*> lines;
    std::vector<std::size_t> open{operation};
    std::set<std::size_t> seen;
    for (std::size_t next = 0; next < open.size(); ++next)
      for (const Wait& wait : list_.operations[open[next]].waits) {
        const std::size_t before = wait.operation;
        if (!seen.insert(before).second) continue;
        if (const LogEntry* line = line_of(before))
          lines.push_back(line);
        else if (list_.operations[before].batch == list_.operations[operation].batch)
          open.push_back(before);
      }
    return lines;
  }

  const OperationList& list_;
  const Job& job_;
  Instant now_;
  Places places_;
  LogFacts facts_;
  std::map<int, LeftOutLine> misfits_;  ///< by line
};

}  // namespace

std::vector<AirReading> readings_in_log(const History& history) {
  std::vector<AirReading> readings;
  for (const LogEntry& entry : history.entries)
    if (entry.temperature) readings.push_back({entry.at, *entry.temperature, entry.humidity});
  return readings;
}

std::optional<Instant> first_coat_at(const History& history) {
  std::optional<Instant> first;
  for (const LogEntry& entry : history.entries)
    if (entry.kind == LogKind::coat) first = std::min(first.value_or(entry.at), entry.at);
  return first;
}

const Operation* operation_called(const OperationList& list, std::string_view key) {
  const auto found = std::ranges::find(list.operations, key, &Operation::key);
  return found == list.operations.end() ? nullptr : &*found;
}

namespace {

/// `sand-p240-again` is before a coat that is put on once more, `sand-p240-again-2` before the
/// next.
int times_again(const std::string& key) {
  constexpr std::string_view word = "-again";
  const std::size_t found = key.rfind(word);
  if (found == std::string::npos) return 0;
  return std::max(1, std::atoi(key.c_str() + std::min(key.size(), found + word.size() + 1)));
}

}  // namespace

KeyedCoats sanded_by_log(const Job& job) {
  KeyedCoats sanded;
  for (const LogEntry& entry : job.history.entries) {
    if (entry.kind != LogKind::done || entry.step.find("/sand-p") == std::string::npos) continue;
    for (std::size_t batch = 0; batch < job.batches.size(); ++batch) {
      const FinishSystem* system = find_named(job.systems, job.batches[batch].system);
      if (system == nullptr) continue;
      for (std::size_t step = 0; step < system->steps.size(); ++step) {
        const std::string head = fmt::format("{}/{}/coat-", slug(job.batches[batch].name),
                                             slug(system->steps[step].name));
        if (!entry.step.starts_with(head)) continue;
        const int coat = std::atoi(entry.step.c_str() + head.size());
        if (coat > 0) sanded.insert({batch, step, coat, times_again(entry.step)});
      }
    }
  }
  return sanded;
}

LogFacts log_facts(const OperationList& list, const Job& job, Instant now) {
  return Fitting(list, job, now).facts();
}

void mark_done(OperationList& list, const LogFacts& facts) { Marking(list, facts).mark(); }

}  // namespace tackfree
