#include "tackfree/fumes/vapour_words.hpp"

#include <regex>

#include "fumes/judged_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

RoomJudgement with_shares(double explosive, double quarter_hour, double day) {
  RoomJudgement room;
  room.limits[0].share = explosive / 0.25;
  room.limits[1].share = explosive / 0.10;
  room.limits[2].share = quarter_hour;
  room.limits[3].share = day;
  for (LimitJudgement& limit : room.limits) limit.least_flow = cubic_metres_per_hour(123.4);
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

TEST_CASE("habits read as a person would say them, and as a job file has them") {
  CHECK(words_for(AiringHabit{}) == "closed all the time");
  const AiringHabit habit{Opening::open, Opening::ajar, hours(4.5)};
  CHECK(words_for(habit) == "door open while coating, then ajar for 4.5 h");
  CHECK(job_text(habit) ==
        R"("while_coating": "open", "after": { "state": "ajar", "hours": 4.5 })");
  CHECK(words_for(Opening::open_and_fan) == "door open and fan on");
}

TEST_CASE("flows are rounded up to two digits, in both units") {
  CHECK(flow_text(cubic_metres_per_hour(123.4)) == "130 m3/h (73 cfm)");
  CHECK(flow_text(cubic_metres_per_hour(0.02)) == "1 m3/h (1 cfm)");
}

TEST_CASE("a stop says so, with the reason and the flow; the remedies never give leave") {
  const std::string stop = vapour_remedy(with_shares(0.4, 3, 2));
  CHECK(holds(stop, "do not put this coat on in this room like this"));
  CHECK(holds(stop, "At least 130 m3/h (73 cfm)"));
  CHECK(vapour_remedy(with_shares(0.01, 0.1, 0.1)).empty());
  for (const double share : {0.01, 0.15, 0.4})
    for (const double exposure : {0.1, 0.7, 4.0}) {
      const RoomJudgement room = with_shares(share, exposure, exposure);
      const std::string text = vapour_remedy(room) + vapour_estimate(room);
      CHECK_FALSE(std::regex_search(
          text,
          std::regex("\\b([Ss]afe(ly)?|without a (mask|respirator)|you (may|can) enter)\\b")));
    }
}

TEST_CASE("solvents that no cartridge is listed for are named") {
  JudgedJob job;
  RoomJudgement room;
  room.solvents = {0};
  CHECK(cartridge_sentence(job.job, room).empty());
  job.job.data.solvents[0].cartridges_serve = false;
  CHECK(holds(cartridge_sentence(job.job, room), "cartridge masks for mineral spirits"));
}
