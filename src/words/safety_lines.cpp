#include "tackfree/words/safety_lines.hpp"

#include "tackfree/words/caution_words.hpp"
#include "tackfree/words/short_warnings.hpp"
#include "tackfree/words/step_words.hpp"
#include "tackfree/words/vapour_words.hpp"

#include <algorithm>
#include <set>
#include <string_view>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The first sentences of the text, until they say enough.
std::string_view beginning_of(std::string_view text, std::size_t enough) {
  std::size_t end = text.find(". ");
  while (end != std::string_view::npos && end < enough) end = text.find(". ", end + 1);
  return end == std::string_view::npos ? text : text.substr(0, end + 1);
}

std::set<std::string> keys_of(const Job& job, const Operation& work) {
  if (work.grit) return {"wood_dust"};
  const Coating* wiped = coating_of(job, job.batches.at(work.batch), work.step);
  if (work.kind == OperationKind::wipe_off && wiped != nullptr &&
      std::ranges::count(wiped->words.cautions, "oily_rags") > 0)
    return {"oily_rags"};
  if (work.kind != OperationKind::coat) return {};
  std::set<std::string> keys{"attached_house"};
  if (work.coating)
    for (const std::string& key : job.coatings.at(*work.coating).words.cautions) keys.insert(key);
  if (work.method)
    for (const std::string& key : job.data.methods.at(*work.method).cautions) keys.insert(key);
  return keys;
}

/// The burning vapour that the first of these coats begins.
const FlammableTime* flammable_of(const Plan& plan, const std::vector<std::size_t>& steps) {
  const auto found = std::ranges::find_if(plan.flammable, [&](const FlammableTime& time) {
    return std::ranges::find(steps, time.first_step) != steps.end();
  });
  return found == plan.flammable.end() ? nullptr : &*found;
}

std::string line_of(const Plan& plan, const std::vector<std::size_t>& steps,
                    const Caution& caution) {
  constexpr std::size_t enough = 40;
  const FlammableTime* time = flammable_of(plan, steps);
  if (caution.key == "ignition" && time != nullptr && !to_switch_off(plan.job).empty())
    return fmt::format("{}: {} {}", caution.word, beginning_of(caution.hazard, 0),
                       off_words(plan, *time));
  return fmt::format("{}: {} {}", caution.word, beginning_of(caution.hazard, 0),
                     beginning_of(caution.avoid, enough));
}

}  // namespace

std::vector<std::string> safety_lines(const Plan& plan, const std::vector<std::size_t>& steps) {
  std::set<std::string> keys;
  for (const std::size_t step : steps)
    keys.merge(keys_of(plan.job, plan.list.operations.at(plan.schedule.steps.at(step).operation)));
  std::vector<std::string> lines;
  for (const Caution& caution : caution_texts(plan))
    if (keys.contains(caution.key) && (caution.word == "DANGER" || caution.word == "WARNING"))
      lines.push_back(line_of(plan, steps, caution));
  return lines;
}

}  // namespace tackfree
