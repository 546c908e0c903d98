#include "tackfree/input/touch_reader.hpp"

#include "tackfree/base/name.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

std::vector<FinishingTouch> read_touches(JsonCursor& file, const SourceNames& sources) {
  constexpr std::array<std::string_view, 2> words{"stack", "full_cure"};
  constexpr std::array stages{Stage::stack, Stage::full_cure};
  std::vector<FinishingTouch> touches;
  for (JsonCursor& object : file.named_objects()) {
    FinishingTouch touch;
    touch.key = object.path();
    touch.title = object.text(needed("title")).value_or("");
    touch.waits_for = stages.at(object.word(needed("waits_for"), words).value_or(1));
    touch.on_films_only = object.flag(needed("on_films_only")).value_or(false);
    FigureReader figures(object, sources);
    figures.read(touch.rate, "rate_m2_per_h", {0.1, 100, "m2/h"}, square_metres_per_hour);
    touch.with = object.text(needed("with")).value_or("");
    for (const JsonNode* line : object.texts(needed("how"))) touch.how.push_back(line->text);
    object.refuse_unknown();
    touches.push_back(std::move(touch));
  }
  return touches;
}

void check_touches(const Job& job, Problems& problems) {
  for (const FinishSystem& system : job.systems) {
    const auto touch = std::ranges::find(job.data.touches, system.after, &FinishingTouch::key);
    if (touch == job.data.touches.end() || !touch->on_films_only || system.steps.empty()) continue;
    const Coating* last = find_named(job.coatings, system.steps.back().coating);
    if (last == nullptr || last->builds_film) continue;
    problems.push_back(
        {.file = job.file,
         .line = system.line,
         .key = "systems.after",
         .found = system.after,
         .wanted = fmt::format("needs a film to work on; {} goes into the wood", last->class_title),
         .hint = "wax it, or leave it as it is"});
  }
}

}  // namespace tackfree
