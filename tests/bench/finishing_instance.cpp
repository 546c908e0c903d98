// Finishing instances: batches with coats and sanding in slots, as tests/published/scheduling has.
#include <algorithm>
#include <map>
#include <utility>

#include "bench/instance.hpp"
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tackfree::bench {

namespace {

using nlohmann::json;
using solver::LagTable;
using solver::never;
using solver::Run;
using solver::Slot;

class Reader {
 public:
  Reader(const std::string& path, const json& file) : path_(path), file_(file) {}

  Instance instance() {
    result_.counts_sessions = true;
    problem().horizon = number(file_, "T", 1, 10'000'000);
    problem().workers = number(file_, "crew", 1, 1'000);
    problem().resources = {number(file_, "cap", 0, 1'000'000)};
    problem().products.resize(index(number(file_, "n_products", 0, 1'000)));
    problem().tables = {own_end(problem().horizon)};
    windows();
    tables();
    for (const json& each : list(file_, "ops")) operation(each);
    for (const json& each : list(file_, "arcs")) arc(each);
    return std::move(result_);
  }

 private:
  solver::SchedulingProblem& problem() { return result_.problem; }
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  [[noreturn]] void fail(const std::string& what) const { throw BadInstance(path_ + ": " + what); }

  const json& list(const json& from, const char* key) const {
    if (!from.contains(key) || !from[key].is_array()) fail(fmt::format("{} is no list", key));
    return from[key];
  }

  int number(const json& from, const char* key, int least, int most) const {
    if (!from.contains(key)) fail(fmt::format("{} is missing", key));
    return whole(from[key], key, least, most);
  }

  int whole(const json& value, const std::string& what, int least, int most) const {
    if (!value.is_number_integer()) fail(fmt::format("{} is no whole number", what));
    const auto read = value.get<std::int64_t>();
    if (read < least || read > most)
      fail(fmt::format("{} is {}, not from {} to {}", what, read, least, most));
    return static_cast<int>(read);
  }

  /// Windows as runs of slots with one number above 0.
  void windows() {
    const json& win = list(file_, "win");
    if (win.size() != index(problem().horizon)) fail("win has not T entries");
    int last = 0, highest = 0;
    for (Slot s = 0; s < problem().horizon; ++s) {
      const int at = whole(win[index(s)], "win", 0, problem().horizon);
      if (at > 0 && at != last) {
        if (at <= highest) fail(fmt::format("window {} is not one stretch", at));
        problem().windows.push_back({s, s + 1});
        highest = at;
      } else if (at > 0) {
        problem().windows.back().end = s + 1;
      }
      last = at;
    }
  }

  void tables() {
    for (const json& each : list(file_, "tables")) {
      if (!each.is_array() || each.size() != index(problem().horizon))
        fail("a table has not T entries");
      std::vector<Slot>& table = by_start_.emplace_back();
      for (const json& entry : each) {
        const Slot at = whole(entry, "a table's entry", 0, problem().horizon);
        if (!table.empty() && at < table.back())
          fail("a table decreases: later work would be ready sooner");
        table.push_back(at);
      }
    }
  }

  /// A table by start as one by end, for work of one duration; T is never.
  std::size_t by_end(int table, Slot duration) {
    if (table < 1 || index(table) > by_start_.size())
      fail(fmt::format("there is no table {}", table));
    const auto [place, fresh] = made_.try_emplace({table, duration}, problem().tables.size());
    if (!fresh) return place->second;
    LagTable ends(index(problem().horizon) + 1, never);
    const std::vector<Slot>& starts = by_start_[index(table - 1)];
    for (Slot e = 0; e <= problem().horizon; ++e) {
      const Slot start = std::clamp(e - duration, Slot{0}, problem().horizon - 1);
      const Slot at = starts[index(start)];
      ends[index(e)] = at >= problem().horizon ? never : at;
    }
    problem().tables.push_back(std::move(ends));
    return place->second;
  }

  /// Starts from which the work ends within the horizon.
  std::size_t open_time(int set, Slot duration) {
    const json& sets = list(file_, "start_sets");
    if (set < 1 || index(set) > sets.size()) fail(fmt::format("there is no start set {}", set));
    const auto [place, fresh] = sets_.try_emplace({set, duration}, problem().open_times.size());
    if (!fresh) return place->second;
    std::vector<solver::Rule> closed(index(problem().horizon), 1);
    if (!sets[index(set - 1)].is_array()) fail("a start set is no list");
    for (const json& start : sets[index(set - 1)]) {
      const Slot s = whole(start, "a start", 0, problem().horizon - 1);
      if (s + duration <= problem().horizon) closed[index(s)] = solver::no_rule;
    }
    problem().open_times.emplace_back(closed);
    return place->second;
  }

  void operation(const json& each) {
    solver::Activity a;
    a.duration = number(each, "dur", 1, problem().horizon);
    a.open_time = open_time(number(each, "dom", 1, 1'000'000), a.duration);
    a.family = index(number(each, "batch", 0, 1'000'000));
    if (!each.contains("dusty") || !each["dusty"].is_boolean()) fail("dusty is no true or false");
    a.dusty = each["dusty"].get<bool>();
    const int product = number(each, "product", 0, static_cast<int>(problem().products.size()));
    if (product > 0) {
      a.product = index(product - 1);
      a.wet_until = by_end(number(each, "tDust", 1, 1'000'000), a.duration);
      const int area = number(each, "area", 0, 1'000'000);
      if (area > 0) a.uses = {{0, area, by_end(number(each, "tHand", 1, 1'000'000), a.duration)}};
      stays_in_window(a);
    }
    problem().goals.push_back({problem().activities.size(), 0});
    problem().activities.push_back(std::move(a));
  }

  /// A session is a window in which a coat starts; one that ends after its window lengthens it.
  void stays_in_window(const solver::Activity& a) {
    const solver::OpenTime& time = problem().open_times[a.open_time];
    for (Slot s = time.next_open(0); s != never; s = time.next_open(s + 1)) {
      const auto window = solver::window_at(problem(), s);
      if (!window) fail(fmt::format("a coat may start at {}, outside every window", s));
      Run& run = problem().windows[*window];
      run.end = std::max(run.end, s + a.duration);
      if (*window + 1 < problem().windows.size() && run.end > problem().windows[*window + 1].begin)
        fail(fmt::format("a coat from {} reaches the next window", s));
    }
  }

  void arc(const json& each) {
    const int count = static_cast<int>(problem().activities.size());
    const std::size_t from = index(number(each, "frm", 1, count) - 1);
    const std::size_t to = index(number(each, "to", 1, count) - 1);
    if (from >= to) fail(fmt::format("arc {} to {} does not go on in the list", from + 1, to + 1));
    const Slot duration = problem().activities[from].duration;
    solver::Lag lag{.from = from, .to = to};
    const int table = number(each, "tab", 0, 1'000'000);
    if (table > 0) lag.table = by_end(table, duration);
    problem().lags.push_back(lag);
    const int most = number(each, "max", -1, 10'000'000);
    if (most >= 0) problem().maximum_lags.push_back({from, to, std::nullopt, most - duration});
  }

  const std::string& path_;
  const json& file_;
  Instance result_;
  std::vector<std::vector<Slot>> by_start_;
  std::map<std::pair<int, Slot>, std::size_t> made_, sets_;
};

}  // namespace

Instance finishing_instance(const std::string& path, const std::string& text) {
  const json file = json::parse(text, nullptr, false);
  if (!file.is_object()) throw BadInstance(path + ": is no JSON object");
  return Reader(path, file).instance();
}

}  // namespace tackfree::bench
