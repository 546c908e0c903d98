#include "tackfree/input/follows_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::vector<std::string> read_class_keys(JsonCursor& object, std::string_view key,
                                         const std::vector<std::string>& known) {
  std::vector<std::string> keys;
  for (const JsonNode* each : object.texts(needed(key))) {
    if (std::find(known.begin(), known.end(), each->text) == known.end())
      object.report(*each, object.path_of(key), "wanted a class of coatings.json",
                    name_hint(each->text, known));
    keys.push_back(each->text);
  }
  return keys;
}

FollowRule read_rule(JsonCursor& object, const std::vector<std::string>& known,
                     const SourceNames& sources) {
  constexpr std::array<std::string_view, 3> verdicts{"allow", "warn", "refuse"};
  FollowRule rule;
  rule.key = object.path();
  rule.under = read_class_keys(object, "under", known);
  rule.over = read_class_keys(object, "over", known);
  rule.under_has_wax = object.flag("under_has_wax").value_or(false);
  rule.verdict =
      static_cast<FollowRule::Verdict>(object.word(needed("verdict"), verdicts).value_or(1));
  FigureReader figures(object, sources);
  figures.read(rule.dry_for, "dry_for_h", {1, 1000, "h"}, hours);
  const bool allows = rule.verdict == FollowRule::Verdict::allow;
  rule.say = object.text(allows ? JsonKey("say") : needed("say")).value_or("");
  const bool refuses = rule.verdict == FollowRule::Verdict::refuse;
  rule.remedy = object.text(refuses ? needed("remedy") : JsonKey("remedy")).value_or("");
  object.refuse_unknown();
  return rule;
}

void check_pair(const Job& job, const SystemStep& below, const SystemStep& step,
                Problems& problems) {
  const Coating* under = find_named(job.coatings, below.coating);
  const Coating* over = find_named(job.coatings, step.coating);
  if (under == nullptr || over == nullptr) return;
  const FollowRule* rule = follow_rule(job.data, *under, *over);
  if (rule == nullptr || rule->verdict != FollowRule::Verdict::refuse) return;
  problems.push_back(
      {.file = job.file,
       .line = step.line,
       .key = "systems.steps.coating",
       .found = step.coating,
       .wanted = fmt::format("must not go over \"{}\": {}", below.coating, rule->say),
       .hint = rule->remedy});
}

}  // namespace

std::vector<FollowRule> read_follow_rules(JsonCursor& file, const std::vector<Coating>& classes,
                                          const SourceNames& sources) {
  const auto known = names_of(classes, &Coating::class_key);
  std::vector<FollowRule> rules;
  for (JsonCursor& object : file.named_objects())
    rules.push_back(read_rule(object, known, sources));
  return rules;
}

void check_systems_hold(const Job& job, Problems& problems) {
  for (const FinishSystem& system : job.systems) {
    if (system.steps.empty()) continue;
    for (std::size_t step = 1; step < system.steps.size(); ++step)
      check_pair(job, system.steps[step - 1], system.steps[step], problems);
    const SystemStep& last = system.steps.back();
    const Coating* coating = find_named(job.coatings, last.coating);
    if (coating != nullptr && coating->needs_top_coat)
      problems.push_back({.file = job.file,
                          .line = last.line,
                          .key = "systems.steps.coating",
                          .found = last.coating,
                          .wanted = fmt::format(
                              "{} is no finish alone; wanted a step with a clear finish after it",
                              coating->class_title)});
  }
}

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
