#include "tackfree/words/look_words.hpp"

#include "tackfree/plan/due_dates.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/note_words.hpp"
#include "tackfree/words/unplaced_words.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Without the way out and the counts of lesser reasons.
std::string first_reason(const std::string& why) {
  std::size_t end = why.find(';');
  for (const std::string_view next :
       {", too ", ", other steps", ", no coating", ", quiet", ", set"})
    end = std::min(end, why.find(next));
  return why.substr(0, end);
}

void add_unplaced(const Plan& plan, const StepWords& words, std::vector<std::string>& all) {
  std::size_t waiting = 0;
  for (const Unplaced& unplaced : plan.schedule.unplaced) {
    if (unplaced.by == HeldBy::previous_step) {
      ++waiting;
      continue;
    }
    const std::string why = unplaced_words(unplaced, plan);
    all.push_back(fmt::format("No time for {}: {}.",
                              words.full_title(plan.list.operations.at(unplaced.operation)),
                              first_reason(why)));
  }
  if (waiting == 0) return;
  const std::string told = count_text(static_cast<double>(waiting), "more step", "more steps");
  if (all.empty())
    all.push_back(fmt::format("{} without a time.", told));
  else
    all.back() += fmt::format(" {} behind it.", told);
}

void add_late(const Plan& plan, const Figures& figures, std::vector<std::string>& all) {
  for (const DueDate& date : due_dates(plan)) {
    if (date.in_time()) continue;
    const bool whole_day = figures.zone().local(date.due).minute_of_day == 0;
    const std::string due =
        whole_day ? figures.day(date.due - Minutes(1)) : figures.moment(date.due);
    const std::string name = cut_inside(longest_name, plan.job.batches.at(date.batch).name);
    const bool work_decides = date.finished() && *date.finished() > *date.ready;
    all.push_back(
        date.finished()
            ? fmt::format("{} is due {}, and {} {}: late by {}.", name, due,
                          work_decides ? "the last work on it ends" : "ready",
                          figures.moment(work_decides ? *date.finished()
                                                      : figures.full_hour_up(*date.ready)),
                          wait_text(to_duration(date.late_by())))
            : fmt::format("{} is due {}, and is not finished within this plan.", name, due));
  }
}

void add_cold(const Plan& plan, const Figures& figures, std::vector<std::string>& all) {
  if (!plan.cold_airing) return;
  const ColdAiring& cold = *plan.cold_airing;
  if (cold.too_cold())
    all.push_back(fmt::format("Airing cools the room to {} by {}. Wet coats need at least {}.",
                              figures.temperature(cold.room).text(), figures.moment(cold.at),
                              figures.temperature(cold.bears).text()));
  if (cold.dewy())
    all.push_back(fmt::format("Airing lets moisture settle in the wet coat on {}.",
                              figures.moment(cold.dew_at)));
}

void add_faults(const Plan& plan, const StepWords& words, std::vector<std::string>& all) {
  for (const LogEntry& entry : plan.job.history.entries) {
    if (!entry.fault) continue;
    for (const Operation& op : plan.list.operations)
      if (op.key == entry.step)
        all.push_back(fmt::format("{}: {}, seen {}.", capitalized(words.full_title(op)),
                                  words_for(*entry.fault), words.figures().moment(entry.at)));
  }
}

/// The first lot says it for all.
bool is_of_later_lot(const Note& note, const Job& job) {
  const auto* film = std::get_if<FilmNote>(&note);
  if (film == nullptr || film->batch == 0) return false;
  const std::string& lot_of = job.batches.at(film->batch).rules.lot_of;
  return !lot_of.empty() && job.batches.at(film->batch - 1).rules.lot_of == lot_of;
}

}  // namespace

std::vector<std::string> things_to_look_at(const Plan& plan, const StepWords& words) {
  const Figures& figures = words.figures();
  std::vector<std::string> all;
  add_unplaced(plan, words, all);
  add_late(plan, figures, all);
  add_cold(plan, figures, all);
  add_faults(plan, words, all);
  for (const Note& note : plan.notes)
    if (may_ruin(note) && !is_of_later_lot(note, plan.job))
      all.push_back(first_sentence(note_text(note, plan.job, plan.list, figures)));
  for (std::size_t coating = 0; coating < plan.tins_short.size(); ++coating)
    if (plan.tins_short[coating] > Volume())
      all.push_back(fmt::format("The log takes more {} than there was: log the tin it came from.",
                                cut_to(longest_name, plan.job.coatings.at(coating).name)));
  if (!plan.job.history.torn.empty())
    all.emplace_back("The last line of the log was cut off: log it again.");
  return all;
}

}  // namespace tackfree
