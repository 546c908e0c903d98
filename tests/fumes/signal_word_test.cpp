#include "tackfree/fumes/signal_word.hpp"

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

RoomJudgement with_shares(double explosive, double quarter_hour, double day) {
  RoomJudgement room;
  room.limits[0].share = explosive / 0.25;
  room.limits[1].share = explosive / 0.10;
  room.limits[2].share = quarter_hour;
  room.limits[3].share = day;
  return room;
}

}  // namespace

// Source of 10 % and 25 %: State of Washington, WAC 296-304-03009; International Fire Code 2018,
// 2404.7.3. The words are this project's choice.
TEST_CASE("the signal word follows the gravest limit") {
  CHECK(signal_word(with_shares(0.26, 0, 0)) == "DANGER");
  CHECK(signal_word(with_shares(0.24, 0, 0)) == "WARNING");
  CHECK(signal_word(with_shares(0.09, 0.4, 0.4)) == std::nullopt);
  CHECK(signal_word(with_shares(0.01, 1.1, 0)) == "WARNING");
  CHECK(signal_word(with_shares(0.01, 0, 1.1)) == "WARNING");
  CHECK(signal_word(with_shares(0.01, 0.6, 0)) == "CAUTION");
  RoomJudgement rising = with_shares(0.01, 0.1, 0.1);
  rising.stretches.resize(1);
  CHECK(signal_word(rising) == std::nullopt);
  rising.stretches[0].rises_again = true;
  CHECK(signal_word(rising) == "WARNING");
}

TEST_CASE("the gravest word counts least, and a word that is none counts most") {
  CHECK(gravity("DANGER") < gravity("WARNING"));
  CHECK(gravity("WARNING") < gravity("CAUTION"));
  CHECK(gravity("CAUTION") < gravity("NOTICE"));
  CHECK(gravity("NOTICE") < gravity("HINT"));
}
