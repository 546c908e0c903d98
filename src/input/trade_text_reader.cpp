#include "tackfree/input/trade_text_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/names_of.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

std::vector<Advice> read_lines(const TextFileTree& file, Problems& problems) {
  std::vector<Advice> all;
  JsonCursor cursor(file.tree, "", file.name, problems);
  for (const JsonNode& member : file.tree.items) {
    Advice advice{.key = member.key, .lines = {}};
    for (const JsonNode* line : cursor.texts(std::string_view(member.key)))
      advice.lines.push_back(line->text);
    all.push_back(std::move(advice));
  }
  return all;
}

Caution read_caution(JsonCursor& object, std::string key, const SourceNames& sources) {
  constexpr std::array<std::string_view, 3> words{"WARNING", "CAUTION", "NOTICE"};
  Caution caution;
  caution.key = std::move(key);
  if (const auto word = object.word(needed("word"), words)) caution.word = words[*word];
  caution.in_short = object.text(needed("short")).value_or("");
  caution.hazard = object.text(needed("hazard")).value_or("");
  caution.consequence = object.text(needed("consequence")).value_or("");
  caution.avoid = object.text(needed("avoid")).value_or("");
  if (const JsonNode* from = object.value(needed("from")))
    if (const auto origin = read_origin(object, *from, 0, sources)) {
      caution.origin = origin->origin;
      caution.source = origin->source;
    }
  object.refuse_unknown();
  return caution;
}

Disposal read_disposal(JsonCursor& object, std::string key, const SourceNames& sources) {
  Disposal disposal{.key = std::move(key)};
  disposal.what = object.text(needed("what")).value_or("");
  disposal.act = object.text(needed("do")).value_or("");
  if (const JsonNode* from = object.value(needed("from")))
    if (const auto origin = read_origin(object, *from, 0, sources)) {
      disposal.origin = origin->origin;
      disposal.source = origin->source;
    }
  object.refuse_unknown();
  return disposal;
}

template <class Text>
void check_keys(const std::vector<std::string>& used, const std::vector<Text>& texts,
                const Problem& problem, Problems& problems) {
  const auto known = names_of(texts, &Text::key);
  for (const std::string& key : used) {
    if (std::find(known.begin(), known.end(), key) != known.end()) continue;
    Problem found = problem;
    found.found = key;
    found.hint = name_hint(key, known);
    problems.push_back(std::move(found));
  }
}

}  // namespace

TradeTexts read_trade_texts(const TradeTextFiles& files, const SourceNames& sources,
                            Problems& problems) {
  TradeTexts texts;
  texts.how = read_lines(files.how, problems);
  texts.advice = read_lines(files.advice, problems);
  JsonCursor cursor(files.cautions.tree, "", files.cautions.name, problems);
  texts.deference = cursor.text(needed("deference")).value_or("");
  if (auto all = cursor.object(needed("cautions")))
    for (JsonCursor& object : all->named_objects())
      texts.cautions.push_back(read_caution(
          object, object.path().substr(std::string_view("cautions.").size()), sources));
  if (auto all = cursor.object(needed("disposal")))
    for (JsonCursor& object : all->named_objects())
      texts.disposal.push_back(read_disposal(
          object, object.path().substr(std::string_view("disposal.").size()), sources));
  cursor.refuse_unknown();
  return texts;
}

void check_text_keys(const FinishingData& data, const std::string& coatings_file,
                     Problems& problems) {
  for (const Coating& coating : data.classes) {
    Problem problem{.file = coatings_file,
                    .line = coating.line,
                    .key = coating.class_key + ".cautions",
                    .wanted = "wanted a key of cautions.json"};
    check_keys(coating.words.cautions, data.texts.cautions, problem, problems);
    problem.key = coating.class_key + ".advice";
    problem.wanted = "wanted a key of advice.json";
    check_keys(coating.words.advice, data.texts.advice, problem, problems);
    problem.key = coating.class_key + ".disposal";
    problem.wanted = "wanted a key of disposal in cautions.json";
    check_keys(coating.words.disposal, data.texts.disposal, problem, problems);
  }
}

}  // namespace tackfree
