#include "tackfree/document/background_sections.hpp"

#include "tackfree/document/fumes_section.hpp"
#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/figure_sources.hpp"
#include "tackfree/words/hard_after_words.hpp"
#include "tackfree/words/note_words.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>

namespace tackfree {

void write_advice(Page& page, const Plan& plan) {
  std::set<std::string> told;
  std::vector<std::string> lines;
  for (const CoatingNeed& need : plan.volumes.coatings) {
    const Coating& coating = plan.job.coatings.at(need.coating);
    for (const std::string& key : coating.words.advice) {
      if (key.starts_with("after_last"))
        if (std::string hard = hard_after_words(coating); !hard.empty())
          lines.push_back(std::move(hard));
      if (!told.insert(key).second) continue;
      const bool heated = key == "heat_and_vapour" && warmed_by_sealed_heater(plan.job);
      for (const Advice& advice : plan.job.data.texts.advice)
        if (advice.key == (heated ? "sealed_heat" : key))
          lines.insert(lines.end(), advice.lines.begin(), advice.lines.end());
    }
  }
  if (lines.empty()) return;
  page.heading("Good to know");
  for (const std::string& line : lines) page.paragraph(Lead::item(), line);
}

void write_how_to(Page& page, const Plan& plan, const HowTo& how_to) {
  if (!how_to.entries().empty()) page.heading("How to");
  std::size_t number = 0;
  for (const HowTo::Entry& entry : how_to.entries()) {
    page.subheading(fmt::format("#{} {}", ++number, entry.title()));
    for (const std::string& line : entry.lines) page.paragraph(Lead::plain(4), line);
  }
  write_advice(page, plan);
}

void write_notes(Page& page, const std::vector<Note>& notes, const Job& job,
                 const OperationList& list, const Figures& figures) {
  if (notes.empty()) return;
  page.heading("Look at this");
  for (const Note& note : notes)
    page.paragraph(Lead::look(),
                   fmt::format("{}: {}", subject_of(note), note_text(note, job, list, figures)));
}

void write_cautions(Page& page, const Plan& plan) {
  constexpr std::size_t signal_columns = 7;
  if (plan.cautions.empty()) return;
  page.heading("Cautions");
  write_vapour_dangers(page, plan);
  for (const Caution& caution : caution_texts(plan))
    page.paragraph(lead_of(caution, signal_columns),
                   fmt::format("{} {} {}", caution.hazard, caution.consequence, caution.avoid));
}

void write_sources(Page& page, const Plan& plan, const Figures& figures) {
  page.heading("Where the numbers come from");
  for (const FigureGroup& group : figure_groups(plan, figures)) {
    page.subheading(group.title);
    for (const FiguresFrom& from : group.origins)
      page.paragraph(Lead::introduced(word_for(from.origin), 2),
                     fmt::format("{}{}", fmt::join(from.figures, "; "),
                                 from.source.empty() ? "" : " [" + from.source + "]"));
  }
}

}  // namespace tackfree
