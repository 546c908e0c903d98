#include "tackfree/words/work_days.hpp"

#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::string session_words(const Plan& plan, const Session& session, std::string_view what) {
  const std::string& coating = plan.job.coatings.at(session.coating).name;
  const std::string& method = plan.job.data.methods.at(session.method).title;
  return fmt::format("{}: {}, {}", what, cut_to(longest_name, coating), method);
}

/// Who does it, where there are several people.
std::string who_words(const Plan& plan, const std::optional<std::size_t>& who) {
  return who ? fmt::format("{}: ", cut_to(longest_name, plan.job.people.at(*who).name)) : "";
}

/// An entry without its step.
WorkEntry entry(const Plan& plan, const Interval& time, std::string task,
                const std::optional<std::size_t>& who) {
  return {.time = time, .what = who_words(plan, who) + task, .task = std::move(task), .who = who};
}

void add_session(const Plan& plan, const Session& session, std::vector<WorkEntry>& all) {
  const auto add = [&](const Interval& time, SessionWork work,
                       const std::optional<std::size_t>& who) {
    all.push_back(entry(plan, time, session_words(plan, session, words_for(work)), who));
    all.back().session = &session;
  };
  add(session.set_up, SessionWork::set_up, session.set_up_by);
  add(session.clean_up, SessionWork::clean_up, session.clean_up_by);
}

void add_step(const Plan& plan, const StepWords& words, const DatedStep& step,
              std::vector<WorkEntry>& all) {
  const Operation& op = plan.list.operations.at(step.operation);
  if (op.done) return;
  std::string what = words.full_title(op);
  if (op.kind == OperationKind::coat)
    what += ", " +
            held_together(
                "at " + words.figures().temperature(plan.air.at(step.begin()).temperature).text());
  for (std::size_t i = 0; i < step.pieces.size(); ++i) {
    const std::string part =
        step.pieces.size() < 2 ? "" : fmt::format(" ({} of {})", i + 1, step.pieces.size());
    const auto who = i < step.by.size() ? std::optional(step.by[i]) : std::nullopt;
    all.push_back(entry(plan, step.pieces[i], what + part, who));
    all.back().step = &step;
    all.back().first_piece = i == 0;
  }
}

std::vector<WorkEntry> entries(const Plan& plan, const StepWords& words) {
  std::vector<WorkEntry> all;
  for (const Session& session : plan.schedule.sessions) add_session(plan, session, all);
  for (const ToolRest& rest : plan.schedule.tool_rests) {
    const DatedStep& coat = plan.schedule.steps.at(rest.dated_step);
    if (!coat.session) continue;
    const auto who = coat.by.empty() ? std::nullopt : std::optional(coat.by.front());
    all.push_back(entry(plan, rest.cleaning,
                        session_words(plan, plan.schedule.sessions.at(*coat.session),
                                      "clean the tool before the next coat"),
                        who));
  }
  for (const DatedStep& step : plan.schedule.steps) add_step(plan, words, step, all);
  std::erase_if(all, [](const WorkEntry& each) { return each.time.length() <= Minutes(0); });
  std::stable_sort(all.begin(), all.end(),
                   [](const WorkEntry& a, const WorkEntry& b) { return a.time < b.time; });
  return all;
}

/// Each airing to the day on which it begins; what goes on from it, past midnight too, stays there.
void airing_to_days(const Plan& plan, const std::vector<AiringSpan>& spans, const Figures& figures,
                    std::vector<AiringSpan> WorkDay::*to, std::vector<WorkDay>& all) {
  WorkDay* day = nullptr;
  Instant open_until;
  for (const AiringSpan& span : spans) {
    if (span.time.begin != open_until) {
      const auto found = std::ranges::find(all, figures.local_date(span.time.begin), &WorkDay::on);
      day = found == all.end() ? nullptr : &*found;
    }
    open_until = span.time.end;
    if (day != nullptr && span.time.end > plan.now) (day->*to).push_back(span);
  }
}

}  // namespace

std::string_view words_for(KindOfWork kind) {
  if (const auto* operation = std::get_if<OperationKind>(&kind)) return word_for(*operation);
  return std::get<SessionWork>(kind) == SessionWork::set_up ? "set up" : "clean up";
}

std::vector<WorkDay> work_days(const Plan& plan, const StepWords& words) {
  std::vector<WorkDay> result;
  for (WorkEntry& each : entries(plan, words)) {
    const Date on = words.figures().local_date(each.time.begin);
    if (result.empty() || result.back().on != on) result.push_back({.on = on});
    result.back().work += each.time.length();
    result.back().typical = result.back().typical || (each.step && each.step->on_typical_air);
    result.back().entries.push_back(std::move(each));
  }
  airing_to_days(plan, airing_of(plan), words.figures(), &WorkDay::airing, result);
  if (const auto better = better_habit(plan))
    airing_to_days(plan, airing_of(plan, *better), words.figures(), &WorkDay::better_airing,
                   result);
  return result;
}

}  // namespace tackfree
