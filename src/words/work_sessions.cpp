#include "tackfree/words/work_sessions.hpp"

#include "tackfree/evening/oily_rags.hpp"
#include "tackfree/words/airing_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// Gathers what one person does to one piece, in order, into lines.
class SessionLines {
 public:
  SessionLines(const Plan& plan, const StepWords& words) : plan_(plan), words_(words) {}

  void add(const WorkEntry& entry) {
    WorkLine line{.time = entry.time,
                  .work = entry.time.length(),
                  .who = entry.who,
                  .what = entry.task,
                  .steps = {},
                  .session = entry.session,
                  .first_piece = entry.first_piece};
    if (entry.step != nullptr) line.steps = {entry.step};
    // Only the person's own last lines: what they did in between stays in between.
    const auto last = std::ranges::find_if(lines_.rbegin(), lines_.rend(), [&](const WorkLine& l) {
      return l.who == line.who && (goes_with(line, l) || !is_sanding(l));
    });
    if (last == lines_.rend() || !goes_with(line, *last)) {
      lines_.push_back(std::move(line));
      return;
    }
    last->time.end = line.time.end;
    last->work += line.work;
    if (last->steps.back() != entry.step)
      last->steps.push_back(entry.step);
    else
      last->what = words_.full_title(operation(entry.step));
  }

  std::vector<WorkLine> lines() && {
    for (WorkLine& line : lines_) retitle(line);
    std::ranges::stable_sort(lines_, {}, [](const WorkLine& line) { return line.who; });
    return std::move(lines_);
  }

 private:
  const Operation& operation(const DatedStep* step) const {
    return plan_.list.operations.at(step->operation);
  }

  bool is_sanding(const WorkLine& line) const {
    return !line.steps.empty() && operation(line.steps.back()).grit.has_value();
  }

  /// The next grit of the same sanding, or the coat after its dusting off.
  bool goes_with(const WorkLine& line, const WorkLine& before) const {
    if (line.steps.empty() || before.steps.empty()) return false;
    const Operation& work = operation(line.steps.front());
    const Operation& other = operation(before.steps.back());
    if (work.batch != other.batch) return false;
    if (&work == &other) return true;
    if (other.kind == OperationKind::dust_off)
      return line.steps.front()->operation == before.steps.back()->operation + 1 &&
             work.right_after;
    return work.grit && work.kind == other.kind && work.kind != OperationKind::repair &&
           work.step == other.step && work.coat == other.coat;
  }

  void retitle(WorkLine& line) const {
    if (line.steps.size() < 2) return;
    const Operation& first = operation(line.steps.front());
    const Operation& last = operation(line.steps.back());
    if (first.kind != OperationKind::dust_off) {
      line.what = words_.full_title(first);
      if (last.grit) line.what += fmt::format(" to P{}", last.grit->p);
      if (line.steps.back()->end() > line.time.end)
        line.what += fmt::format(", not all of P{} yet", last.grit->p);
      return;
    }
    const std::string batch =
        plan_.job.batches.size() < 2
            ? ""
            : cut_inside(longest_name, plan_.job.batches.at(last.batch).name) + ": ";
    line.what = fmt::format(
        "{}dust off, then {}, {}", batch, words_.title(last),
        held_together("at " + words_.figures()
                                  .temperature(plan_.air.at(line.steps.back()->begin()).temperature)
                                  .text()));
  }

  const Plan& plan_;
  const StepWords& words_;
  std::vector<WorkLine> lines_;
};

/// Each airing to the session in which it begins; what goes on from it stays there.
void add_airing(const Plan& plan, const std::vector<AiringSpan>& spans,
                std::vector<AiringSpan> WorkSession::*to, std::vector<WorkSession>& all) {
  WorkSession* session = nullptr;
  std::optional<Instant> open_until;
  for (const AiringSpan& span : spans) {
    if (open_until != span.time.begin) {
      session = nullptr;
      for (WorkSession& each : all)
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

bool must_be_off(const DatedStep& step, const Plan& plan) {
  return has_ignition_source(plan.job) &&
         std::ranges::any_of(plan.flammable, [&](const FlammableTime& time) {
           return &plan.schedule.steps.at(time.first_step) == &step;
         });
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

std::vector<WorkSession> work_sessions(const Plan& plan, const StepWords& words) {
  std::vector<WorkSession> all;
  for (const WorkDay& day : work_days(plan, words)) {
    std::vector<std::pair<WorkSession, SessionLines>> of_day;
    for (const WorkEntry& entry : day.entries) {
      if (of_day.empty() || entry.time.begin - of_day.back().first.time.end > longest_break)
        of_day.emplace_back(
            WorkSession{.time = entry.time, .lines = {}, .airing = {}, .better_airing = {}},
            SessionLines(plan, words));
      auto& [session, lines] = of_day.back();
      session.time.end = std::max(session.time.end, entry.time.end);
      session.work += entry.time.length();
      session.typical = session.typical || (entry.step != nullptr && entry.step->on_typical_air);
      lines.add(entry);
    }
    for (auto& [session, lines] : of_day) {
      session.lines = std::move(lines).lines();
      std::set<std::size_t> people;
      for (const WorkLine& line : session.lines)
        if (line.who) people.insert(*line.who);
      session.people = std::max<std::size_t>(1, people.size());
      all.push_back(std::move(session));
    }
  }
  std::erase_if(all, [&](const WorkSession& session) { return session.time.end <= plan.now; });
  add_airing(plan, airing_of(plan), &WorkSession::airing, all);
  if (const auto better = better_habit(plan))
    add_airing(plan, airing_of(plan, *better), &WorkSession::better_airing, all);
  return all;
}

std::string session_title(const WorkSession& session, const Figures& figures) {
  return fmt::format("{}, {}: {} of work{}{}", figures.day(session.time.begin),
                     figures.clock_span(session.time), hours_text(session.work),
                     session.people > 1 ? fmt::format(", {} people", session.people) : "",
                     session.typical ? "; typical air, hours may move" : "");
}

std::string session_summary(const WorkSession& session, const Plan& plan, const StepWords& words,
                            std::size_t columns) {
  std::vector<Deed> deeds;
  for (const WorkLine& line : session.lines) add_deed(line, plan, words, deeds);
  std::vector<std::string> texts;
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

std::vector<LineWarning> warnings_of(const WorkSession& session, const Plan& plan) {
  std::vector<LineWarning> all;
  const std::vector<ShortWarning> known = short_warnings(plan);
  std::optional<std::size_t> rags;
  for (std::size_t i = 0; i < session.lines.size(); ++i) {
    const WorkLine& line = session.lines[i];
    if (leaves_rags(line, plan)) rags = i;
    for (const DatedStep* step : line.steps) {
      if (!opens_tin(*step, plan)) continue;
      const Operation& coat = plan.list.operations.at(step->operation);
      for (const ShortWarning& warning : known)
        if ((warning.word == "DANGER" || warning.key == "isocyanates") &&
            is_of_coat(warning, coat, plan))
          all.push_back({i, warning});
      if (must_be_off(*step, plan))
        all.push_back({i, {"ignition", "WARNING", off_words(plan.job)}});
    }
  }
  const auto rag_warning = std::ranges::find(known, "oily_rags", &ShortWarning::key);
  if (rags && rag_warning != known.end()) all.push_back({*rags, *rag_warning});
  return all;
}

}  // namespace tackfree
