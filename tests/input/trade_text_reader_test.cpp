#include "tackfree/input/trade_text_reader.hpp"

#include "input/text_checks.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE(
    "a caution or a way of disposal without one of its parts, or with a word of its own, is "
    "refused") {
  Problems problems;
  const std::string name = "c.json";
  const auto lines = parse_json(R"({"coat": ["one", "two"]})", name, problems);
  const auto cautions = parse_json(
      R"({"deference": "the label governs", "cautions": {
           "dust": {"word": "WARNIGN", "short": "dust", "hazard": "dust", "avoid": "extract",
                    "from": ["practice"]}},
           "disposal": {"wash": {"what": "Wash", "from": ["practise"]}}})",
      name, problems);
  REQUIRE((lines && cautions));
  const TradeTexts texts = read_trade_texts(
      {.how = {*lines, name}, .advice = {*lines, name}, .cautions = {*cautions, name}}, {},
      problems);
  CHECK(texts.how.at(0).key == "coat");
  CHECK(texts.how.at(0).lines == std::vector<std::string>{"one", "two"});
  CHECK(texts.cautions.at(0).key == "dust");
  CHECK(texts.deference == "the label governs");
  CHECK(texts.disposal.at(0).what == "Wash");
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].key == "cautions.dust.word");
  CHECK(problems[0].hint == "did you mean \"WARNING\"?");
  CHECK(problems[1].key == "cautions.dust.consequence");
  CHECK(problems[2].key == "disposal.wash.do");
  CHECK(problems[3].found == "practise");
}

TEST_CASE("a class that names a text which is not there is refused with a likely one") {
  FinishingData data;
  Coating coating;
  coating.class_key = "varnish";
  coating.line = 7;
  coating.words.cautions = {"oily_rag"};
  coating.words.advice = {"test_board"};
  coating.words.disposal = {"wash_solvnt"};
  data.classes.push_back(coating);
  Caution rags;
  rags.key = "oily_rags";
  data.texts.cautions.push_back(rags);
  data.texts.advice.push_back({"test_board", {}});
  data.texts.disposal.push_back({.key = "wash_solvent"});
  Problems problems;
  check_text_keys(data, "coatings.json", problems);
  REQUIRE(problems.size() == 2);
  CHECK(problems[1].key == "varnish.disposal");
  CHECK(problems[1].hint == "did you mean \"wash_solvent\"?");
  CHECK(to_text(problems[0]) ==
        "coatings.json:7: varnish.cautions: found \"oily_rag\"; wanted a key of cautions.json; "
        "did you mean \"oily_rags\"?");
}
