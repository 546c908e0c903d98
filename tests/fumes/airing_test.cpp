#include "tackfree/fumes/airing.hpp"

#include "fumes/judged_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;
using tackfree::testing::usual_changes;

namespace {

Instant hour(double h) { return Instant{Minutes(static_cast<int>(h * 60))}; }

CoatingStretch coating(double begin, double end) { return {{hour(begin), hour(end)}, {0}}; }

Room garage() {
  Room room;
  room.volume = cubic_metres(90);
  return room;
}

double working(const Room& room, Opening opening) {
  return working_changes(room, usual_changes(), opening).in(per_hour);
}

}  // namespace

TEST_CASE("the room is open while coating and for the hours after, then closed") {
  const auto spans = airing_spans({coating(19, 20)}, {Opening::open, Opening::ajar, hours(4)});
  REQUIRE(spans.size() == 2);
  CHECK(spans[0].opening == Opening::open);
  CHECK(spans[0].time == Interval{hour(19), hour(20)});
  CHECK(spans[1].opening == Opening::ajar);
  CHECK(spans[1].time == Interval{hour(20), hour(24)});
}

TEST_CASE("one way of opening all along is one span, and no airing none") {
  CHECK(airing_spans({coating(19, 20)}, {Opening::open, Opening::open, hours(4)}).size() == 1);
  CHECK(airing_spans({coating(19, 20)}, {}).empty());
  CHECK(airing_spans({coating(19, 20)}, {Opening::open, Opening::ajar, hours(0)}).size() == 1);
}

TEST_CASE("where two stretches overlap the wider opening holds") {
  const auto spans = airing_spans({coating(9, 10), coating(12, 13)},
                                  {Opening::open_and_fan, Opening::ajar, hours(6)});
  REQUIRE(spans.size() == 4);
  CHECK(spans[1].time == Interval{hour(10), hour(12)});
  CHECK(spans[2].opening == Opening::open_and_fan);
  CHECK(spans[2].time == Interval{hour(12), hour(13)});
  CHECK(spans[3].time == Interval{hour(13), hour(19)});
}

TEST_CASE("air changes count by opening, divided by bad mixing") {
  CHECK(working(garage(), Opening::closed) == Approx(0.5 / 3));
  CHECK(working(garage(), Opening::ajar) == Approx(0.5));
  CHECK(working(garage(), Opening::open) == Approx(5.0 / 3));
}

// Roots of 5 x 5 + 5 x 5, of 5 x 5 + 10 x 10 and of 5 x 5 + 1000 x 1000. Source: superposition of
// an unbalanced fan and natural flow, ASHRAE Handbook, Fundamentals (from memory).
TEST_CASE("half of a fan's rated flow counts, all of a measured one") {
  Room room = garage();
  room.fan = Fan{.flow = cubic_metres_per_hour(900)};
  CHECK(working(room, Opening::open_and_fan) == Approx(7.0711 / 2).epsilon(1e-4));
  room.fan->measured = true;
  CHECK(working(room, Opening::open_and_fan) == Approx(11.1803 / 2).epsilon(1e-4));
}

TEST_CASE("no more than 20 changes are credited unless the flow was measured") {
  Room room = garage();
  room.fan = Fan{.flow = cubic_metres_per_hour(90000)};
  CHECK(working(room, Opening::open_and_fan) == Approx(20.0 / 2));
  room.fan->measured = true;
  CHECK(working(room, Opening::open_and_fan) == Approx(1000.0125 / 2).epsilon(1e-6));
}

TEST_CASE("spans become air changes since the start, closed before, between and after") {
  const auto stretches =
      air_stretches({{{hour(2), hour(3)}, Opening::open}, {{hour(3), hour(5)}, Opening::ajar}},
                    hour(0), garage(), usual_changes());
  REQUIRE(stretches.size() == 4);
  CHECK(stretches[0].changes.in(per_hour) == Approx(0.5 / 3));
  CHECK(stretches[1].from.in(hours) == Approx(2));
  CHECK(stretches[2].changes.in(per_hour) == Approx(0.5));
  CHECK(stretches[3].from.in(hours) == Approx(5));
  CHECK(stretches[3].changes.in(per_hour) == Approx(0.5 / 3));
}

TEST_CASE("a session's stretch runs from its set-up to the end of its last coat") {
  OperationList list;
  list.operations.resize(3);
  list.operations[2].kind = OperationKind::sand_between;
  Schedule schedule;
  for (const double begin : {19.0, 19.5}) {
    DatedStep step;
    step.operation = schedule.steps.size();
    step.pieces = {{hour(begin), hour(begin + 0.5)}};
    step.session = 0;
    schedule.steps.push_back(step);
  }
  Session session;
  session.set_up = {hour(18.5), hour(19)};
  session.clean_up = {hour(20), hour(20.5)};
  session.steps = {0, 1};
  schedule.sessions = {session};
  const auto stretches = coating_stretches(list, schedule);
  REQUIRE(stretches.size() == 1);
  CHECK(stretches[0].time == Interval{hour(18.5), hour(20)});
}
