#include "tackfree/input/busy_calendar_reader.hpp"

#include "tackfree/base/text_file.hpp"
#include "tackfree/input/calendar_lines.hpp"
#include "tackfree/input/calendar_values.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// What an exported calendar of a person does not come near.
constexpr std::size_t most_events = 20'000;
constexpr std::size_t most_repeating = 2'000;
constexpr std::size_t most_left_out = 100'000;
constexpr std::size_t most_deep = 6;
constexpr std::size_t most_problems = 20;

/// The lines of one event that matter here.
struct RawEvent {
  int line = 0;
  std::string uid;
  std::optional<CalendarLine> start, end, duration, rule, instance;
  std::vector<CalendarLine> left_out, added;
  bool free = false;
};

/// The file's structure: events with their lines, and the places that its zones name.
class FileReading {
 public:
  FileReading(std::string file, const Zone& home, Problems& problems)
      : file_(std::move(file)), home_(home), problems_(problems), before_(problems.size()) {}

  std::vector<BusyEvent> read(const std::vector<CalendarLine>& lines) {
    for (const CalendarLine& line : lines) {
      if (!take(line) || too_many_problems()) return {};
    }
    if (!seen_calendar_)
      report(1, "", "wanted a calendar file: one that begins with BEGIN:VCALENDAR");
    else if (!open_.empty())
      report(lines.back().line, "",
             fmt::format("wanted END:{}: the file is cut off", open_.back()));
    if (problems_.size() > before_) return {};
    for (const RawEvent& raw : events_)
      if (!too_many_problems()) add(raw);
    leave_out_instances();
    std::vector<BusyEvent> busy;
    for (Known& known : known_)
      if (!known.free) busy.push_back(std::move(known.event));
    return busy;
  }

 private:
  /// An event that was read, the free ones too: they may have instances that are not.
  struct Known {
    std::string uid;
    bool is_instance = false;
    bool free = false;
    BusyEvent event;
  };

  void report(int line, std::string_view found, std::string wanted, std::string hint = {}) {
    problems_.push_back({.file = file_,
                         .line = line,
                         .found = std::string(found),
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
  }
  bool too_many_problems() const { return problems_.size() >= before_ + most_problems; }

  /// One line; false when the rest of the file makes no sense.
  bool take(const CalendarLine& line) {
    if (line.name == "BEGIN") {
      open_.push_back(line.value);
      if (open_.size() > most_deep) {
        report(line.line, line.value, "wanted a calendar whose parts are not nested so deep");
        return false;
      }
      if (line.value == "VCALENDAR") seen_calendar_ = true;
      if (line.value == "VEVENT") {
        events_.push_back({.line = line.line});
        if (events_.size() > most_events) {
          report(line.line, "", fmt::format("wanted at most {} events", most_events),
                 "export a shorter stretch of the calendar");
          return false;
        }
      }
      if (line.value == "VTIMEZONE") tzid_.clear();
    } else if (line.name == "END") {
      if (open_.empty() || open_.back() != line.value) {
        report(line.line, line.value, "wanted the END of what was begun last");
        return false;
      }
      open_.pop_back();
    } else if (!open_.empty() && open_.back() == "VEVENT") {
      take_event_line(line);
    } else if (!open_.empty() && open_.back() == "VTIMEZONE") {
      if (line.name == "TZID") tzid_ = line.value;
      if (line.name == "X-LIC-LOCATION") places_[tzid_] = line.value;
    } else if (open_.empty()) {
      report(line.line, line.name, "wanted a calendar file: one that begins with BEGIN:VCALENDAR");
      return false;
    }
    return true;
  }

  void take_event_line(const CalendarLine& line) {
    RawEvent& event = events_.back();
    if (line.name == "UID") event.uid = line.value;
    if (line.name == "DTSTART") event.start = line;
    if (line.name == "DTEND") event.end = line;
    if (line.name == "DURATION") event.duration = line;
    if (line.name == "RECURRENCE-ID") event.instance = line;
    if (line.name == "EXDATE") event.left_out.push_back(line);
    if (line.name == "RDATE") event.added.push_back(line);
    if (line.name == "STATUS" && line.value == "CANCELLED") event.free = true;
    if (line.name == "TRANSP" && line.value == "TRANSPARENT") event.free = true;
    if (line.name != "RRULE" && line.name != "EXRULE") return;
    if (event.rule || line.name == "EXRULE")
      report(line.line, line.name, "wanted one RRULE, and no EXRULE, in an event");
    else if (++repeating_ == most_repeating + 1)
      report(line.line, "", fmt::format("wanted at most {} repeating events", most_repeating));
    event.rule = line;
  }

  /// The zone of a line's times.
  std::optional<Zone> zone_of(const CalendarLine& line, bool utc) {
    if (utc) return Zone::utc();
    const auto tzid = line.parameters.find("TZID");
    if (tzid == line.parameters.end()) return home_;
    auto known = zones_.find(tzid->second);
    if (known == zones_.end())
      known = zones_.emplace(tzid->second, zone_of_tzid(tzid->second, places_)).first;
    if (!known->second)
      report(line.line, tzid->second, "wanted a time zone of the IANA list",
             "export the calendar with such names, or in UTC");
    return known->second;
  }

  struct Read {
    CalendarTime time;
    Zone zone;
    Instant at;
  };
  std::optional<Read> time_of(const CalendarLine& line, std::string_view text) {
    const auto time = parse_calendar_time(text);
    if (!time) {
      report(line.line, text,
             "wanted a date or a time such as 20270405 or 20270405T183000Z in " + line.name);
      return std::nullopt;
    }
    const auto zone = zone_of(line, time->utc);
    if (!zone) return std::nullopt;
    return Read{*time, *zone, zone->instant(time->local)};
  }

  bool set_length(const RawEvent& raw, const Read& start, BusyEvent& event) {
    if (raw.duration) {
      const auto duration = parse_calendar_duration(raw.duration->value);
      if (!duration) {
        report(raw.duration->line, raw.duration->value, "wanted a duration such as PT1H30M");
        return false;
      }
      event.days = duration->days;
      event.longer = duration->longer;
      return true;
    }
    if (!raw.end) {
      event.days = start.time.has_clock ? 0 : 1;
      return true;
    }
    const auto end = time_of(*raw.end, raw.end->value);
    if (!end) return false;
    if (end->at < start.at || end->time.has_clock != start.time.has_clock) {
      report(raw.end->line, raw.end->value, "wanted an end after the event's begin");
      return false;
    }
    if (start.time.has_clock)
      event.longer = end->at - start.at + Minutes(end->time.seconds > 0 ? 1 : 0);
    else
      event.days = days_between(start.time.local.on, end->time.local.on);
    return true;
  }

  void add(const RawEvent& raw) {
    if (!raw.start) {
      report(raw.line, "VEVENT", "wanted a DTSTART in each event");
      return;
    }
    const auto start = time_of(*raw.start, raw.start->value);
    if (!start) return;
    Known known{.uid = raw.uid, .is_instance = raw.instance.has_value(), .free = raw.free};
    BusyEvent& event = known.event;
    event.zone = start->zone;
    event.begin = start->time.local;
    if (!set_length(raw, *start, event)) return;
    if (raw.rule) {
      std::string wrong;
      event.repeats = parse_recurrence(raw.rule->value, event.zone, wrong);
      if (!event.repeats) report(raw.rule->line, raw.rule->value, wrong + " in RRULE");
    }
    for (const CalendarLine& line : raw.left_out) leave_out(line, line.value, event);
    if (raw.instance) note_instance(raw, *raw.instance);
    known_.push_back(known);
    for (const CalendarLine& line : raw.added) add_more(line, known);
  }

  /// The beginnings in the list `values`, to be left out of `event`.
  void leave_out(const CalendarLine& line, std::string_view values, BusyEvent& event) {
    while (!values.empty()) {
      const std::size_t comma = std::min(values.find(','), values.size());
      if (++left_out_ == most_left_out) {
        report(line.line, "", fmt::format("wanted at most {} exceptions", most_left_out));
        return;
      }
      if (const auto time = time_of(line, values.substr(0, comma))) {
        if (time->time.has_clock)
          event.not_at.push_back(time->at);
        else
          event.not_on.push_back(time->time.local.on);
      }
      values.remove_prefix(std::min(comma + 1, values.size()));
    }
  }

  void note_instance(const RawEvent& raw, const CalendarLine& line) {
    if (line.parameters.contains("RANGE"))
      report(line.line, "RANGE",
             "wanted instances moved one by one: a change of all that follow "
             "is not read here");
    leave_out(line, line.value, moved_[raw.uid]);
  }

  /// RDATE: the same again at other times.
  void add_more(const CalendarLine& line, Known known) {
    known.event.repeats.reset();
    std::string_view values = line.value;
    while (!values.empty()) {
      const std::size_t comma = std::min(values.find(','), values.size());
      if (known_.size() > most_left_out) return;
      if (const auto time = time_of(line, values.substr(0, comma))) {
        known.event.zone = time->zone;
        known.event.begin = time->time.local;
        known_.push_back(known);
      }
      values.remove_prefix(std::min(comma + 1, values.size()));
    }
  }

  /// Instances that have an event of their own are left out of the one that repeats.
  void leave_out_instances() {
    for (Known& known : known_) {
      BusyEvent& event = known.event;
      const auto moved = moved_.find(known.uid);
      if (!known.is_instance && moved != moved_.end()) {
        event.not_at.insert(event.not_at.end(), moved->second.not_at.begin(),
                            moved->second.not_at.end());
        event.not_on.insert(event.not_on.end(), moved->second.not_on.begin(),
                            moved->second.not_on.end());
      }
      std::sort(event.not_at.begin(), event.not_at.end());
      std::sort(event.not_on.begin(), event.not_on.end());
    }
  }

  std::string file_;
  const Zone& home_;
  Problems& problems_;
  std::size_t before_;
  std::vector<std::string> open_;
  bool seen_calendar_ = false;
  std::string tzid_;
  std::map<std::string, std::string> places_;
  std::map<std::string, std::optional<Zone>> zones_;
  std::vector<RawEvent> events_;
  std::vector<Known> known_;
  std::map<std::string, BusyEvent> moved_;
  std::size_t repeating_ = 0;
  std::size_t left_out_ = 0;
};

}  // namespace

std::vector<BusyEvent> busy_events(std::string_view text, const std::string& name, const Zone& home,
                                   Problems& problems) {
  const auto lines = calendar_lines(text, name, problems);
  if (!lines) return {};
  return FileReading(name, home, problems).read(*lines);
}

std::vector<BusyEvent> read_busy_calendar(const std::filesystem::path& file, const Zone& home,
                                          Problems& problems) {
  const auto text = read_text_file(file, problems);
  return text ? busy_events(*text, file.string(), home, problems) : std::vector<BusyEvent>{};
}

}  // namespace tackfree
