#include "tackfree/input/finish_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/coating_figures.hpp"
#include "tackfree/input/label_rows_reader.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/input/solvent_reader.hpp"
#include "tackfree/input/tin_reader.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The name under `key`, when it is one of `known`; what is not is a Problem. `what` says of what.
std::string known_name(JsonCursor& object, std::string_view key,
                       const std::vector<std::string>& known, std::string_view what) {
  const auto name = object.text(needed(key));
  if (!name) return {};
  if (std::find(known.begin(), known.end(), *name) == known.end())
    object.report(key, fmt::format("wanted the name of a {}", what), name_hint(*name, known));
  return *name;
}

/// Names that differ only in case and signs would share a place in the calendar.
template <class Item>
void check_names_differ(JsonCursor& object, std::string_view list, const std::vector<Item>& items) {
  std::map<std::string, int> line_of;
  for (const Item& item : items) {
    if (item.name.empty()) continue;
    const auto [first, is_new] = line_of.emplace(slug(item.name), item.line);
    if (is_new) continue;
    object.problems().push_back(
        {.file = object.file(),
         .line = item.line,
         .key = object.path_of(list),
         .found = item.name,
         .wanted = fmt::format("wanted a name of its own; the one on line {} is the same but for "
                               "case and signs",
                               first->second)});
  }
}

void read_own_figures(JsonCursor& object, Origin origin, Coating& coating, StagesGiven& given) {
  FigureReader figures(object, origin);
  read_coating_figures(figures, coating, given);
  if (origin == Origin::label) {
    if (const auto at = read_temperature(object, "label_temp", {5, 40, "C"}))
      coating.label_temperature = *at;
    if (const auto at = object.number("label_humidity_pct", {1, 99, "% RH"}))
      coating.label_humidity = humidity_percent(*at);
    if (const auto sand = object.flag("needs_sanding_between"))
      coating.needs_sanding_between = *sand;
    read_label_rows(object, coating, given);
  }
  // Another spread is that of every coat, unless the later ones are named too.
  if (coating.spread.origin == origin && !object.has("spread_later_m2_per_l"))
    coating.spread_later.reset();
  settle_coating_figures(object, coating, given);
  object.refuse_unknown();
}

/// The factor and the coats it rests on: both or neither.
Taught read_taught(JsonCursor& object, std::string_view factor_key, std::string_view coats_key) {
  Taught taught;
  const auto factor = object.number(factor_key, {0.2, 5, ""});
  const auto coats = object.whole(coats_key, {1, 1000, "coats"});
  if (object.has(factor_key) != object.has(coats_key))
    object.report(object.has(factor_key) ? factor_key : coats_key,
                  fmt::format(R"(wanted "{}" and "{}" together)", factor_key, coats_key));
  if (factor && coats) taught = {*factor, *coats};
  return taught;
}

void read_earlier_jobs(JsonCursor& object, Coating& coating) {
  auto earlier = object.object("earlier_jobs");
  if (!earlier) return;
  coating.need_taught = read_taught(*earlier, "need_factor", "need_coats");
  coating.drying_taught = read_taught(*earlier, "drying_factor", "drying_coats");
  earlier->refuse_unknown();
}

Coating read_coating(JsonCursor& object, const FinishingData& data) {
  const auto classes = names_of(data.classes, &Coating::class_key);
  Coating coating;
  const auto name = object.text(needed("name"));
  const std::string class_key = known_name(object, "class", classes, "coating class");
  for (const Coating& each : data.classes)
    if (each.class_key == class_key) coating = each;
  coating.name = name.value_or("");
  coating.line = object.line();
  StagesGiven given{};
  if (auto label = object.object("label")) read_own_figures(*label, Origin::label, coating, given);
  if (auto measured = object.object("measured"))
    read_own_figures(*measured, Origin::measured, coating, given);
  coating.tins = read_tins(object);
  coating.on_shelf = read_shelf(object);
  constexpr std::array<std::string_view, 4> sheens{"gloss", "semi_gloss", "satin", "matt"};
  if (const auto sheen = object.word("sheen", sheens)) coating.sheen = static_cast<Sheen>(*sheen);
  if (const auto wax = object.flag("contains_wax")) coating.contains_wax = *wax;
  read_earlier_jobs(object, coating);
  if (auto mix = read_solvent_mix(object, data.solvents, nullptr); !mix.empty())
    coating.solvent_mix = std::move(mix);
  object.refuse_unknown();
  return coating;
}

SystemStep read_step(JsonCursor& object, const std::vector<std::string>& coatings,
                     const std::vector<std::string>& methods) {
  SystemStep step;
  step.line = object.line();
  step.coating = known_name(object, "coating", coatings, "coating of this job");
  step.method = known_name(object, "method", methods, "method");
  step.name = object.text("name").value_or(step.coating);
  const JsonNode* coats = object.value(needed("coats"));
  if (coats != nullptr && !(coats->kind == JsonNode::Kind::string && coats->text == "by_film")) {
    if (coats->kind == JsonNode::Kind::number)
      step.coats = object.whole("coats", {1, 20, "coats"});
    else
      object.report("coats", "wanted a whole number from 1 to 20, or \"by_film\"");
  }
  step.fill_pores = object.flag("fill_pores").value_or(false);
  FigureReader figures(object, Origin::measured);
  figures.read(step.first_coat_thinner, "first_coat_thinner_pct", {0, 100, "%"}, percent);
  // It was not read off anything: it is how this person does it.
  if (step.first_coat_thinner)
    step.first_coat_thinner =
        sourced(step.first_coat_thinner->value, Origin::practice, "your own, as the system says");
  object.refuse_unknown();
  return step;
}

}  // namespace

std::vector<Coating> read_coatings(JsonCursor& job, const FinishingData& data) {
  std::vector<Coating> coatings;
  for (JsonCursor& object : job.objects(needed("coatings")))
    coatings.push_back(read_coating(object, data));
  check_names_differ(job, "coatings", coatings);
  return coatings;
}

std::vector<FinishSystem> read_systems(JsonCursor& job, const std::vector<Coating>& coatings,
                                       const FinishingData& data) {
  constexpr std::array<std::string_view, 3> wears{"light", "normal", "hard"};
  const auto coating_names = names_of(coatings, &Coating::name);
  const auto method_keys = names_of(data.methods, &Method::key);
  const auto touch_keys = names_of(data.touches, &FinishingTouch::key);
  std::vector<FinishSystem> systems;
  for (JsonCursor& object : job.objects(needed("systems"))) {
    FinishSystem system;
    system.line = object.line();
    system.name = object.text(needed("name")).value_or("");
    system.wear = static_cast<Wear>(object.word("wear", wears).value_or(1));
    system.clear_build = object.flag("clear_build").value_or(false);
    if (object.has("after"))
      system.after = known_name(object, "after", touch_keys, "finishing touch");
    for (JsonCursor& step : object.objects(needed("steps")))
      system.steps.push_back(read_step(step, coating_names, method_keys));
    check_names_differ(object, "steps", system.steps);
    object.refuse_unknown();
    systems.push_back(std::move(system));
  }
  check_names_differ(job, "systems", systems);
  return systems;
}

std::vector<Batch> read_batches(JsonCursor& job, const std::vector<FinishSystem>& systems,
                                const SharedRules& shared) {
  constexpr std::array<std::string_view, 2> ways{"turn_over", "on_points"};
  constexpr std::array<std::string_view, 2> faces{"top", "bottom"};
  std::vector<Batch> batches;
  for (JsonCursor& object : job.objects(needed("batches"))) {
    Batch batch;
    batch.line = object.line();
    batch.name = object.text(needed("name")).value_or("");
    batch.system =
        known_name(object, "system", names_of(systems, &FinishSystem::name), "system of this job");
    batch.sides = object.word("sides", ways).value_or(0) == 0 ? Sides::turn_over : Sides::on_points;
    batch.show_side_is_bottom = object.word("show_side", faces).value_or(0) == 1;
    batch.hardware = object.flag("hardware").value_or(true);
    if (object.has("after"))
      batch.after =
          known_name(object, "after", names_of(batches, &Batch::name), "batch that stands before");
    batch.rules = read_batch_rules(object, shared, find_named(systems, batch.system));
    object.refuse_unknown();
    batches.push_back(std::move(batch));
  }
  check_names_differ(job, "batches", batches);
  return batches;
}

void check_parts_have_batches(const Job& job, const std::string& parts_file, Problems& problems) {
  const auto names = names_of(job.batches, &Batch::name);
  for (const Part& part : job.parts)
    if (!part.batch.empty() && find_named(job.batches, part.batch) == nullptr)
      problems.push_back({.file = parts_file,
                          .line = part.line,
                          .key = "batch",
                          .found = part.batch,
                          .wanted = "wanted the name of a batch of the job",
                          .hint = name_hint(part.batch, names)});
  for (const Batch& batch : job.batches) {
    const bool has_parts = std::any_of(job.parts.begin(), job.parts.end(),
                                       [&](const Part& part) { return part.batch == batch.name; });
    if (!has_parts && !job.parts.empty())
      problems.push_back(
          {.file = job.file,
           .line = batch.line,
           .key = "batches",
           .found = batch.name,
           .wanted = "has no parts; wanted at least one part of this batch in " + parts_file});
  }
}

}  // namespace tackfree
