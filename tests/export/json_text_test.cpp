#include "tackfree/export/json_text.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("a JSON document shows no control or direction character and gives all of them back") {
  const std::string all =
      "\x01 \n \x1b[2J \x7f \u0085 \u009b \u200f \u202e \u2028 \u2029 \u2066 \ufeff \U000E0041 "
      "\u00e9 "
      "\u00a0 \U0001F600";
  const nlohmann::ordered_json document = {{"name", all}};
  const std::string text = json_text(document);
  CHECK(text ==
        "{\n  \"name\": \"\\u0001 \\n \\u001b[2J \\u007f \\u0085 \\u009b \\u200f \\u202e \\u2028 "
        "\\u2029 \\u2066 \\ufeff \\udb40\\udc41 \u00e9 \u00a0 \U0001F600\"\n}\n");
  CHECK(nlohmann::ordered_json::parse(text) == document);
  CHECK(json_text({{"a", "caf\xe9"}}) == "{\n  \"a\": \"caf\uFFFD\"\n}\n");
}
