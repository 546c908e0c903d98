#include "tackfree/export/icalendar.hpp"

#include "tackfree/base/fingerprint.hpp"
#include "tackfree/base/name.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/how_lines.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t longest_line = 75;  // octets, RFC 5545, section 3.1
constexpr std::size_t longest_uid_part = 80;
constexpr std::size_t longest_summary = 80;
constexpr Minutes alarm_before{30};
constexpr Minutes milestone_length{15};

/// `20270410T223000Z`
std::string utc_form(Instant at) {
  std::string text = iso_utc(at);
  std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
  return text;
}

/// A key whose parts are slugs joined by dots; one that is too long ends in a hash of all of it.
std::string uid_part(std::string_view key) {
  std::string text;
  std::string_view rest = key;
  while (true) {
    const std::size_t slash = std::min(rest.find('/'), rest.size());
    text += slug(rest.substr(0, slash));
    if (slash == rest.size()) break;
    text += '.';
    rest.remove_prefix(slash + 1);
  }
  if (text.size() <= longest_uid_part) return text;
  return fmt::format("{}-{}", text.substr(0, longest_uid_part - 17), fingerprint(key));
}

/// What one event says.
struct Event {
  std::string key;
  Interval time;
  std::string summary;
  std::vector<std::string> description;  ///< lines
  std::string category;
  bool takes_time = true;
  std::string alarm;  ///< its trigger; empty for none
};

/// A property whose value is text, whoever wrote it: a person, or a file of a last plan.
std::string property(std::string_view name, std::string_view text) {
  return folded(fmt::format("{}:{}", name, escaped_text(text)));
}

class Calendar {
 public:
  explicit Calendar(const Plan& plan) : plan_(plan) {
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//tackfree//wood finishing plan 1//EN");
    line("CALSCALE:GREGORIAN");
    text_ += property("X-WR-CALNAME", cut_to(longest_summary, plan.job.name));
  }

  /// What is past is left out, unless the last plan had it later: then it moves to where it was.
  void add(const Event& event) {
    const std::string uid = uid_of(event.key);
    const EventState* last = last_of(uid);
    if (event.time.end <= plan_.now &&
        (last == nullptr || last->cancelled || last->time.end <= plan_.now))
      return;
    const std::string summary = cut_to(longest_summary, event.summary);
    std::string body = property("SUMMARY", summary);
    if (!event.description.empty())
      body += property("DESCRIPTION", fmt::format("{}", fmt::join(event.description, "\n")));
    body += property("CATEGORIES", event.category);
    body += folded(event.takes_time ? "TRANSP:OPAQUE" : "TRANSP:TRANSPARENT");
    if (!event.alarm.empty())
      body += folded("BEGIN:VALARM") + folded("ACTION:DISPLAY") + folded("TRIGGER" + event.alarm) +
              property("DESCRIPTION", summary) + folded("END:VALARM");
    EventState state{uid, event.time, summary, event.category,
                     fingerprint(utc_form(event.time.begin) + utc_form(event.time.end) + body)};
    if (last != nullptr) {
      const bool same = !last->cancelled && last->content == state.content;
      state.sequence = last->sequence + (same ? 0 : 1);
    }
    write(state, body);
  }

  /// Events to come of the last plan that are gone are cancelled; those past stay as they are.
  void cancel_rest(Feed feed) {
    if (!plan_.job.last_plan) return;
    for (EventState state : plan_.job.last_plan->events) {
      const bool waits = is_of_waits(state.category);
      if (written_.contains(state.uid) || (feed == Feed::work && waits) ||
          (feed == Feed::waits && !waits))
        continue;
      if (!state.cancelled && state.time.end <= plan_.now) {
        states_.push_back(std::move(state));
        continue;
      }
      if (!state.cancelled) ++state.sequence;
      state.cancelled = true;
      write(state, property("SUMMARY", state.summary) + property("CATEGORIES", state.category) +
                       folded("STATUS:CANCELLED") + folded("TRANSP:TRANSPARENT"));
    }
  }

  std::vector<EventState> states() && { return std::move(states_); }

  std::string text() && {
    line("END:VCALENDAR");
    return std::move(text_);
  }

 private:
  void line(const std::string& content) { text_ += folded(content); }

  static bool is_of_waits(std::string_view category) {
    return category == "airing" || category == "waiting" || category == "milestone";
  }

  const EventState* last_of(const std::string& uid) const {
    if (!plan_.job.last_plan) return nullptr;
    const auto& events = plan_.job.last_plan->events;
    const auto found = std::ranges::find(events, uid, &EventState::uid);
    return found == events.end() ? nullptr : &*found;
  }

  void write(const EventState& state, const std::string& body) {
    line("BEGIN:VEVENT");
    text_ += property("UID", state.uid);
    line("DTSTAMP:" + utc_form(plan_.now));
    line(fmt::format("SEQUENCE:{}", state.sequence));
    line("DTSTART:" + utc_form(state.time.begin));
    line("DTEND:" + utc_form(state.time.end));
    text_ += body;
    line("END:VEVENT");
    written_.insert(state.uid);
    states_.push_back(state);
  }

  /// Names that differ only in signs give the same key: later ones are numbered.
  std::string uid_of(const std::string& key) {
    std::string part = uid_part(key);
    for (int number = 2; !used_.insert(part).second; ++number)
      part = fmt::format("{}-again-{}", uid_part(key), number);
    return fmt::format("{}.{}@tackfree.invalid", part, uid_part(plan_.job.id));
  }

  const Plan& plan_;
  std::set<std::string> used_, written_;
  std::vector<EventState> states_;
  std::string text_;
};

std::string_view category_of(OperationKind kind) {
  switch (kind) {
    case OperationKind::coat:
    case OperationKind::wipe_off:
      return "coating";
    case OperationKind::sand_bare:
    case OperationKind::sand_raised:
    case OperationKind::sand_filler:
    case OperationKind::sand_between:
      return "sanding";
    case OperationKind::raise_grain:
    case OperationKind::fill_pores:
    case OperationKind::dust_off:
    case OperationKind::repair:
      return "preparing";
    case OperationKind::turn_over:
    case OperationKind::fit_hardware:
      break;
  }
  return "handling";
}

/// The piece, with the set-up before a session's first coat and the clean-up after its last.
Interval with_session(const Plan& plan, std::size_t step, Interval piece) {
  const DatedStep& dated = plan.schedule.steps.at(step);
  if (!dated.session) return piece;
  const Session& session = plan.schedule.sessions.at(*dated.session);
  if (session.steps.front() == step) piece.begin = std::min(piece.begin, session.set_up.begin);
  if (session.steps.back() == step) piece.end = std::max(piece.end, session.clean_up.end);
  return piece;
}

std::string_view first_sentence(std::string_view text) {
  const std::size_t end = text.find(". ");
  return end == std::string_view::npos ? text : text.substr(0, end + 1);
}

std::vector<std::string> description(const Plan& plan, const StepWords& words,
                                     const DatedStep& step) {
  const Operation& op = plan.list.operations.at(step.operation);
  std::vector<std::string> lines;
  if (const std::string pour = words.pour(op); !pour.empty()) lines.push_back("Pour " + pour);
  for (std::string& how : how_lines(plan, op)) lines.push_back(std::move(how));
  if (const std::string why = words.why(step); !why.empty()) lines.push_back("Why now: " + why);
  if (step.on_typical_air) lines.emplace_back("Rests on typical air: the hour may move.");
  if (op.kind != OperationKind::coat) return lines;
  for (const Caution& caution : caution_texts(plan))
    lines.push_back(fmt::format("{}: {}", caution.word, first_sentence(caution.hazard)));
  lines.push_back(plan.job.data.texts.deference);
  return lines;
}

void add_step(Calendar& calendar, const Plan& plan, const StepWords& words, std::size_t index) {
  const DatedStep& step = plan.schedule.steps.at(index);
  const Operation& op = plan.list.operations.at(step.operation);
  for (std::size_t i = 0; i < step.pieces.size(); ++i) {
    const Interval time = with_session(plan, index, step.pieces[i]);
    if (time.end <= time.begin) continue;
    Event event;
    event.key = i == 0 ? op.key : fmt::format("{}/{}", op.key, i + 1);
    event.time = time;
    event.summary = words.full_title(op);
    if (step.pieces.size() > 1)
      event.summary += fmt::format(" ({} of {})", i + 1, step.pieces.size());
    event.description = description(plan, words, step);
    event.category = category_of(op.kind);
    if (time.begin > plan.now) event.alarm = fmt::format(":-PT{}M", alarm_before.count());
    calendar.add(event);
  }
}

/// What stands with each airing of a habit that is too little for the plan.
std::string too_little_note(const Plan& plan) {
  const auto better = better_habit(plan);
  return fmt::format("This airing is too little for these vapours by this estimate{}: {}.",
                     uncounted_clause(*plan.room),
                     better
                         ? fmt::format("better {}, and no shorter than here", words_for(*better))
                         : "nothing else that was tried serves. Coat less at a time, or outdoors");
}

/// One event for each way the room is open after a stretch of coating, known by its first coat.
void add_airing(Calendar& calendar, const Plan& plan, const StepWords& words,
                const StretchJudgement& stretch) {
  constexpr std::array<std::string_view, 4> keys{"closed", "ajar", "open", "open and fan"};
  const Operation& first =
      plan.list.operations.at(plan.schedule.steps.at(stretch.steps.front()).operation);
  for (const AiringSpan& span : stretch.airing) {
    Event event;
    event.key =
        fmt::format("{}/airing/{}", first.key, keys.at(static_cast<std::size_t>(span.opening)));
    event.time = span.time;
    event.summary =
        fmt::format("Airing: {} {} to {}", words_for(span.opening),
                    words.figures().clock(span.time.begin), words.figures().clock(span.time.end));
    event.description = {fmt::format("For {}.", words.full_title(first))};
    if (plan.room->verdict == HabitVerdict::too_little) {
      event.summary += ", too little: see the note";
      event.description.push_back(too_little_note(plan));
    }
    if (stretch.under_limit_at)
      event.description.push_back(fmt::format("By this estimate below the 8-hour limits{} from {}.",
                                              uncounted_clause(*plan.room),
                                              words.figures().moment(*stretch.under_limit_at)));
    event.description.push_back(plan.job.data.texts.deference);
    event.category = "airing";
    event.alarm = ";RELATED=END:PT0S";
    event.takes_time = false;
    calendar.add(event);
  }
}

/// An alarm at `at`, or at the beginning of the person's next hours; none where there are no more.
std::string alarm_in_hours(const Plan& plan, Instant at) {
  for (const Interval& hours : plan.course.working)
    if (hours.end > at)
      return hours.begin <= at ? ":PT0S" : ";VALUE=DATE-TIME:" + utc_form(hours.begin);
  return {};
}

/// When the work after a coat may go on, as far as drying goes.
void add_wait_end(Calendar& calendar, const Plan& plan, const StepWords& words,
                  const DryingCourse& drying) {
  const Operation& coat =
      plan.list.operations.at(plan.schedule.steps.at(drying.dated_step).operation);
  Event event;
  event.key = fmt::format("{}/wait-end", coat.key);
  event.time = {drying.time.end, drying.time.end + milestone_length};
  event.summary = fmt::format("{}: {}", words.full_title(coat), reached_words(drying.towards));
  event.description = {fmt::format("It went on {}.", words.figures().moment(drying.time.begin)),
                       "By this estimate. Try it where it does not show before you go on."};
  event.category = "waiting";
  event.takes_time = false;
  event.alarm = alarm_in_hours(plan, drying.time.end);
  calendar.add(event);
}

void add_milestone(Calendar& calendar, const Plan& plan, const DatedOutcome& outcome) {
  if (!outcome.at) return;
  const std::string& batch = plan.job.batches.at(outcome.batch).name;
  Event event;
  event.key = fmt::format("{}/milestone/{}", batch, word_for(outcome.stage));
  event.time = {*outcome.at, *outcome.at + milestone_length};
  event.summary =
      fmt::format("{}: {}", cut_to(longest_summary / 2, batch), reached_words(outcome.stage));
  event.category = "milestone";
  event.takes_time = false;
  calendar.add(event);
}

Calendar calendar_of(const Plan& plan, Feed feed) {
  const StepWords words(plan);
  Calendar calendar(plan);
  if (feed != Feed::waits)
    for (std::size_t step = 0; step < plan.schedule.steps.size(); ++step)
      add_step(calendar, plan, words, step);
  if (feed != Feed::work) {
    if (plan.room)
      for (const StretchJudgement& stretch : plan.room->stretches)
        add_airing(calendar, plan, words, stretch);
    for (const DryingCourse& drying : plan.course.drying)
      add_wait_end(calendar, plan, words, drying);
    for (const DatedOutcome& outcome : plan.schedule.outcomes)
      add_milestone(calendar, plan, outcome);
  }
  calendar.cancel_rest(feed);
  return calendar;
}

}  // namespace

std::string folded(std::string_view content_line) {
  std::string text;
  std::size_t room = longest_line;
  while (true) {
    const std::string_view head = head_of(content_line, room);
    text.append(head).append("\r\n");
    content_line.remove_prefix(head.size());
    if (content_line.empty()) return text;
    text += ' ';
    room = longest_line - 1;
  }
}

std::string escaped_text(std::string_view text) {
  std::string result;
  while (true) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    for (const char c : clean(text.substr(0, end))) {
      if (c == '\\' || c == ';' || c == ',') result += '\\';
      result += c;
    }
    if (end == text.size()) return result;
    result += "\\n";
    text.remove_prefix(end + 1);
  }
}

std::string calendar_report(const Plan& plan, Feed feed) { return calendar_of(plan, feed).text(); }

std::vector<EventState> calendar_states(const Plan& plan) {
  return calendar_of(plan, Feed::all).states();
}

}  // namespace tackfree
