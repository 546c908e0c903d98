#include "tackfree/schedule/check_shop_rules.hpp"

#include "tackfree/schedule/busy_hours.hpp"
#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr Minutes minute{1};

const WorkCalendar& calendar_of(const Job& job, std::size_t person) {
  return job.people.empty() ? job.calendar : job.people.at(person).hours;
}

/// Are weekly or added hours open at this minute?
bool has_hours(const WorkCalendar& calendar, const LocalTime& local) {
  auto inside = [&](const std::vector<DayWindow>& windows) {
    return std::any_of(windows.begin(), windows.end(), [&](const DayWindow& w) {
      return w.begin <= local.minute_of_day && local.minute_of_day < w.end;
    });
  };
  const auto& off = calendar.days_off;
  if (std::find(off.begin(), off.end(), local.on) == off.end() &&
      inside(calendar.weekly[static_cast<std::size_t>(weekday_index(local.on))]))
    return true;
  return std::any_of(calendar.added.begin(), calendar.added.end(),
                     [&](const AddedHours& a) { return a.on == local.on && inside(a.windows); });
}

/// Goes through the steps once for each kind of rule.
class ShopAuditor {
 public:
  ShopAuditor(const Job& job, const OperationList& list, const Schedule& schedule)
      : job_(job), list_(list), schedule_(schedule), people_(job, schedule.span) {}

  std::vector<std::string> broken() {
    for (const DatedStep& step : schedule_.steps) {
      if (operation(step).done) continue;  // as the log has it
      dates(step);
      comes_after(step);
      whole_and_there(step);
    }
    one_thing_at_a_time();
    for (const Session& session : schedule_.sessions) tools_are_cleaned(session);
    for (std::size_t room = 0; room < job_.rooms.size(); ++room) space(room);
    return std::move(broken_);
  }

 private:
  const Operation& operation(const DatedStep& step) const {
    return list_.operations[step.operation];
  }

  void say(const DatedStep& step, std::string_view what) {
    broken_.push_back(fmt::format("{} {}", operation(step).key, what));
  }

  void dates(const DatedStep& step) {
    const Operation& op = operation(step);
    const BatchRules& set = job_.batches.at(op.batch).rules;
    if (set.not_before && step.begin() < *set.not_before)
      say(step, "is done before its batch may be begun");
    if (op.kind != OperationKind::coat) return;
    for (Instant m = step.begin(); m < step.end(); m += minute) {
      const LocalTime local = job_.calendar.zone.local(m);
      if (std::find(set.no_coating_on.begin(), set.no_coating_on.end(), local.on) !=
          set.no_coating_on.end())
        return say(step, "is put on on a day without coating");
      for (const Pin& pin : set.pins)
        if (is_pinned(op, pin) &&
            !(local.on == pin.on && pin.between.begin <= local.minute_of_day &&
              local.minute_of_day < pin.between.end))
          return say(step, "is not put on when it is set for");
    }
  }

  /// Rule 12: the first coat of what comes after another batch waits until the last coat of every
  /// side of it, in all its lots, is dry to handle.
  void comes_after(const DatedStep& step) {
    const Operation& op = operation(step);
    const std::string& after = job_.batches.at(op.batch).after;
    if (after.empty() || !op.coating || op.step > 0 || op.coat > 1 || op.again > 0) return;
    std::map<std::pair<std::size_t, Side>, const DatedStep*> last;
    for (const DatedStep& other : schedule_.steps) {
      const Operation& coat = operation(other);
      const Batch& first = job_.batches.at(coat.batch);
      if (coat.coating && !coat.skipped() && (first.name == after || first.rules.lot_of == after))
        last[{coat.batch, coat.side}] = &other;
    }
    for (const auto& [side, other] : last) {
      const auto dry = other->reaches[index_of(Stage::handle)];
      if (!dry || step.begin() < *dry)
        say(step, fmt::format("does not wait for {}", operation(*other).key));
    }
    for (const Unplaced& missing : schedule_.unplaced) {
      const Operation& coat = list_.operations[missing.operation];
      const Batch& first = job_.batches.at(coat.batch);
      if (coat.coating && (first.name == after || first.rules.lot_of == after))
        say(step, fmt::format("is dated without {}", coat.key));
    }
  }

  bool is_pinned(const Operation& op, const Pin& pin) const {
    const FinishSystem* system = find_named(job_.systems, job_.batches[op.batch].system);
    const bool side = !pin.side || *pin.side == op.side || op.side == Side::both;
    return side && op.coat == pin.coat && system->steps.at(op.step).name == pin.step;
  }

  /// What must be done in one go is not handed over; each piece has one person, who is there.
  void whole_and_there(const DatedStep& step) {
    if (job_.people.size() < 2) return;
    if (step.by.size() != step.pieces.size()) return say(step, "is done by nobody in particular");
    for (std::size_t i = 0; i < step.pieces.size(); ++i)
      for (Instant m = step.pieces[i].begin; m < step.pieces[i].end; m += minute)
        if (!people_.is_there(step.by[i], m)) return say(step, "is done by somebody who is away");
  }

  void one_thing_at_a_time() {
    std::map<std::size_t, std::vector<Interval>> busy;
    for (const DatedStep& step : schedule_.steps)
      for (std::size_t i = 0; i < step.pieces.size() && !operation(step).done; ++i)
        busy[i < step.by.size() ? step.by[i] : 0].push_back(step.pieces[i]);
    for (const Session& session : schedule_.sessions) {
      busy[session.set_up_by.value_or(0)].push_back(session.set_up);
      busy[session.clean_up_by.value_or(0)].push_back(session.clean_up);
    }
    for (const ToolRest& rest : schedule_.tool_rests)
      if (rest.cleaning.length() > Minutes(0)) {
        const DatedStep& coat = schedule_.steps[rest.dated_step];
        busy[coat.by.empty() ? 0 : coat.by.front()].push_back(rest.cleaning);
      }
    for (auto& [person, work] : busy) {
      std::sort(work.begin(), work.end());
      for (std::size_t i = 1; i < work.size(); ++i)
        if (work[i].begin < work[i - 1].end)
          broken_.push_back(fmt::format("two things are done at {}", iso_utc(work[i].begin)));
    }
  }

  /// Nothing lies open with what hardens in it, nor does a gun, for more than half an hour.
  void tools_are_cleaned(const Session& session) {
    const Coating& used = job_.coatings[session.coating];
    if (!used.pot_life && !job_.data.methods[session.method].sprayed) return;
    for (std::size_t i = 1; i < session.steps.size(); ++i) {
      const DatedStep& before = schedule_.steps[session.steps[i - 1]];
      const Instant from = before.dries_from.value_or(before.end());
      if (schedule_.steps[session.steps[i]].begin() - from <= Minutes(30)) continue;
      const auto cleaned = std::ranges::any_of(schedule_.tool_rests, [&](const ToolRest& rest) {
        return rest.dated_step == session.steps[i - 1] &&
               rest.cleaning.length() >= whole_minutes_up(used.clean_up.value);
      });
      if (!cleaned) say(before, "leaves its tool to harden");
    }
  }

  bool lies_wet(const DatedStep& coat, Instant at) const {
    const auto until = coat.reaches[index_of(Stage::handle)];
    return coat.begin() <= at && (!until || at < *until);
  }

  /// At each begin of a coat to come: what lies in the room together. A batch whose coats are on
  /// already lies there once, however many of them are wet.
  void space(std::size_t room) {
    std::vector<const DatedStep*> coats;
    for (const DatedStep& step : schedule_.steps)
      if (operation(step).kind == OperationKind::coat && !operation(step).skipped() &&
          job_.batches[operation(step).batch].rules.room == room)
        coats.push_back(&step);
    for (const DatedStep* coat : coats) {
      if (operation(*coat).done) continue;
      const auto most = space_in_room(job_, operation(*coat).batch);
      int taken = 0;
      std::set<std::size_t> there;
      for (const DatedStep* other : coats) {
        const Operation& op = operation(*other);
        if (!lies_wet(*other, coat->begin()) || (op.done && !there.insert(op.batch).second))
          continue;
        taken += in_hundredths(space_taken(job_, op.batch));
      }
      if (most && taken > in_hundredths(*most))
        say(*coat, fmt::format("has no room to dry: {:.2f} of {:.2f} would be taken", taken / 100.0,
                               *most));
    }
  }

  const Job& job_;
  const OperationList& list_;
  const Schedule& schedule_;
  WorkingPeople people_;
  std::vector<std::string> broken_;
};

}  // namespace

WorkingPeople::WorkingPeople(const Job& job, Interval span) : job_(job) {
  for (std::size_t i = 0; i < std::max<std::size_t>(1, job.people.size()); ++i)
    busy_.push_back(busy_hours(calendar_of(job, i), span));
}

bool WorkingPeople::is_there(std::size_t person, Instant at) const {
  const WorkCalendar& calendar = calendar_of(job_, person);
  const auto holds = [&](const Interval& each) { return each.begin <= at && at < each.end; };
  return std::ranges::any_of(calendar.freed, holds) ||
         (has_hours(calendar, calendar.zone.local(at)) &&
          std::ranges::none_of(busy_.at(person), holds));
}

bool WorkingPeople::anybody(Instant at) const {
  for (std::size_t person = 0; person < busy_.size(); ++person)
    if (is_there(person, at)) return true;
  return false;
}

bool WorkingPeople::same_all_through(Interval stretch) const {
  for (std::size_t person = 0; person < busy_.size(); ++person)
    for (Instant m = stretch.begin; m < stretch.end; m += minute)
      if (is_there(person, m) != is_there(person, stretch.begin)) return false;
  return anybody(stretch.begin);
}

std::vector<std::string> broken_shop_rules(const Job& job, const OperationList& list,
                                           const Schedule& schedule) {
  return ShopAuditor(job, list, schedule).broken();
}

bool in_other_rooms(const Job& job, std::size_t first, std::size_t second) {
  // Batches without a room of their own are in the first one.
  return job.batches.at(first).rules.room.value_or(0) !=
         job.batches.at(second).rules.room.value_or(0);
}

}  // namespace tackfree
