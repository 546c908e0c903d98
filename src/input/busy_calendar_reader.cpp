#include "tackfree/input/busy_calendar_reader.hpp"

#include "tackfree/input/calendar_values.hpp"
#include "tackfree/syntax/calendar_lines.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// What an exported calendar of a person does not come near.
constexpr std::size_t most_left_out = 100'000;
constexpr std::size_t most_added = 100'000;
constexpr std::size_t most_deep = 6;
constexpr std::size_t most_problems = 20;

/// The lines of one event that matter here.
struct RawEvent {
  int line = 0;
  std::string uid;
  std::optional<CalendarLine> start, end, duration, rule, instance;
  LeftOut left_out;
  std::vector<BusyBegin> also;
  bool free = false;
};

/// The places that a file's zones name; the events may stand before them.
using Places = std::map<std::string, std::string>;

/// The file's structure, line by line.
class Structure {
 public:
  Structure(const std::string& file, Problems& problems) : file_(file), problems_(problems) {}

  /// One line; false when the rest of the file makes no sense.
  bool take(const CalendarLine& line) {
    last_ = line.line;
    if (line.name == "BEGIN") return begin(line);
    if (line.name == "END") {
      if (open_.empty() || open_.back() != line.value)
        return refuse(line.line, line.value, "wanted the END of what was begun last");
      open_.pop_back();
      return true;
    }
    return !open_.empty() || refuse(line.line, line.name,
                                    "wanted a calendar file: one that begins with BEGIN:VCALENDAR");
  }

  void end() {
    if (!seen_calendar_)
      refuse(1, "", "wanted a calendar file: one that begins with BEGIN:VCALENDAR");
    else if (!open_.empty())
      refuse(last_, "", fmt::format("wanted END:{}: the file is cut off", open_.back()));
  }

  bool is_in(std::string_view part) const { return !open_.empty() && open_.back() == part; }

 private:
  bool begin(const CalendarLine& line) {
    open_.push_back(line.value);
    if (open_.size() > most_deep)
      return refuse(line.line, line.value, "wanted a calendar whose parts are not nested so deep");
    if (line.value == "VCALENDAR") seen_calendar_ = true;
    if (line.value != "VEVENT" || ++events_ <= most_busy_events) return true;
    return refuse(line.line, "", fmt::format("wanted at most {} events", most_busy_events),
                  "export a shorter stretch of the calendar");
  }

  bool refuse(int line, std::string_view found, std::string wanted, std::string hint = {}) {
    problems_.push_back({.file = file_,
                         .line = line,
                         .found = std::string(found),
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
    return false;
  }

  const std::string& file_;
  Problems& problems_;
  std::vector<std::string> open_;
  std::size_t events_ = 0;
  bool seen_calendar_ = false;
  int last_ = 1;
};

/// Reads a file twice, so that it is never held as lines: its structure and places, then its
/// events.
class FileReading {
 public:
  FileReading(std::string file, const Zone& home, Problems& problems)
      : file_(std::move(file)), home_(home), problems_(problems), before_(problems.size()) {}

  std::vector<BusyEvent> read(std::string_view text) {
    Structure structure(file_, problems_);
    each_line(text, [&](const CalendarLine& line) {
      if (!structure.take(line)) return false;
      if (structure.is_in("VTIMEZONE")) note(line);
      return true;
    });
    if (problems_.size() == before_) structure.end();
    if (problems_.size() > before_) return {};
    Structure again(file_, problems_);
    each_line(text, [&](const CalendarLine& line) {
      again.take(line);
      take(line, again);
      return !too_many_problems();
    });
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

  template <class Take>
  void each_line(std::string_view text, Take take) {
    CalendarLines lines(text, file_, problems_);
    for (CalendarLine line; lines.next(line) && take(line);) {
    }
  }

  void report(int line, std::string_view found, std::string wanted, std::string hint = {}) {
    problems_.push_back({.file = file_,
                         .line = line,
                         .found = std::string(found),
                         .wanted = std::move(wanted),
                         .hint = std::move(hint)});
  }
  bool too_many_problems() const { return problems_.size() >= before_ + most_problems; }

  /// The place of the zone that was named last.
  void note(const CalendarLine& line) {
    if (line.name == "BEGIN" && line.value == "VTIMEZONE") tzid_.clear();
    if (line.name == "TZID") tzid_ = line.value;
    if (line.name == "X-LIC-LOCATION") places_[tzid_] = line.value;
  }

  void take(const CalendarLine& line, const Structure& structure) {
    if (line.name == "BEGIN" && line.value == "VEVENT") event_ = {.line = line.line};
    if (line.name == "END" && line.value == "VEVENT") add(std::exchange(event_, {}));
    if (structure.is_in("VEVENT") && line.name != "BEGIN") take_event_line(line);
  }

  void take_event_line(const CalendarLine& line) {
    RawEvent& event = event_;
    if (line.name == "UID") event.uid = line.value;
    if (line.name == "DTSTART") event.start = line;
    if (line.name == "DTEND") event.end = line;
    if (line.name == "DURATION") event.duration = line;
    if (line.name == "RECURRENCE-ID") event.instance = line;
    if (line.name == "EXDATE") leave_out(line, event.left_out);
    if (line.name == "RDATE") add_begins(line, event.also);
    if (line.name == "STATUS" && line.value == "CANCELLED") event.free = true;
    if (line.name == "TRANSP" && line.value == "TRANSPARENT") event.free = true;
    if (line.name != "RRULE" && line.name != "EXRULE") return;
    if (event.rule || line.name == "EXRULE")
      report(line.line, line.name, "wanted one RRULE, and no EXRULE, in an event");
    else if (++repeating_ == most_busy_rules + 1)
      report(line.line, "", fmt::format("wanted at most {} repeating events", most_busy_rules),
             "export a shorter stretch of the calendar");
    event.rule = line;
  }

  /// The zone of a line's times.
  std::optional<Zone> zone_of(const CalendarLine& line, bool utc) {
    if (utc) return utc_;
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

  void add(RawEvent raw) {
    if (!raw.start) {
      report(raw.line, "VEVENT", "wanted a DTSTART in each event");
      return;
    }
    const auto start = time_of(*raw.start, raw.start->value);
    if (!start) return;
    Known known{.uid = std::move(raw.uid),
                .is_instance = raw.instance.has_value(),
                .free = raw.free,
                .event = {}};
    BusyEvent& event = known.event;
    event.zone = start->zone;
    event.begin = start->time.local;
    event.also = std::move(raw.also);
    event.left_out = std::move(raw.left_out);
    event.left_out.sort();
    if (!set_length(raw, *start, event)) return;
    if (raw.rule) {
      std::string wrong;
      event.repeats = parse_recurrence(raw.rule->value, event.zone, wrong);
      if (!event.repeats) report(raw.rule->line, raw.rule->value, wrong + " in RRULE");
    }
    if (raw.instance) note_instance(known.uid, *raw.instance);
    known_.push_back(std::move(known));
  }

  /// Each time in the list of a line; `count` of all such lines may not pass `most`.
  template <class Found>
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): a running count and its limit
  void each_time(const CalendarLine& line, std::size_t& count, std::size_t most,
                 const char* of_what, Found found) {
    for (std::string_view values = line.value; !values.empty() && !too_many_problems();) {
      const std::size_t comma = std::min(values.find(','), values.size());
      if (++count > most) {
        if (count == most + 1)
          report(line.line, "", fmt::format("wanted at most {} {}", most, of_what),
                 "export a shorter stretch of the calendar");
        return;
      }
      if (const auto time = time_of(line, values.substr(0, comma))) found(*time);
      values.remove_prefix(std::min(comma + 1, values.size()));
    }
  }

  void leave_out(const CalendarLine& line, LeftOut& from) {
    each_time(line, left_out_, most_left_out, "exceptions", [&](const Read& time) {
      if (time.time.has_clock)
        from.at.push_back(time.at);
      else
        from.on.push_back(time.time.local.on);
    });
  }

  /// RDATE: the same again at other times.
  void add_begins(const CalendarLine& line, std::vector<BusyBegin>& also) {
    each_time(line, added_, most_added, "times in RDATE", [&](const Read& time) {
      also.push_back({time.zone, time.time.local});
    });
  }

  void note_instance(const std::string& uid, const CalendarLine& line) {
    if (line.parameters.contains("RANGE"))
      report(line.line, "RANGE",
             "wanted instances moved one by one: a change of all that follow "
             "is not read here");
    std::shared_ptr<LeftOut>& moved = moved_[uid];
    if (!moved) moved = std::make_shared<LeftOut>();
    leave_out(line, *moved);
  }

  /// Instances that have an event of their own are left out of the one that repeats.
  void leave_out_instances() {
    for (auto& [uid, moved] : moved_) moved->sort();
    for (Known& known : known_)
      if (const auto moved = moved_.find(known.uid); !known.is_instance && moved != moved_.end())
        known.event.moved = moved->second;
  }

  std::string file_;
  Zone utc_ = Zone::utc();
  const Zone& home_;
  Problems& problems_;
  std::size_t before_;
  std::string tzid_;
  Places places_;
  std::map<std::string, std::optional<Zone>> zones_;
  RawEvent event_;
  std::vector<Known> known_;
  std::map<std::string, std::shared_ptr<LeftOut>> moved_;
  std::size_t repeating_ = 0;
  std::size_t left_out_ = 0;
  std::size_t added_ = 0;
};

}  // namespace

std::vector<BusyEvent> busy_events(std::string_view text, const std::string& name, const Zone& home,
                                   Problems& problems) {
  return FileReading(name, home, problems).read(text);
}

}  // namespace tackfree
