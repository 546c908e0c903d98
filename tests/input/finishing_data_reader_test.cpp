#include "tackfree/input/finishing_data_reader.hpp"

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/coating_figures.hpp"
#include "tackfree/syntax/json_document.hpp"

#include <algorithm>
#include <regex>
#include <set>

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::filesystem::path data_folder = std::filesystem::path(TACKFREE_ROOT) / "data";

FinishingData built_in() { return built_in_finishing_data(); }

const Coating& class_called(const FinishingData& data, const std::string& key) {
  const auto found = std::ranges::find(data.classes, key, &Coating::class_key);
  REQUIRE(found != data.classes.end());
  return *found;
}

std::string data_text(const std::string& name) {
  Problems problems;
  return FilesOnDisk().text(data_folder / name, problems).value();
}

/// A folder `mine` with a copy of the built-in data files.
void copy_data(FilesInMemory& files, std::string_view but = {}) {
  for (const std::string_view name : finishing_data_files)
    if (name != but) files.put(std::filesystem::path("mine") / name, data_text(std::string(name)));
}

/// Figures of a data file, `[value, origin]` and longer, anywhere in its tree.
void collect_figures(const JsonNode& node, std::vector<const JsonNode*>& figures) {
  const auto is_figure = [](const JsonNode& each) {
    return each.kind == JsonNode::Kind::array && each.items.size() >= 2 &&
           (each.items[0].kind == JsonNode::Kind::number ||
            each.items[0].kind == JsonNode::Kind::array);
  };
  if (is_figure(node)) {
    figures.push_back(&node);
    return;
  }
  for (const JsonNode& item : node.items) collect_figures(item, figures);
}

}  // namespace

TEST_CASE("every class of the built-in data has every stage, text and film") {
  const FinishingData data = built_in();
  REQUIRE(data.classes.size() == 14);
  for (const Coating& coating : data.classes) {
    CAPTURE(coating.class_key);
    for (std::size_t i = 0; i < stage_count; ++i) {
      const auto stage = static_cast<Stage>(i);
      // What needs a top coat bears no use alone; stain is never sanded.
      if (coating.needs_top_coat && depth_of(stage) == Depth::through) continue;
      if (stage == Stage::sand && !coating.grits.after_first) continue;
      CHECK(coating.label_after[i].has_value());
    }
    CHECK_FALSE(coating.class_title.empty());
    CHECK_FALSE(coating.words.thinner.empty());
    CHECK_FALSE(coating.words.cautions.empty());
    CHECK_FALSE(coating.words.advice.empty());
    CHECK(coating.solids.value > fraction(0));
    if (coating.builds_film) CHECK(coating.film_cap.value > coating.film_aim[2].value);
    CHECK(coating.grits.bare.value.size() >= 2);
    CHECK(coating.grits.bare_veneer.value.front() == Grit{150});
    CHECK(coating.limits.dew_point_margin.value == kelvins(3));
    CHECK(coating.limits.dew_point_margin.origin == Origin::published);
  }
}

TEST_CASE("the built-in figures are those of the trade table") {
  const FinishingData data = built_in();
  const Coating& oil = class_called(data, "oil_polyurethane");
  CHECK(oil.solids.value == percent(45));
  CHECK(oil.solids.origin == Origin::practice);
  CHECK(oil.solids.source == "typical of labels and data sheets of the class");
  CHECK(oil.spread.value == square_metres_per_litre(12.3));
  CHECK(oil.label_after[index_of(Stage::hardware)]->value == days(3));
  CHECK(oil.recoat_unsanded_within->value == hours(12));
  CHECK(oil.dries_by_oxidation);
  CHECK(oil.law.driver == DryingLaw::Driver::arrhenius);
  CHECK(oil.law.slowed_by_humidity);
  const Coating& water = class_called(data, "waterborne_polyurethane");
  CHECK(water.law.driver == DryingLaw::Driver::vapour_deficit);
  CHECK(water.raises_grain);
  CHECK_FALSE(water.flash_point);
  CHECK(water.limits.hold_put_on_min->value == hours(24));
  CHECK(holds(water.limits.hold_put_on_min->source, "Wood Handbook"));
  const Coating& shellac = class_called(data, "shellac");
  CHECK_FALSE(shellac.recoat_unsanded_within);
  CHECK(shellac.limits.humidity_caution->value == humidity_percent(65));
  CHECK(holds(shellac.label_after[index_of(Stage::recoat)]->source, "TM 43-0139"));
  CHECK(data.labour.sand_bare_machine.value == square_metres_per_hour(6));
  CHECK(oil.lost_to_sanding.value == micrometres(4));
  CHECK(data.shop.tins_us.value.back().volume == us_gallons(1));
  CHECK(data.shop.thinner_metric.value.front().label == "0.5 L");
  CHECK(data.shop.cleaner_per_session.value.in(litres) == doctest::Approx(0.1));
  CHECK(data.shop.rags_per_session.origin == Origin::practice);
  CHECK(data.grain_factors[static_cast<std::size_t>(Grain::end)].second.value == 1.3);
}

TEST_CASE("every figure of the data stands beside its origin, published ones beside a source") {
  int count = 0;
  for (const char* name : {"drying_laws.json", "coatings.json", "methods.json", "labour.json",
                           "grain.json", "follows.json", "shop.json"}) {
    Problems problems;
    const auto tree = parse_json(data_text(name), name, problems);
    REQUIRE(tree);
    std::vector<const JsonNode*> figures;
    collect_figures(*tree, figures);
    for (const JsonNode* figure : figures) {
      INFO(name << ":" << figure->line << " " << figure->key);
      const std::string& origin = figure->items[1].text;
      CHECK(std::set<std::string>{"label", "published", "practice", "assumed"}.contains(origin));
      CHECK((origin != "published" || figure->items.size() == 3));
      ++count;
    }
  }
  CHECK(count > 140);
}

TEST_CASE("no text calls anything safe, and every plan ends by deferring to the label") {
  for (const char* name : {"how.json", "advice.json", "cautions.json", "coatings.json"}) {
    std::string text = data_text(name);
    for (std::size_t at = text.find("safe"); at != std::string::npos;
         at = text.find("safe", at + 1))
      CHECK(text.compare(at, 17, "safety data sheet") == 0);
  }
  const FinishingData data = built_in();
  for (const char* word : {"label", "safety data sheet", "local codes", "licensed practice"})
    CHECK(holds(data.texts.deference, word));
}

// Seen failing: the last coats asked to close up, and for no draught, against the airing.
// Seen failing: hardwax oil was listed with a cloth damp with spirits and told to be wiped dry.
TEST_CASE("the cloth that takes the dust off is the one that the how-to asks for") {
  const FinishingData data = built_in();
  for (const Coating& coating : data.classes) {
    CAPTURE(coating.class_key);
    const Advice* told = nullptr;
    for (const std::string& key :
         {"dust_off/" + coating.words.how_as, "dust_off/" + coating.class_key})
      for (const Advice& how : data.texts.how)
        if (how.key == key) told = &how;
    if (told == nullptr) continue;
    std::string lines;
    for (const std::string& line : told->lines) lines += line;
    for (const char* damp : {"damp with mineral spirits", "damp with water", "dry lint-free"})
      CHECK(holds(coating.words.wipe_with, damp) == holds(lines, damp));
  }
}

TEST_CASE("no text asks for less airing") {
  const std::regex less(
      "close up|still[, ]+(clean )?air|no draught|(shut|close) the (window|outer door|garage)");
  for (const char* name : {"how.json", "advice.json", "cautions.json"})
    CHECK_FALSE(std::regex_search(data_text(name), less));
}

TEST_CASE("each class says what to do with its remains, its wash and its rags") {
  const auto has = [](const Coating& coating, std::string_view begin) {
    return std::ranges::any_of(coating.words.disposal,
                               [&](const std::string& key) { return key.starts_with(begin); });
  };
  for (const Coating& coating : built_in().classes) {
    INFO(coating.class_key);
    CHECK(has(coating, "remains_"));
    CHECK(has(coating, "wash_water") == !coating.flash_point.has_value());
    CHECK(has(coating, "wash_"));
    // Mixed, it hardens whatever it is kept in.
    CHECK(has(coating, "remains_two_part") == coating.pot_life.has_value());
    CHECK(has(coating, "unmixed_parts") == coating.pot_life.has_value());
    CHECK(has(coating, "hardener_isocyanates") ==
          (std::ranges::count(coating.words.cautions, "isocyanates") > 0));
    // The caution on oily rags says what to do with those.
    CHECK(has(coating, "rags_") == !coating.dries_by_oxidation);
    CHECK((std::ranges::count(coating.words.cautions, "oily_rags") > 0) ==
          coating.dries_by_oxidation);
  }
}

TEST_CASE("each kind of operation has two or three lines of how") {
  const FinishingData data = built_in();
  std::set<std::string> keys;
  for (const Advice& how : data.texts.how) {
    keys.insert(how.key);
    CHECK(how.lines.size() >= (how.key.starts_with("before_") ? 1 : 2));
    CHECK(how.lines.size() <= 3);
  }
  for (const char* kind : {"sand_bare", "sand_raised_grain", "dust_off", "coat", "turn_over",
                           "sand_between", "fit_hardware"})
    CHECK(keys.contains(kind));
  for (const std::string& key : keys)
    if (const std::size_t slash = key.find('/'); slash != std::string::npos)
      class_called(data, key.substr(slash + 1));
}

TEST_CASE("a folder of data replaces the built-in files") {
  FilesInMemory files;
  copy_data(files);
  files.put("mine/coatings.json",
            replaced(data_text("coatings.json"), "\"spread_m2_per_l\": [12.3,",
                     "\"spread_m2_per_l\": [9.5,"));
  Problems problems;
  const auto data = read_finishing_data(files, "mine", problems);
  INFO(all_text(problems));
  REQUIRE(data);
  CHECK(class_called(*data, "oil_polyurethane").spread.value == square_metres_per_litre(9.5));
}

TEST_CASE("faults in a folder of data are named with file, line and remedy") {
  FilesInMemory files;
  copy_data(files);
  std::string text = data_text("coatings.json");
  text = replaced(text, "[12.3, \"practice\"]", "[12.3, \"practise\"]");
  text = replaced(text, "[50, \"assumed\"]", "50");
  text = replaced(text, "\"film_cap_um\": [160, \"practice\"]",
                  "\"film_cap_um\": [160, \"published\"]");
  text =
      replaced(text, "[24, \"published\", \"tm_43_0139\"]", "[24, \"published\", \"tm_43_013\"]");
  text = replaced(text, "[[120, 150],", "[[80, 125, 150],");
  text = replaced(text, "      \"flash_point_c\": [13, \"practice\"],\n",
                  "      \"flash_pont_c\": 13,\n");
  text = replaced(text, "\"law\": \"shellac\"", "\"law\": \"shellack\"");
  files.put("mine/coatings.json", text);
  Problems problems;
  CHECK_FALSE(read_finishing_data(files, "mine", problems));
  INFO(all_text(problems));
  REQUIRE(problems.size() == 7);
  const auto is = [&](std::size_t i, const char* key, const char* piece, const char* remedy) {
    CAPTURE(i);
    CHECK(problems[i].file == "mine/coatings.json");
    CHECK(problems[i].key == key);
    CHECK(problems[i].line == line_of(text, piece));
    CHECK(holds(to_text(problems[i]), remedy));
  };
  is(0, "oil_polyurethane.figures.spread_m2_per_l", "practise", "did you mean \"practice\"?");
  is(1, "oil_polyurethane.figures.film_aim_light_um", "\"film_aim_light_um\": 50",
     "the figure and its origin");
  is(2, "oil_polyurethane.figures.film_cap_um", "[160, \"published\"]",
     "the source of a published");
  is(3, "shellac.law", "\"shellack\"", "did you mean \"shellac\"?");
  is(4, "shellac.figures.light_use_after_h", "\"tm_43_013\"", "did you mean \"tm_43_0139\"?");
  is(5, "shellac.figures.flash_pont_c", "\"flash_pont_c\"", "did you mean \"flash_point_c\"?");
  is(6, "hardwax_oil.figures.grits_bare", "[[80, 125", "a grade of the P-scale");
}

TEST_CASE("a missing file of a data folder is named") {
  FilesInMemory files;
  copy_data(files, "grain.json");
  Problems problems;
  CHECK_FALSE(read_finishing_data(files, "mine", problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "mine/grain.json");
  CHECK(holds(problems[0].wanted, "cannot be read"));
}
