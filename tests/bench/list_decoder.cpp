#include "bench/list_decoder.hpp"

#include "tackfree/solver/placement.hpp"

#include <algorithm>
#include <numeric>

namespace tackfree::solver {

namespace {

constexpr std::int32_t nobody = -1;
constexpr std::int32_t several = -2;
constexpr std::int32_t no_family = -3;

}  // namespace

ListDecoder::ListDecoder(const SchedulingProblem& problem)
    : problem_(problem),
      lags_to_(problem.activities.size()),
      limits_of_(problem.activities.size()),
      not_before_(problem.activities.size(), 0),
      used_(problem.resources.size()) {
  std::size_t rooms = 0;
  for (const Activity& activity : problem.activities) rooms = std::max(rooms, activity.room + 1);
  wet_.resize(rooms);
  dusty_.resize(rooms);
  for (std::size_t i = 0; i < problem.lags.size(); ++i) lags_to_[problem.lags[i].to].push_back(i);
  for (std::size_t i = 0; i < problem.maximum_lags.size(); ++i) {
    limits_of_[problem.maximum_lags[i].from].push_back(i);
    limits_of_[problem.maximum_lags[i].to].push_back(i);
  }
}

bool ListDecoder::can_decode(const SchedulingProblem& problem) {
  return problem.away.empty() && std::ranges::all_of(problem.products, [](const Product& product) {
           return product.set_up == 0 && product.clean_up == 0;
         });
}

void ListDecoder::clear() {
  const std::size_t size = index(problem_.horizon) + 1;
  starts_.assign(problem_.activities.size(), -1);
  ends_.assign(problem_.activities.size(), -1);
  busy_.assign(size, 0);
  for (auto& used : used_) used.assign(size, 0);
  for (const Standing& held : problem_.standing)
    for (Slot s = 0; s < std::min(held.until, static_cast<Slot>(size)); ++s)
      used_[held.resource][index(s)] += held.amount;
  for (auto& wet : wet_) wet.assign(size, nobody);
  for (auto& dusty : dusty_) dusty.assign(size, nobody);
}

std::optional<Timed> ListDecoder::decode(const std::vector<std::size_t>& list,
                                         std::size_t repairs) {
  std::fill(not_before_.begin(), not_before_.end(), 0);
  for (std::size_t repair = 0;; ++repair) {
    clear();
    broken_limit_.reset();
    const bool all = std::all_of(list.begin(), list.end(),
                                 [&](std::size_t activity) { return place(activity); });
    if (all) return Timed{starts_, ready_of(problem_, ends_)};
    if (!broken_limit_ || repair >= repairs) return std::nullopt;
    const MaximumLag& lag = problem_.maximum_lags[*broken_limit_];
    Slot later = starts_[lag.from] + 1;
    const Activity& from = problem_.activities[lag.from];
    // One slot at a time: ends are only known from starts.
    for (; later < problem_.horizon; ++later) {
      const auto pieces = pieces_from(problem_, from, later);
      if (!pieces.empty() && pieces.back().end <= problem_.horizon &&
          after(problem_, lag, pieces.back().end) >= broken_at_)
        break;
    }
    not_before_[lag.from] = later;
  }
}

bool ListDecoder::place(std::size_t i) {
  ++steps_;
  const Activity& activity = problem_.activities[i];
  Slot at = not_before_[i];
  for (const std::size_t number : lags_to_[i]) {
    const Lag& lag = problem_.lags[number];
    const Slot ready = after(problem_, lag, ends_[lag.from]);
    if (ready == never) return false;
    at = std::max(at, ready);
  }
  const OpenTime& time = problem_.open_times[activity.open_time];
  while (true) {
    at = time.next_open(at);
    if (at == never) return false;
    Slot end = at + activity.duration;
    if (activity.splittable) {
      const auto pieces = pieces_from(problem_, activity, at);
      end = pieces.empty() ? never : pieces.back().end;
    }
    if (end > problem_.horizon) {
      if (!activity.splittable) return false;
      ++at;
      continue;
    }
    const Slot next = conflict(i, at, end);
    if (next == never) return false;
    if (next == at) break;
    at = next;
  }
  const auto pieces = activity.splittable ? pieces_from(problem_, activity, at)
                                          : std::vector<Run>{{at, at + activity.duration}};
  take(i, at, pieces.back().end);
  return true;
}

/// `start` when it keeps all rules; else the next slot worth trying, or never.
Slot ListDecoder::conflict(std::size_t i, Slot start, Slot end) {
  const Activity& activity = problem_.activities[i];
  if (const Slot next = limit_conflict(i, start, end); next != start) return next;
  if (activity.workers > 0)
    for (Slot s = end - 1; s >= start; --s)
      if (busy_[index(s)] >= problem_.workers) return s + 1;
  for (const Use& use : activity.uses) {
    const Run run = held(problem_, use, {start, end});
    const int room = problem_.resources[use.resource] - use.amount;
    if (room < 0 && run.begin < run.end) return never;
    const auto& used = used_[use.resource];
    for (Slot s = std::min(run.end, problem_.horizon) - 1; s >= run.begin; --s)
      if (used[index(s)] > room) return s + 1;
  }
  return room_conflict(i, start, end);
}

Slot ListDecoder::room_conflict(std::size_t i, Slot start, Slot end) const {
  const Activity& activity = problem_.activities[i];
  const Family own = family_of(i);
  auto clash = [&](const std::vector<Family>& slots, Run run) {
    for (Slot s = std::min(run.end, problem_.horizon) - 1; s >= run.begin; --s)
      if (slots[index(s)] != nobody && (slots[index(s)] != own || own == no_family)) return s;
    return never;
  };
  if (activity.dusty)
    for (const Run piece : pieces_from(problem_, activity, start)) {
      const Slot at = clash(wet_[activity.room], {piece.begin, piece.end + problem_.dust_settles});
      if (at != never) return at + 1;  // a later start before that runs into the same slot
    }
  if (activity.wet_until) {
    const Slot dry = problem_.tables[*activity.wet_until][index(end)];
    const Slot at = clash(dusty_[activity.room], {start, dry});
    if (at != never) return at + 1;
  }
  return start;
}

Slot ListDecoder::limit_conflict(std::size_t i, Slot start, Slot end) {
  for (const std::size_t number : limits_of_[i]) {
    const MaximumLag& lag = problem_.maximum_lags[number];
    if (lag.to == i && starts_[lag.from] >= 0 && start > after(problem_, lag, ends_[lag.from])) {
      broken_limit_ = number;
      broken_at_ = start;
      return never;
    }
    if (lag.from == i && starts_[lag.to] >= 0 && starts_[lag.to] > after(problem_, lag, end))
      return start + 1;
  }
  return start;
}

ListDecoder::Family ListDecoder::family_of(std::size_t activity) const {
  const auto& family = problem_.activities[activity].family;
  return family ? static_cast<Family>(*family) : no_family;
}

void ListDecoder::mark(std::vector<Family>& slots, Run run, Family family) {
  for (Slot s = run.begin; s < std::min(run.end, static_cast<Slot>(slots.size())); ++s) {
    Family& at = slots[index(s)];
    at = at == nobody || at == family ? family : several;
  }
}

void ListDecoder::take(std::size_t i, Slot start, Slot end) {
  const Activity& activity = problem_.activities[i];
  starts_[i] = start;
  ends_[i] = end;
  if (activity.workers > 0)
    for (Slot s = start; s < end; ++s) ++busy_[index(s)];
  for (const Use& use : activity.uses) {
    const Run run = held(problem_, use, {start, end});
    for (Slot s = run.begin; s < std::min(run.end, problem_.horizon + 1); ++s)
      used_[use.resource][index(s)] += use.amount;
  }
  if (activity.dusty)
    for (const Run piece : pieces_from(problem_, activity, start))
      mark(dusty_[activity.room], {piece.begin, piece.end + problem_.dust_settles}, family_of(i));
  if (activity.wet_until)
    mark(wet_[activity.room], {start, problem_.tables[*activity.wet_until][index(end)]},
         family_of(i));
}

Slot ready_of(const SchedulingProblem& problem, const std::vector<Slot>& ends) {
  Slot ready = 0;
  for (const Goal& goal : problem.goals)
    ready = std::max(ready, problem.tables[goal.table][index(ends[goal.activity])]);
  return ready;
}

Solution solution_from(const SchedulingProblem& problem, const std::vector<Slot>& starts) {
  Placement placement(problem);
  for (std::size_t i = 0; i < starts.size(); ++i) {
    SolvedActivity solved;
    if (starts[i] >= 0) solved.pieces = pieces_from(problem, problem.activities[i], starts[i]);
    placement.place(i, std::move(solved));
  }
  return placement.solution();
}

}  // namespace tackfree::solver
