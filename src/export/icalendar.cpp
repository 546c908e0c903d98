#include "tackfree/export/icalendar.hpp"

#include "tackfree/export/content_lines.hpp"
#include "tackfree/export/event_revisions.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/event_words.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string event_text(const RevisedEvent& event, Instant now) {
  const EventState& state = event.state;
  return folded("BEGIN:VEVENT") + property("UID", state.uid) + folded("DTSTAMP:" + utc_form(now)) +
         folded(fmt::format("SEQUENCE:{}", state.sequence)) +
         folded("DTSTART:" + utc_form(state.time.begin)) +
         folded("DTEND:" + utc_form(state.time.end)) + event.body + folded("END:VEVENT");
}

}  // namespace

std::string calendar_report(const Plan& plan, std::optional<std::size_t> who) {
  std::string text = folded("BEGIN:VCALENDAR") + folded("VERSION:2.0") +
                     folded("PRODID:-//tackfree//wood finishing plan 1//EN") +
                     folded("CALSCALE:GREGORIAN") +
                     property("X-WR-CALNAME", cut_to(longest_summary, plan.job.name));
  const std::string person = who && plan.job.people.size() > 1 ? plan.job.people.at(*who).name : "";
  for (const RevisedEvent& event : revised_events(plan))
    if (event.state.person == person && !event.body.empty()) text += event_text(event, plan.now);
  return text + folded("END:VCALENDAR");
}

}  // namespace tackfree
