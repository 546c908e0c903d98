#include "tackfree/input/log_lines.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/syntax/json_cursor.hpp"
#include "tackfree/syntax/plain_object.hpp"

#include <algorithm>
#include <map>
#include <span>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tackfree {

namespace {

constexpr NumberRange amounts{0.001, 1000, "L"};
constexpr NumberRange temperatures{-40, 60, "C"};
constexpr NumberRange humidities{1, 100, "% RH"};
constexpr int highest_id = 1'000'000'000;
constexpr NumberRange ids{1, highest_id, "the number of a line, which is"};

bool is_of_step(LogKind kind) {
  return kind == LogKind::coat || kind == LogKind::done || kind == LogKind::skipped ||
         kind == LogKind::test || kind == LogKind::fault;
}

/// Reads the object of one line.
class LineReader {
 public:
  explicit LineReader(JsonCursor& cursor) : cursor_(cursor) {}

  /// Whatever can be read of it; id 0 where that cannot.
  LogEntry entry() {
    LogEntry entry;
    entry.id = cursor_.whole(needed("id"), ids).value_or(0);
    entry.written_at = time(needed("written_at")).value_or(Instant());
    const auto kind = cursor_.word(needed("kind"), log_kind_words);
    entry.kind = static_cast<LogKind>(kind.value_or(0));
    const auto at = time("at");
    entry.at = at.value_or(entry.written_at);
    if (kind) members(entry);
    if (auto note = cursor_.text("note")) entry.note = std::move(*note);
    if (kind && entry.kind == LogKind::note && entry.note.empty())
      cursor_.report("note", "wanted what is to be noted");
    cursor_.refuse_unknown();
    return entry;
  }

 private:
  static JsonKey when(bool must, std::string_view key) {
    return must ? needed(JsonKey(key)) : JsonKey(key);
  }

  std::optional<Instant> time(JsonKey key) {
    const auto text = cursor_.text(key);
    if (!text) return std::nullopt;
    const auto at = parse_instant(*text);
    if (!at)
      cursor_.report(key.name, "wanted a time with its offset, such as 2027-04-09T20:10-04:00");
    return at;
  }

  void members(LogEntry& entry) {
    const LogKind kind = entry.kind;
    const bool of_tin = kind == LogKind::tin || kind == LogKind::waste;
    if (is_of_step(kind)) entry.step = cursor_.text(needed("step")).value_or("");
    if (kind == LogKind::coat || kind == LogKind::done) entry.began_at = time("began_at");
    const bool of_thinner = kind == LogKind::tin && cursor_.has("thinner");
    if (of_thinner) entry.thinner = cursor_.text("thinner").value_or("");
    if (of_tin && !of_thinner) entry.coating = cursor_.text(needed("coating")).value_or("");
    if (kind == LogKind::coat || of_tin)
      if (const auto amount = cursor_.number(when(of_tin, "amount_l"), amounts))
        entry.amount = litres(*amount);
    if (kind == LogKind::tin)
      if (const auto tin = cursor_.word(needed("tin"), tin_event_words))
        entry.tin = static_cast<TinEvent>(*tin);
    air(entry);
    if (kind == LogKind::test) {
      if (const auto test = cursor_.word(needed("test"), dry_test_words))
        entry.test = static_cast<DryTest>(*test);
      entry.passed = cursor_.flag(needed("passed")).value_or(false);
    }
    if (kind == LogKind::fault)
      if (const auto fault = cursor_.word(needed("fault"), fault_words))
        entry.fault = static_cast<Fault>(*fault);
    if (kind == LogKind::bought) bought(entry);
    if (kind == LogKind::away || kind == LogKind::free) hours(entry);
    entry.insisted = cursor_.flag("insisted").value_or(false);
    const bool by_line = kind == LogKind::withdrawn && cursor_.has("corrects_line");
    if (by_line) entry.corrects_line = cursor_.whole("corrects_line", ids);
    entry.corrects = cursor_.whole(when(kind == LogKind::withdrawn && !by_line, "corrects"), ids);
    if (entry.began_at && *entry.began_at > entry.at)
      cursor_.report("began_at", "wanted a time before the work ended");
  }

  void bought(LogEntry& entry) {
    for (JsonCursor& object : cursor_.objects(needed("tins"))) {
      BoughtTins tins;
      tins.thinner = object.has("thinner");
      tins.product = object.text(needed(tins.thinner ? "thinner" : "coating")).value_or("");
      tins.size = object.text("size").value_or("");
      tins.each = litres(object.number(needed("amount_l"), amounts).value_or(0));
      tins.count = object.whole("count", {1, 1'000'000, "tins"}).value_or(1);
      object.refuse_unknown();
      entry.bought.push_back(std::move(tins));
    }
  }

  void hours(LogEntry& entry) {
    entry.person = cursor_.text("person").value_or("");
    const auto from = time(needed("from")), until = time(needed("until"));
    if (!from || !until) return;
    if (*from >= *until) cursor_.report("until", "wanted a later time than \"from\"");
    entry.hours = Interval{*from, *until};
  }

  void air(LogEntry& entry) {
    const bool must = entry.kind == LogKind::air;
    if (entry.kind != LogKind::coat && !must) return;
    if (const auto t = cursor_.number(when(must, "temperature_c"), temperatures))
      entry.temperature = celsius(*t);
    if (const auto h = cursor_.number("humidity_pct", humidities))
      entry.humidity = humidity_percent(*h);
  }

  JsonCursor& cursor_;
};

nlohmann::ordered_json six_digits(double value) {
  return nlohmann::ordered_json::parse(fmt::format("{:.6g}", value));
}

nlohmann::ordered_json bought_json(const BoughtTins& tins) {
  nlohmann::ordered_json object;
  object[tins.thinner ? "thinner" : "coating"] = tins.product;
  if (!tins.size.empty()) object["size"] = tins.size;
  object["amount_l"] = six_digits(tins.each.in(litres));
  object["count"] = tins.count;
  return object;
}

/// Goes through the lines of a log.
class LogReading {
 public:
  explicit LogReading(std::string file) { history_.file = std::move(file); }

  void add(std::string_view line) {
    ++number_;
    if (line.find_first_not_of(" \t\r") == std::string_view::npos) return;
    Problems why;
    auto tree = plain_object(line);
    if (!tree) tree = parse_json(line, history_.file, why);
    LogEntry entry;
    if (tree) {
      JsonCursor cursor(*tree, "", history_.file, why);
      if (tree->kind == JsonNode::Kind::object) entry = LineReader(cursor).entry();
    }
    // It was parsed as a text of its own.
    for (Problem& problem : why) problem.line = number_;
    entry.line = number_;
    take(std::move(entry), std::move(why));
  }

  History result() {
    const int last = place_.empty() ? 0 : place_.rbegin()->first;
    history_.next_id = last + 1;
    if (last == highest_id)
      for (history_.next_id = 1; place_.contains(history_.next_id);) ++history_.next_id;
    std::erase_if(all_, [](const LogEntry& entry) { return entry.id == 0; });
    std::erase_if(history_.left_out, [](const LeftOutLine& line) { return line.why.empty(); });
    history_.entries = std::move(all_);
    return std::move(history_);
  }

 private:
  /// Where a line is: an index into `all_`, or into the lines that are left out.
  struct Place {
    bool left_out = false;
    std::size_t index = 0;
  };

  void take(LogEntry entry, Problems why) {
    // As a rule each number is one higher than the last.
    const std::size_t known = place_.size();
    const auto place =
        entry.id == 0 ? place_.end() : place_.try_emplace(place_.end(), entry.id, Place{});
    const bool taken = entry.id != 0 && place_.size() == known;
    if (taken)
      why.push_back(problem("id", entry.id, "wanted a number that no line above has"));
    else if (why.empty())
      correct(entry, why);
    const bool reads = why.empty();
    const int id = taken ? 0 : entry.id;
    if (id != 0) place->second = {!reads, reads ? all_.size() : history_.left_out.size()};
    if (!reads) {
      history_.left_out.push_back({number_, id, std::move(why)});
      return;
    }
    if (entry.kind == LogKind::withdrawn) entry.id = 0;
    all_.push_back(std::move(entry));
  }

  /// Takes the line out that this one stands in place of.
  void correct(const LogEntry& entry, Problems& why) {
    if (entry.corrects) {
      const auto corrected = place_.find(*entry.corrects);
      if (corrected == place_.end() || *entry.corrects == entry.id)
        why.push_back(problem("corrects", *entry.corrects, "wanted the number of a line above"));
      else if (corrected->second.left_out)
        history_.left_out[corrected->second.index].why.clear();
      else
        all_[corrected->second.index].id = 0;
    }
    if (!entry.corrects_line) return;
    // What has a number is known by it: in a file that was shortened since, another line may stand
    // here.
    const auto at =
        std::ranges::lower_bound(history_.left_out, *entry.corrects_line, {}, &LeftOutLine::line);
    if (at == history_.left_out.end() || at->line != *entry.corrects_line || at->id != 0)
      why.push_back(problem("corrects_line", *entry.corrects_line,
                            "wanted a line above whose number cannot be read"));
    else
      at->why.clear();
  }

  Problem problem(std::string key, int found, std::string wanted) const {
    return {.file = history_.file,
            .line = number_,
            .key = std::move(key),
            .found = fmt::to_string(found),
            .wanted = std::move(wanted)};
  }

  History history_;
  std::vector<LogEntry> all_;  ///< id 0: does not count
  std::map<int, Place> place_;
  int number_ = 0;
};

}  // namespace

bool is_whole_log_line(const std::string& line) { return nlohmann::json::accept(line); }

History read_log(const AppendedText& text, const std::string& file) {
  LogReading reading(file);
  std::string_view rest = text.lines;
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    reading.add(rest.substr(0, end));
    rest.remove_prefix(end + 1);
  }
  const bool whole = !text.torn.empty() && is_whole_log_line(text.torn);
  if (whole) reading.add(text.torn);
  History history = reading.result();
  if (!whole) history.torn = text.torn;
  return history;
}

std::string log_line(const LogEntry& entry, const Zone& zone) {
  nlohmann::ordered_json line;
  line["id"] = entry.id;
  line["written_at"] = iso_local(entry.written_at, zone);
  line["kind"] = log_kind_words.at(static_cast<std::size_t>(entry.kind));
  if (entry.began_at) line["began_at"] = iso_local(*entry.began_at, zone);
  line["at"] = iso_local(entry.at, zone);
  if (!entry.step.empty()) line["step"] = entry.step;
  if (!entry.coating.empty()) line["coating"] = entry.coating;
  if (!entry.thinner.empty()) line["thinner"] = entry.thinner;
  if (!entry.person.empty()) line["person"] = entry.person;
  if (entry.hours) {
    line["from"] = iso_local(entry.hours->begin, zone);
    line["until"] = iso_local(entry.hours->end, zone);
  }
  if (entry.tin) line["tin"] = tin_event_words.at(static_cast<std::size_t>(*entry.tin));
  if (entry.amount) line["amount_l"] = six_digits(entry.amount->in(litres));
  if (entry.temperature) line["temperature_c"] = six_digits(entry.temperature->in_celsius());
  if (entry.humidity) line["humidity_pct"] = six_digits(entry.humidity->in(humidity_percent));
  for (const BoughtTins& tins : entry.bought) line["tins"].push_back(bought_json(tins));
  if (entry.test) {
    line["test"] = dry_test_words.at(static_cast<std::size_t>(*entry.test));
    line["passed"] = entry.passed;
  }
  if (entry.fault) line["fault"] = fault_words.at(static_cast<std::size_t>(*entry.fault));
  if (entry.insisted) line["insisted"] = true;
  if (entry.corrects) line["corrects"] = *entry.corrects;
  if (entry.corrects_line) line["corrects_line"] = *entry.corrects_line;
  if (!entry.note.empty()) line["note"] = entry.note;
  return line.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

}  // namespace tackfree
