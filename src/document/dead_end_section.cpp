#include "tackfree/document/dead_end_section.hpp"

#include "tackfree/words/remedy_words.hpp"
#include "tackfree/words/unplaced_words.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

enum class Keys { told, left_to_plan };

void write_remedies(Page& page, const DatedWork& work, const std::vector<Remedy>& remedies,
                    const WorkWords& words, Keys keys) {
  if (remedies.empty()) return;
  page.paragraph(
      Lead::plain(2),
      fmt::format("What would help{}{}:", remedies.size() == 1 ? "" : ", each by itself",
                  keys == Keys::told ? ", and what to write into the job"
                                     : " (`tackfree plan` has what to write into the job)"));
  for (const Remedy& remedy : remedies)
    page.paragraph(Lead::item(),
                   remedy_words(remedy, work, words) +
                       (keys == Keys::told ? " " + remedy_key(remedy, work.job) : ""));
  if (const std::string warming = warming_words(remedies); !warming.empty())
    page.paragraph(Lead::look(), warming);
}

std::string dead_end_words(const Unplaced& unplaced, const DatedWork& work,
                           const WorkWords& words) {
  return fmt::format(
      "{}: {}{}", words.full_title(work.list.operations.at(unplaced.operation)),
      unplaced_words(unplaced, work),
      unplaced.conflict.empty()
          ? ""
          : fmt::format(". Not possible together: {}",
                        fmt::join(conflict_words(unplaced, work, words.figures()), "; ")));
}

bool is_forbidden(const Unplaced& unplaced) { return unplaced.by != HeldBy::previous_step; }

}  // namespace

void write_unplaced(Page& page, const Plan& plan, const StepWords& words) {
  if (plan.schedule.unplaced.empty()) return;
  page.heading("No time found");
  std::vector<std::string> waiting;
  for (const Unplaced& unplaced : plan.schedule.unplaced) {
    if (is_forbidden(unplaced))
      page.paragraph(Lead::look(), dead_end_words(unplaced, plan, words));
    else
      waiting.push_back(words.full_title(plan.list.operations.at(unplaced.operation)));
  }
  if (!waiting.empty())
    page.paragraph(Lead::look(), fmt::format("Waiting for that: {}.", fmt::join(waiting, "; ")));
  if (!plan.remedies.empty()) page.blank();
  write_remedies(page, plan, plan.remedies, words, Keys::told);
  page.paragraph(Lead::plain(2), "All else is planned as far as it goes.");
}

void write_dead_end(Page& page, const DatedWork& work, const std::vector<Remedy>& remedies,
                    const WorkWords& words) {
  const auto& unplaced = work.schedule.unplaced;
  const auto first = std::ranges::find_if(unplaced, is_forbidden);
  if (first == unplaced.end()) return;
  page.paragraph(Lead::look(), "No time found for " + dead_end_words(*first, work, words) + ".");
  write_remedies(page, work, remedies, words, Keys::left_to_plan);
}

}  // namespace tackfree
