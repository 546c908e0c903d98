#include "tackfree/input/finishing_data_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/builtin_data.hpp"
#include "tackfree/input/coating_figures.hpp"
#include "tackfree/input/follows_reader.hpp"
#include "tackfree/input/names_of.hpp"
#include "tackfree/input/solvent_reader.hpp"
#include "tackfree/input/trade_text_reader.hpp"

#include <array>
#include <stdexcept>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// One file of the finishing data: its tree, and its name for Problems.
struct DataFile {
  std::string name;
  JsonNode tree;
};

std::optional<DataFile> data_file(const Files& files, const std::filesystem::path& path,
                                  Problems& problems) {
  const auto text = files.text(path, problems);
  auto tree = text ? parse_json(*text, path.string(), problems) : std::nullopt;
  if (!tree) return std::nullopt;
  return DataFile{path.string(), std::move(*tree)};
}

SourceNames read_sources(const DataFile& file, Problems& problems) {
  SourceNames sources;
  JsonCursor cursor(file.tree, "", file.name, problems);
  for (const JsonNode& member : file.tree.items)
    if (const auto name = cursor.text(std::string_view(member.key)))
      sources.all.push_back({member.key, *name});
  return sources;
}

DryingLaw read_law(JsonCursor& object, const std::string& name, const SourceNames& sources) {
  constexpr std::array<std::string_view, 3> drivers{"arrhenius", "vapour_deficit",
                                                    "vapour_pressure"};
  constexpr NumberRange exponent{0, 4};
  DryingLaw law;
  law.name = name;
  if (const auto driver = object.word(needed("driver"), drivers))
    law.driver = static_cast<DryingLaw::Driver>(*driver);
  FigureReader figures(object, sources);
  if (law.driver != DryingLaw::Driver::vapour_deficit) {
    if (object.has("q10")) {
      law.q10.emplace();
      figures.read(*law.q10, "q10", {1, 10});
    } else {
      figures.read(law.activation_energy, "activation_energy_kj_per_mol", {1, 200, "kJ/mol"},
                   kilojoules_per_mole);
    }
  }
  law.slowed_by_humidity = object.flag(needed("slowed_by_humidity")).value_or(false);
  figures.read(law.air_exponent, "air_exponent", exponent);
  figures.read(law.film_exponents[0], "film_exponent_touch", exponent);
  figures.read(law.film_exponents[1], "film_exponent_recoat", exponent);
  figures.read(law.film_exponents[2], "film_exponent_through", exponent);
  figures.read(law.stops_below, "stops_below", {-50, 40, "C"});
  object.refuse_unknown();
  return law;
}

std::vector<DryingLaw> read_laws(const DataFile& file, const SourceNames& sources,
                                 Problems& problems) {
  std::vector<DryingLaw> laws;
  JsonCursor cursor(file.tree, "", file.name, problems);
  for (JsonCursor& object : cursor.named_objects())
    laws.push_back(read_law(object, object.path(), sources));
  return laws;
}

const DryingLaw* law_named(const std::vector<DryingLaw>& laws, const std::string& name) {
  for (const DryingLaw& law : laws)
    if (law.name == name) return &law;
  return nullptr;
}

CoatingWords read_words(JsonCursor& object) {
  CoatingWords words;
  words.thinner = object.text(needed("thinner")).value_or("");
  words.cleaner = object.text(needed("cleaner")).value_or("");
  words.wipe_with = object.text(needed("wipe_with")).value_or("");
  words.solvents = object.text(needed("solvents")).value_or("");
  words.how_as = object.text("how_as").value_or("");
  for (const JsonNode* key : object.texts(needed("cautions"))) words.cautions.push_back(key->text);
  for (const JsonNode* key : object.texts(needed("advice"))) words.advice.push_back(key->text);
  for (const JsonNode* key : object.texts(needed("disposal"))) words.disposal.push_back(key->text);
  return words;
}

/// What the class gives off: its own list, or what its texts name.
void read_mixes(JsonCursor& object, Coating& coating, const std::vector<Solvent>& solvents,
                const SourceNames& sources) {
  coating.solvent_mix = read_solvent_mix(object, solvents, &sources);
  if (coating.solvent_mix.empty())
    coating.solvent_mix = mix_by_text(coating.words.solvents, solvents);
  coating.thinner_mix = mix_by_text(coating.words.thinner, solvents);
  if (coating.flash_point) coating.cleaner_mix = mix_by_text(coating.words.cleaner, solvents);
}

/// What bears no use alone has no such stages, and what is never sanded need not be hard enough.
bool class_has(const Coating& coating, Stage stage) {
  if (stage == Stage::sand)
    return coating.grits.after_first || coating.grits.between || coating.grits.before_last;
  return depth_of(stage) != Depth::through || !coating.needs_top_coat;
}

Coating read_class(JsonCursor& object, const std::vector<DryingLaw>& laws,
                   const std::vector<Solvent>& solvents, const SourceNames& sources) {
  Coating coating;
  coating.class_key = object.path();
  coating.line = object.line();
  coating.class_title = object.text(needed("title")).value_or("");
  coating.name = coating.class_title;
  if (const auto law = object.text(needed("law"))) {
    if (const DryingLaw* found = law_named(laws, *law)) {
      coating.law = *found;
    } else {
      object.report("law", "wanted a law of drying_laws.json",
                    name_hint(*law, names_of(laws, &DryingLaw::name)));
    }
  }
  coating.builds_film = object.flag(needed("builds_film")).value_or(true);
  coating.needs_top_coat = object.flag(needed("needs_top_coat")).value_or(false);
  coating.contains_wax = object.flag(needed("contains_wax")).value_or(false);
  coating.seals_wood = object.flag("seals_wood").value_or(true);
  if (auto inner = object.object(needed("figures"))) {
    FigureReader figures(*inner, sources);
    StagesGiven given{};
    read_coating_figures(figures, coating, given);
    settle_coating_figures(*inner, coating, given);
    for (const StageKey& stage : stage_keys)
      if (!inner->has(stage.key) && class_has(coating, stage.stage))
        inner->report(stage.key, "is missing; this key is needed");
    inner->refuse_unknown();
  }
  coating.label_temperature =
      celsius(object.number(needed("label_temp_c"), {5, 40, "C"}).value_or(23));
  coating.label_humidity =
      humidity_percent(object.number(needed("label_humidity_pct"), {1, 99, "% RH"}).value_or(50));
  coating.needs_sanding_between = object.flag(needed("needs_sanding_between")).value_or(true);
  coating.dries_by_oxidation = object.flag(needed("dries_by_oxidation")).value_or(false);
  coating.raises_grain = object.flag(needed("raises_grain")).value_or(false);
  coating.words = read_words(object);
  read_mixes(object, coating, solvents, sources);
  object.refuse_unknown();
  return coating;
}

std::vector<Method> read_methods(const DataFile& file, const SourceNames& sources,
                                 Problems& problems) {
  std::vector<Method> methods;
  JsonCursor cursor(file.tree, "", file.name, problems);
  for (JsonCursor& object : cursor.named_objects()) {
    Method method;
    method.key = object.path();
    method.title = object.text(needed("title")).value_or("");
    FigureReader figures(object, sources);
    read_method_figures(figures, method);
    figures.read(method.flashed_off, "flashed_off_pct", {0, 100, "%"}, percent);
    method.sprayed = object.flag(needed("sprayed")).value_or(false);
    method.applicator = object.text(needed("applicator")).value_or("");
    method.applicator_each_session = object.flag(needed("applicator_each_session")).value_or(false);
    for (const JsonNode* key : object.texts(needed("cautions")))
      method.cautions.push_back(key->text);
    object.refuse_unknown();
    methods.push_back(std::move(method));
  }
  return methods;
}

void read_grain(const DataFile& file, const SourceNames& sources, FinishingData& data,
                Problems& problems) {
  constexpr NumberRange factor{0.1, 10};
  JsonCursor object(file.tree, "", file.name, problems);
  FigureReader figures(object, sources);
  for (std::size_t grain = 0; grain < grain_count; ++grain) {
    figures.read(data.grain_factors[grain].first, fmt::format("{}_first", grain_keys[grain]),
                 factor);
    figures.read(data.grain_factors[grain].second, fmt::format("{}_second", grain_keys[grain]),
                 factor);
  }
  figures.read(data.allowances.framed, "framed_allowance", {1, 5});
  figures.read(data.allowances.louvred, "louvred_allowance", {1, 5});
  figures.read(data.need_spread.absorption_sigma, "absorption_sigma", {0, 1});
  figures.read(data.need_spread.first_coat_film_share, "first_coat_film_share", {0, 1});
  object.refuse_unknown();
}

void read_labour(const DataFile& file, const SourceNames& sources, Labour& labour,
                 Problems& problems) {
  JsonCursor object(file.tree, "", file.name, problems);
  FigureReader figures(object, sources);
  read_labour_figures(figures, labour);
  object.refuse_unknown();
}

void read_shop(const DataFile& file, const SourceNames& sources, ShopFigures& shop,
               Problems& problems) {
  JsonCursor object(file.tree, "", file.name, problems);
  FigureReader figures(object, sources);
  figures.read(shop.tins_metric, "tins_metric");
  figures.read(shop.tins_us, "tins_us");
  figures.read(shop.thinner_metric, "thinner_metric");
  figures.read(shop.thinner_us, "thinner_us");
  figures.read(shop.cleaner_per_session, "cleaner_per_session_ml", {0, 5000, "ml"}, millilitres);
  figures.read(shop.cleaner_volatiles, "cleaner_volatiles_g_per_l", {0, 1500, "g per litre"},
               grams_per_litre);
  figures.read(shop.rags_per_session, "rags_per_session", {0, 100});
  figures.read(shop.sessions_per_cloth, "sessions_per_cloth", {1, 100});
  figures.read(shop.dust_mask_lasts, "dust_mask_h", {0.5, 100, "h"}, hours);
  object.refuse_unknown();
}

}  // namespace

std::optional<FinishingData> read_finishing_data(const Files& from,
                                                 const std::filesystem::path& folder,
                                                 Problems& problems) {
  std::vector<DataFile> files;
  for (const std::string_view name : finishing_data_files)
    if (auto file = data_file(from, folder / name, problems)) files.push_back(std::move(*file));
  // Without one of the files the others cannot be judged.
  if (files.size() < finishing_data_files.size()) return std::nullopt;

  const std::size_t before = problems.size();
  const SourceNames sources = read_sources(files[0], problems);
  const std::vector<DryingLaw> laws = read_laws(files[1], sources, problems);
  FinishingData data;
  JsonCursor solvents(files[10].tree, "", files[10].name, problems);
  data.solvents = read_solvents(solvents, sources);
  JsonCursor changes(files[11].tree, "", files[11].name, problems);
  FigureReader change_figures(changes, sources);
  read_air_changes(change_figures, data.air_changes);
  changes.refuse_unknown();
  JsonCursor classes(files[2].tree, "", files[2].name, problems);
  for (JsonCursor& object : classes.named_objects())
    data.classes.push_back(read_class(object, laws, data.solvents, sources));
  data.methods = read_methods(files[3], sources, problems);
  read_labour(files[4], sources, data.labour, problems);
  read_grain(files[5], sources, data, problems);
  read_shop(files[12], sources, data.shop, problems);
  data.texts = read_trade_texts({.how = {files[6].tree, files[6].name},
                                 .advice = {files[7].tree, files[7].name},
                                 .cautions = {files[8].tree, files[8].name}},
                                sources, problems);
  JsonCursor follows(files[9].tree, "", files[9].name, problems);
  data.follows = read_follow_rules(follows, data.classes, sources);
  JsonCursor touches(files[13].tree, "", files[13].name, problems);
  data.touches = read_touches(touches, sources);
  check_text_keys(data, files[2].name, problems);
  if (problems.size() > before) return std::nullopt;
  return data;
}

FinishingData built_in_finishing_data() {
  Problems problems;
  auto data = read_finishing_data(built_in_files(), built_in_folder, problems);
  if (!data) throw std::logic_error("the built-in finishing data: " + to_text(problems.at(0)));
  return std::move(*data);
}

}  // namespace tackfree
