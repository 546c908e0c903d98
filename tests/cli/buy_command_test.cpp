#include "tackfree/cli/buy_command.hpp"

#include "cli/said.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

TEST_CASE("buy prints the plan's own shopping part, and exits as plan does") {
  const Folder folder;
  const std::string job = demo_in(folder);
  const std::string list = folder.in("buy.json"), whole = folder.in("plan.json");
  const Said bought = said({"buy", job, "--json", list});
  const Said planned = said({"plan", job, "--json", whole});
  CHECK(bought.code == exit_done);
  CHECK(planned.code == exit_done);
  const std::string text = text_of(list);
  CHECK(text.starts_with("{\n  \"tackfree_buy\": 1,"));
  const auto shopping = [](const std::string& json) {
    const std::size_t from = json.find("\n  \"shopping\": {");
    return json.substr(from, json.find("\n  }", from) - from);
  };
  CHECK(shopping(text).size() > 500);
  CHECK(shopping(text) == shopping(text_of(whole)));
  CHECK(said({"buy", "no_such_job.json"}).code == exit_wrong_input);
  CHECK(said({"buy", frozen_job}).code == exit_not_plannable);
  CHECK(said({"buy", frozen_job}).out.find("some steps found no time") != std::string::npos);
}

}  // namespace tackfree::testing
