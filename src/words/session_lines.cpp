#include "tackfree/words/session_lines.hpp"

#include "tackfree/evening/oily_rags.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/vapour_left_words.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

const Operation& operation_of(const Plan& plan, const DatedStep* step) {
  return plan.list.operations.at(step->operation);
}

std::string coat_after_dusting(const Plan& plan, const StepWords& words, const DatedStep& step) {
  const Operation& coat = operation_of(plan, &step);
  const std::string batch =
      plan.job.batches.size() < 2
          ? ""
          : cut_inside(longest_name, plan.job.batches.at(coat.batch).name) + ": ";
  return fmt::format("{}dust off, then {}{}", batch, words.title(coat),
                     coat_conditions(plan, words, step));
}

std::string line_title(const Plan& plan, const StepWords& words, const WorkTask& task,
                       const std::vector<const DatedStep*>& steps) {
  if (task.is_of_tools()) return tools_words(plan, task);
  const DatedStep& last = *steps.back();
  const Operation& work = operation_of(plan, &last);
  if (steps.size() == 1) {
    const bool one_piece = task.work == last.pieces.at(task.first_piece).length();
    return step_title(plan, words, last,
                      one_piece ? std::optional(task.first_piece) : std::nullopt);
  }
  if (work.kind == OperationKind::coat) return coat_after_dusting(plan, words, last);
  std::string what = words.full_title(operation_of(plan, steps.front()));
  if (work.grit) what += fmt::format(" to P{}", work.grit->p);
  if (last.end() > task.time.end && work.grit)
    what += fmt::format(", not all of P{} yet", work.grit->p);
  return what;
}

WorkLine line_of(const Plan& plan, const StepWords& words, const WorkTask& task) {
  WorkLine line{.time = task.time,
                .work = task.work,
                .who = task.who,
                .what = {},
                .steps = {},
                .session = nullptr,
                .first_piece = task.first_piece == 0};
  for (const std::size_t step : task.steps) line.steps.push_back(&plan.schedule.steps.at(step));
  line.what = line_title(plan, words, task, line.steps);
  if (task.is_of_tools() && task.coating_session) {
    const Session& session = plan.schedule.sessions.at(*task.coating_session);
    // Cleaning between two coats ends no session.
    if (task.time == session.set_up || task.time == session.clean_up) line.session = &session;
  }
  return line;
}

/// Grits that go from one batch to the next and back are a line for each batch: both say so.
void mark_turns(std::vector<WorkLine>& lines) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto overlaps = [&](std::size_t other) {
      return other < lines.size() && lines[other].who == lines[i].who &&
             lines[i].time.begin < lines[other].time.end &&
             lines[other].time.begin < lines[i].time.end;
    };
    if (overlaps(i + 1) || overlaps(i - 1)) lines[i].what += ", in turns with other pieces";
  }
}

/// Each airing to the session in which it begins; what goes on from it stays there.
void add_airing(const Plan& plan, const std::vector<AiringSpan>& spans,
                std::vector<AiringSpan> SessionLines::*to, std::vector<SessionLines>& all) {
  SessionLines* session = nullptr;
  std::optional<Instant> open_until;
  for (const AiringSpan& span : spans) {
    if (open_until != span.time.begin) {
      session = nullptr;
      for (SessionLines& each : all)
        if (each.time.begin <= span.time.begin && span.time.begin < each.time.end) session = &each;
    }
    open_until = span.time.end;
    if (session != nullptr && span.time.end > plan.now) (session->*to).push_back(span);
  }
}

/// A deed and the pieces that it is done to.
struct Deed {
  std::string what;
  std::vector<std::string> places;
  bool coats = false;
};

void add_deed(const WorkLine& line, const Plan& plan, const StepWords& words,
              std::vector<Deed>& deeds) {
  if (line.steps.empty()) return;
  const Operation& last = plan.list.operations.at(line.steps.back()->operation);
  if (last.kind == OperationKind::wipe_off || last.kind == OperationKind::dust_off) return;
  const Operation& first = plan.list.operations.at(line.steps.front()->operation);
  std::string what = capitalized(words.deed(first.grit ? first : last));
  if (first.grit && line.steps.size() > 1 && last.grit)
    what += fmt::format(" to P{}", last.grit->p);
  std::string place = words.place(last);
  if (line.who) {
    const std::string who = cut_to(longest_name, plan.job.people.at(*line.who).name);
    if (place.ends_with(')'))
      place.replace(place.size() - 1, 1, ", " + who + ")");
    else
      place += fmt::format("{}({})", place.empty() ? "" : " ", who);
  }
  auto found = std::ranges::find(deeds, what, &Deed::what);
  if (found == deeds.end()) {
    deeds.push_back({std::move(what), {}, last.kind == OperationKind::coat});
    found = deeds.end() - 1;
  }
  if (!place.empty() && std::ranges::find(found->places, place) == found->places.end())
    found->places.push_back(std::move(place));
}

std::string text_of(const Deed& deed) {
  constexpr std::size_t most_places = 4;
  if (deed.places.empty()) return deed.what + ".";
  std::vector<std::string> shown = deed.places;
  const std::size_t more = shown.size() > most_places ? shown.size() - most_places + 1 : 0;
  shown.resize(shown.size() - more);
  return fmt::format("{}: {}{}.", deed.what, fmt::join(shown, "; "),
                     more > 0 ? fmt::format("; and {} more", more) : "");
}

/// Does the line leave rags or dust that heat themselves? Clean-up leaves the cloths.
bool leaves_rags(const WorkLine& line, const Plan& plan) {
  if (line.session != nullptr)
    return line.time == line.session->clean_up &&
           plan.job.coatings.at(line.session->coating).dries_by_oxidation;
  return std::ranges::any_of(line.steps, [&](const DatedStep* step) {
    return leaves_oily_rags(plan.job, plan.list, plan.list.operations.at(step->operation));
  });
}

/// Is the step the first coat of a tin?
bool opens_tin(const DatedStep& step, const Plan& plan) {
  return step.session && !plan.schedule.sessions.at(*step.session).steps.empty() &&
         &plan.schedule.steps.at(plan.schedule.sessions.at(*step.session).steps.front()) == &step;
}

/// The time that begins with this line: the set-up for coats with vapour that burns, or the first
/// of them where nothing is set up.
const FlammableTime* flammable_from(const WorkLine& line, const Plan& plan) {
  if (!has_ignition_source(plan.job)) return nullptr;
  const auto begins = [&](const FlammableTime& time) {
    const DatedStep& first = plan.schedule.steps.at(time.first_step);
    const Session* session = first.session ? &plan.schedule.sessions.at(*first.session) : nullptr;
    if (session == nullptr || session->set_up.length() <= Minutes(0))
      return line.first_piece && std::ranges::find(line.steps, &first) != line.steps.end();
    return line.session == session && line.time == session->set_up;
  };
  const auto found = std::ranges::find_if(plan.flammable, begins);
  return found == plan.flammable.end() ? nullptr : &*found;
}

/// Does a caution that comes first belong to the coating of this coat, or to the way it is put on?
bool is_of_coat(const ShortWarning& warning, const Operation& coat, const Plan& plan) {
  if (warning.key == explosion_key) return true;
  const auto names = [&](const std::vector<std::string>& keys) {
    return std::ranges::find(keys, warning.key) != keys.end();
  };
  return (coat.coating && names(plan.job.coatings.at(*coat.coating).words.cautions)) ||
         (coat.method && names(plan.job.data.methods.at(*coat.method).cautions));
}

}  // namespace

std::vector<SessionLines> session_lines(const Plan& plan, const StepWords& words) {
  std::vector<SessionLines> all;
  for (const WorkSession& session : work_sessions(plan.list, plan.schedule)) {
    if (session.time.end <= plan.now) continue;
    SessionLines told{.time = session.time,
                      .people = std::max<std::size_t>(1, session.people.size()),
                      .lines = {},
                      .airing = {},
                      .better_airing = {}};
    for (const WorkTask& task : session.tasks) {
      told.lines.push_back(line_of(plan, words, task));
      told.work += task.work;
      for (const DatedStep* step : told.lines.back().steps)
        told.typical = told.typical || step->on_typical_air;
    }
    std::ranges::stable_sort(told.lines, {}, &WorkLine::who);
    mark_turns(told.lines);
    all.push_back(std::move(told));
  }
  add_airing(plan, airing_of(plan), &SessionLines::airing, all);
  if (const auto better = better_habit(plan))
    add_airing(plan, airing_of(plan, *better), &SessionLines::better_airing, all);
  return all;
}

std::string session_heading(const SessionLines& session, const Figures& figures) {
  return fmt::format("{}, {}: {} of work{}{}", figures.day(session.time.begin),
                     figures.clock_span(session.time), hours_text(session.work),
                     session.people > 1 ? fmt::format(", {} people", session.people) : "",
                     session.typical ? "; typical air, hours may move" : "");
}

std::string session_summary(const SessionLines& session, const Plan& plan, const StepWords& words,
                            std::size_t columns) {
  std::vector<Deed> deeds;
  for (const WorkLine& line : session.lines) add_deed(line, plan, words, deeds);
  std::vector<std::string> texts;
  texts.reserve(deeds.size());
  for (const Deed& deed : deeds) texts.push_back(text_of(deed));
  std::vector<bool> shown(deeds.size(), false);
  std::size_t used = 0, hidden = 0;
  for (const bool coats : {true, false})
    for (std::size_t i = 0; i < deeds.size(); ++i) {
      if (deeds[i].coats != coats) continue;
      const std::size_t width = display_width(texts[i]) + 1;
      shown[i] = used == 0 || used + width <= columns;
      if (shown[i])
        used += width;
      else
        ++hidden;
    }
  std::vector<std::string> told;
  for (std::size_t i = 0; i < texts.size(); ++i)
    if (shown[i]) told.push_back(cut_to(columns, texts[i]));
  if (hidden > 0)
    told.push_back(
        fmt::format("And {}.", count_text(static_cast<double>(hidden), "more job", "more jobs")));
  return fmt::format("{}", fmt::join(told, " "));
}

std::vector<LineWarning> warnings_of(const SessionLines& session, const Plan& plan) {
  std::vector<LineWarning> all;
  const std::vector<ShortWarning> known = short_warnings(plan);
  const Figures figures(plan.job);
  std::string vapour_told;
  std::optional<std::size_t> rags;
  for (std::size_t i = 0; i < session.lines.size(); ++i) {
    const WorkLine& line = session.lines[i];
    if (leaves_rags(line, plan)) rags = i;
    if (const FlammableTime* time = flammable_from(line, plan))
      all.push_back({i, {"ignition", "WARNING", off_words(plan, *time)}});
    if (!line.steps.empty()) {
      std::string vapour = vapour_left_words(plan, *line.steps.front(), figures);
      if (!vapour.empty() && vapour != vapour_told)
        all.push_back({i, {"vapour", "WARNING", vapour}});
      vapour_told = std::move(vapour);
    }
    for (const DatedStep* step : line.steps) {
      if (!opens_tin(*step, plan)) continue;
      const Operation& coat = plan.list.operations.at(step->operation);
      for (const ShortWarning& warning : known)
        if ((warning.word == "DANGER" || warning.key == "isocyanates") &&
            is_of_coat(warning, coat, plan))
          all.push_back({i, warning});
    }
  }
  const auto rag_warning = std::ranges::find(known, "oily_rags", &ShortWarning::key);
  if (rags && rag_warning != known.end()) all.push_back({*rags, *rag_warning});
  return all;
}

}  // namespace tackfree
