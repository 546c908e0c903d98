#include "tackfree/schedule/tool_rests.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr Minutes lies_open{30};           // assumed
constexpr Minutes keeps_wrapped{12 * 60};  // assumed

bool is_cloth(const Method& method) { return method.key == "wipe"; }

/// A cloth with oil on it heats itself where it is shut in; what hardens in its pot hardens there.
bool may_be_wrapped(const Coating& coating, const Method& method, Minutes pause) {
  return !coating.pot_life && !method.sprayed && !is_cloth(method) && pause <= keeps_wrapped;
}

std::string_view tool_word(const Method& method) {
  if (method.sprayed) return "gun";
  if (is_cloth(method)) return "cloth";
  return method.applicator_each_session ? "roller" : "brush";
}

}  // namespace

std::vector<ToolRest> tool_rests(const Job& job, const OperationList& list,
                                 const Schedule& schedule) {
  std::vector<ToolRest> rests;
  for (const Session& session : schedule.sessions) {
    const Coating& coating = job.coatings.at(session.coating);
    for (std::size_t i = 1; i < session.steps.size(); ++i) {
      const DatedStep& before = schedule.steps[session.steps[i - 1]];
      const Interval pause{before.dries_from.value_or(before.end()),
                           schedule.steps[session.steps[i]].begin()};
      if (pause.length() <= lies_open) continue;
      const Method& method = job.data.methods.at(list.operations[before.operation].method.value());
      ToolRest rest{.dated_step = session.steps[i - 1], .pause = pause};
      rest.wrapped = may_be_wrapped(coating, method, pause.length());
      const Minutes cleaning = std::min(whole_minutes_up(coating.clean_up.value), pause.length());
      rest.cleaning = {pause.begin, pause.begin + (rest.wrapped ? Minutes(0) : cleaning)};
      rests.push_back(rest);
    }
  }
  return rests;
}

std::string tool_rest_words(const Job& job, const OperationList& list, const Schedule& schedule,
                            const ToolRest& rest) {
  const Operation& coat = list.operations[schedule.steps[rest.dated_step].operation];
  const Method& method = job.data.methods.at(coat.method.value());
  const std::string_view tool = tool_word(method);
  const double wait = to_duration(rest.pause.length()).in(hours);
  if (rest.wrapped)
    return fmt::format("Wrap the {} airtight: its next coat is {:.1f} h off, and it would dry.",
                       tool, wait);
  if (is_cloth(method))
    return fmt::format(
        "Take a new cloth for the next coat, {:.1f} h from now; this one goes where "
        "used cloths go.",
        wait);
  const std::string again = method.applicator_each_session ? ", and take a new sleeve then" : "";
  return fmt::format("Clean the {} now{}: its next coat is {:.1f} h off, and it would harden.",
                     tool, again, wait);
}

}  // namespace tackfree
