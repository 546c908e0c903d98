#include "tackfree/words/session_words.hpp"

#include "tackfree/words/display_text.hpp"
#include "tackfree/words/work_entries.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// One kind of work, and the pieces that it is done to.
struct Topic {
  std::string what;
  std::vector<std::string> pieces;
  int place = 0;  ///< lower ones are said first
  std::string text() const { return fmt::format("{}: {}", what, fmt::join(pieces, ", ")); }
};

enum Place { coats_first, then_work, then_handling, last };

class SessionTitle {
 public:
  SessionTitle(const Plan& plan, const StepWords& words) : plan_(plan), words_(words) {}

  std::string of(const WorkSession& session, std::size_t columns) {
    const bool all_done = std::ranges::all_of(
        session.tasks, [&](const WorkTask& task) { return task.is_of_tools() || is_done(task); });
    coats_ = std::ranges::any_of(session.tasks, [](const WorkTask& task) {
      return task.kind == KindOfWork(OperationKind::coat);
    });
    for (const WorkTask& task : session.tasks)
      if (!task.is_of_tools() && (all_done || !is_done(task))) add(task);
    std::ranges::stable_sort(topics_, {}, &Topic::place);
    // Dusting and wiping off go without saying beside other work.
    while (topics_.size() > 1 && topics_.back().place == last) topics_.pop_back();
    if (topics_.empty()) return {};
    std::string title = people_words(plan_, session) + capitalised(topics_.front().text());
    constexpr std::string_view more = "; and more";
    for (std::size_t i = 1; i < topics_.size(); ++i) {
      const std::size_t room = columns - (i + 1 < topics_.size() ? more.size() : 0);
      std::string next = "; " + topics_[i].text();
      if (display_width(title + next) > room) next = "; " + topics_[i].what;
      if (display_width(title + next) > room) return cut_to(columns, title + std::string(more));
      title += next;
    }
    return cut_to(columns, title);
  }

 private:
  const Operation& operation(std::size_t step) const {
    return plan_.list.operations.at(plan_.schedule.steps.at(step).operation);
  }
  bool is_done(const WorkTask& task) const { return operation(task.steps.back()).done.has_value(); }

  void add(const WorkTask& task) {
    const Operation& work = operation(task.steps.back());
    const auto [what, place] = topic_of(work);
    std::string piece = cut_inside(longest_name, plan_.job.batches.at(work.batch).name);
    if (work.kind == OperationKind::coat && work.side != Side::both)
      piece += work.side == Side::back ? " (back)" : " (show side)";
    auto topic = std::ranges::find(topics_, what, &Topic::what);
    if (topic == topics_.end()) topic = topics_.insert(topics_.end(), {what, {}, place});
    if (std::ranges::find(topic->pieces, piece) == topic->pieces.end())
      topic->pieces.push_back(std::move(piece));
  }

  std::pair<std::string, Place> topic_of(const Operation& work) const {
    switch (work.kind) {
      case OperationKind::sand_bare:
        return {"sand", then_work};
      case OperationKind::sand_between:
        // Beside a coat it is of less weight for which one it is.
        return {coats_
                    ? "sand"
                    : fmt::format("{} before coat {}", work.scuffed ? "scuff" : "sand", work.coat),
                then_work};
      case OperationKind::sand_raised:
        return {"sand off the raised grain", then_work};
      case OperationKind::sand_filler:
        return {"sand the filler", then_work};
      case OperationKind::coat:
        return {words_.coat_name(work), coats_first};
      case OperationKind::turn_over:
        return {"turn over", then_handling};
      case OperationKind::dust_off:
      case OperationKind::wipe_off:
        return {std::string(word_for(work.kind)), last};
      case OperationKind::repair:
        return {fmt::format("repair coat {}", work.coat), then_work};
      case OperationKind::raise_grain:
      case OperationKind::fill_pores:
      case OperationKind::fit_hardware:
      case OperationKind::finishing_touch:
        break;
    }
    return {words_.title(work), then_work};
  }

  const Plan& plan_;
  const StepWords& words_;
  bool coats_ = false;  ///< in this session
  std::vector<Topic> topics_;
};

}  // namespace

std::string session_title(const Plan& plan, const StepWords& words, const WorkSession& session,
                          std::size_t columns) {
  return SessionTitle(plan, words).of(session, columns);
}

std::string people_words(const Plan& plan, const WorkSession& session) {
  std::vector<std::string> names;
  for (const std::size_t who : session.people)
    names.push_back(cut_to(longest_name, plan.job.people.at(who).name));
  return names.empty() ? "" : fmt::format("{}: ", fmt::join(names, ", "));
}

std::string task_words(const Plan& plan, const StepWords& words, const WorkTask& task) {
  if (task.is_of_tools()) return tools_words(plan, task);
  const auto work = [&](std::size_t step) -> const Operation& {
    return plan.list.operations.at(plan.schedule.steps.at(step).operation);
  };
  const Operation& first = work(task.steps.front());
  const Operation& last = work(task.steps.back());
  if (first.kind == OperationKind::dust_off && last.kind == OperationKind::coat)
    return words.full_title(last) + ", dusted off first";
  const bool several = task.steps.size() > 1 && last.grit;
  return words.full_title(first) + (several ? fmt::format(" to P{}", last.grit->p) : "");
}

std::string dry_words(const Plan& plan, const StepWords& words, const DryCoat& dry,
                      Instant seen_from) {
  const Figures& figures = words.figures();
  const bool same_day = figures.local_date(dry.at) == figures.local_date(seen_from);
  return fmt::format("{} from {}: {}", dry.stage ? reached_words(*dry.stage) : "dry enough",
                     same_day ? figures.clock(dry.at) : figures.moment(dry.at),
                     words.full_title(plan.list.operations.at(dry.coat)));
}

std::string capitalised(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

}  // namespace tackfree
