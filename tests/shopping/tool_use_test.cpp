#include "tackfree/shopping/tool_use.hpp"

#include <doctest/doctest.h>

namespace tackfree {
namespace {

Operation coat(std::size_t coating, std::size_t method) {
  Operation operation;
  operation.kind = OperationKind::coat;
  operation.coating = coating;
  operation.method = method;
  return operation;
}

TEST_CASE("sessions are counted by coating and method, in the order of first use") {
  OperationList list;
  list.operations = {coat(1, 0), coat(0, 0), coat(1, 2)};
  Schedule schedule;
  schedule.sessions.resize(4);
  schedule.sessions[0].coating = 1;
  schedule.sessions[1].coating = 0;
  schedule.sessions[2].coating = 1;
  schedule.sessions[3].coating = 1;
  schedule.sessions[3].method = 2;
  const auto uses = tool_uses(list, schedule);
  REQUIRE(uses.size() == 3);
  CHECK(uses[0].coating == 1);
  CHECK(uses[0].sessions == 2);
  CHECK(uses[1].coating == 0);
  CHECK(uses[2].method == 2);
}

TEST_CASE("a coat that found no time counts as a session of its own") {
  OperationList list;
  list.operations = {coat(0, 0), coat(0, 0)};
  Schedule schedule;
  schedule.unplaced.push_back({.operation = 1});
  schedule.sessions.resize(1);
  const auto uses = tool_uses(list, schedule);
  REQUIRE(uses.size() == 1);
  CHECK(uses[0].sessions == 2);
}

TEST_CASE("what is cleaned or wrapped in a pause is counted beside the sessions") {
  OperationList list;
  list.operations = {coat(0, 0), coat(0, 0)};
  Schedule schedule;
  schedule.sessions.resize(1);
  schedule.steps.resize(2);
  schedule.steps[1].operation = 1;
  schedule.tool_rests = {{.dated_step = 0, .pause = {}, .wrapped = true, .cleaning = {}},
                         {.dated_step = 1, .pause = {}, .wrapped = false, .cleaning = {}}};
  const auto uses = tool_uses(list, schedule);
  REQUIRE(uses.size() == 1);
  CHECK(uses[0].sessions == 1);
  CHECK(uses[0].wrappings == 1);
  CHECK(uses[0].cleanings == 1);
  CHECK(cleanings_with(uses, 0) == 2);
}

}  // namespace
}  // namespace tackfree
