#include "tackfree/syntax/plain_object.hpp"

#include <random>
#include <string>

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

std::optional<JsonNode> judged(const std::string& line) {
  Problems problems;
  return parse_json(line, "x.jsonl", problems);
}

bool same(const JsonNode& a, const JsonNode& b) {
  if (a.kind != b.kind || a.line != b.line || a.key != b.key || a.text != b.text ||
      a.number != b.number || a.boolean != b.boolean || a.items.size() != b.items.size())
    return false;
  for (std::size_t i = 0; i < a.items.size(); ++i)
    if (!same(a.items[i], b.items[i])) return false;
  return true;
}

const std::vector<std::string> plain{
    R"({"id":1,"written_at":"2027-04-09T20:15-04:00","kind":"coat","step":"top/coat-1","amount_l":0.35})",
    R"({ "a" : -12.5 , "b":true, "c" :false,"d":0,"e":0.001 } )", R"({"note":""})"};
/// Which are for parse_json to judge, and not all of them wrong.
const std::vector<std::string> other{R"({"a":1e3})",
                                     R"({"a":"b\"c"})",
                                     R"({"a":"\u00e9"})",
                                     "{\"a\":\"\xc3\xa9\"}",
                                     R"({"a":null})",
                                     R"({"a":[1]})",
                                     R"({"a":{"b":1}})",
                                     R"({})",
                                     R"({"a":1,"a":2})",
                                     R"({"a":01})",
                                     R"({"a":-0})",
                                     R"({"a":1.})",
                                     R"({"a":.5})",
                                     R"({"a":+1})",
                                     R"({"a":1,})",
                                     R"({"a":tru})",
                                     R"({"a" 1})",
                                     R"({"a":1} x)",
                                     R"({"a":"b})",
                                     R"(["a"])",
                                     R"({"a":-})",
                                     R"({a:1})",
                                     "",
                                     R"({"a":1234567890123456789})"};

}  // namespace

TEST_CASE("a plain line has the tree that the JSON library makes of it") {
  for (const std::string& line : plain) {
    CAPTURE(line);
    const auto quick = plain_object(line), whole = judged(line);
    REQUIRE(quick);
    REQUIRE(whole);
    CHECK(same(*quick, *whole));
  }
}

TEST_CASE("what is not plain is left to the JSON library") {
  for (const std::string& line : other) {
    CAPTURE(line);
    CHECK_FALSE(plain_object(line));
  }
}

// The JSON library (nlohmann_json, RFC 8259) is the judge of every text.
TEST_CASE("plain lines changed at random are read as the JSON library reads them, or not at all") {
  std::mt19937 random(3);
  const std::string bytes = "{}[]\":,.-+0123456789etruefals \\/\tnx";
  int read = 0;
  for (int round = 0; round < 60'000; ++round) {
    std::string line = plain[random() % plain.size()];
    for (std::size_t changes = 1 + random() % 3; changes > 0; --changes) {
      const std::size_t at = random() % line.size();
      if (random() % 3 == 0)
        line.erase(at, 1);
      else if (random() % 2 == 0)
        line.insert(at, 1, bytes[random() % bytes.size()]);
      else
        line[at] = bytes[random() % bytes.size()];
      if (line.empty()) line = "{";
    }
    const auto quick = plain_object(line);
    if (!quick) continue;
    ++read;
    const auto whole = judged(line);
    CAPTURE(line);
    REQUIRE(whole);
    CHECK(same(*quick, *whole));
  }
  CHECK(read > 5'000);
}
