#include "tackfree/export/event_revisions.hpp"

#include "tackfree/base/fingerprint.hpp"
#include "tackfree/export/content_lines.hpp"
#include "tackfree/words/event_words.hpp"

#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr Minutes alarm_before{30};

std::string trigger(EventAlarm alarm) {
  return alarm == EventAlarm::at_begin ? "TRIGGER:PT0S"
                                       : fmt::format("TRIGGER:-PT{}M", alarm_before.count());
}

std::string body_of(const CalendarEvent& event, const EventWords& words) {
  std::string body = property("SUMMARY", words.summary);
  if (!words.lines.empty())
    body += property("DESCRIPTION", fmt::format("{}", fmt::join(words.lines, "\n")));
  body += property("CATEGORIES", event.category);
  body += folded(event.takes_time() ? "TRANSP:OPAQUE" : "TRANSP:TRANSPARENT");
  if (event.alarm)
    body += folded("BEGIN:VALARM") + folded("ACTION:DISPLAY") + folded(trigger(*event.alarm)) +
            property("DESCRIPTION", words.summary) + folded("END:VALARM");
  return body;
}

RevisedEvent revised(const Plan& plan, const CalendarEvent& event, const EventWords& words) {
  std::string body = body_of(event, words);
  EventState state{
      .uid = event.uid,
      .time = event.time,
      .summary = words.summary,
      .category = std::string(event.category),
      .content = fingerprint(utc_form(event.time.begin) + utc_form(event.time.end) + body),
      .person = event.who ? plan.job.people.at(*event.who).name : ""};
  const EventState* last = last_state(plan, event.uid);
  if (last != nullptr) {
    const bool same = !last->cancelled && last->content == state.content;
    state.sequence = last->sequence + (same ? 0 : 1);
  }
  return {std::move(state), std::move(body)};
}

std::string cancelled_body(const EventState& state) {
  return property("SUMMARY", state.summary) + property("CATEGORIES", state.category) +
         folded("STATUS:CANCELLED") + folded("TRANSP:TRANSPARENT");
}

}  // namespace

std::vector<RevisedEvent> revised_events(const Plan& plan) {
  const StepWords words(plan);
  const std::vector<CalendarEvent> events = calendar_events(plan);
  std::vector<RevisedEvent> all;
  all.reserve(events.size());
  for (const CalendarEvent& event : events)
    all.push_back(revised(plan, event, event_words(plan, words, event)));
  for (EventState& state : gone_events(plan, events)) {
    std::string body = state.cancelled ? cancelled_body(state) : "";
    all.push_back({std::move(state), std::move(body)});
  }
  return all;
}

std::vector<EventState> calendar_states(const Plan& plan) {
  std::vector<EventState> states;
  for (RevisedEvent& event : revised_events(plan)) states.push_back(std::move(event.state));
  return states;
}

}  // namespace tackfree
