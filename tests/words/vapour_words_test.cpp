#include "tackfree/words/vapour_words.hpp"

#include <regex>

#include "fumes/judged_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using namespace tackfree::testing;

namespace {

bool contains(const std::string& text, const std::string& part) {
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

TEST_CASE("habits read as a person would say them, and as a job file has them") {
  CHECK(words_for(AiringHabit{}) == "closed all the time");
  const AiringHabit habit{Opening::open, Opening::ajar, hours(4.5)};
  CHECK(words_for(habit) == "open to outdoors while coating, then ajar for 4.5 h");
  CHECK(job_text(habit) ==
        R"("while_coating": "open", "after": { "state": "ajar", "hours": 4.5 })");
  CHECK(words_for(Opening::open_and_fan) == "open to outdoors and fan on");
}

TEST_CASE("a stop says so, with the reason and the flow; the remedies never give leave") {
  const Figures figures(JudgedJob().job);
  const std::string stop = vapour_remedy(with_shares(0.4, 3, 2), figures);
  CHECK(contains(stop, "do not put this coat on in this room like this"));
  CHECK(contains(stop, "At least 130 m\u00b3/h of outdoor air"));
  CHECK(vapour_remedy(with_shares(0.01, 0.1, 0.1), figures).empty());
  for (const double share : {0.01, 0.15, 0.4})
    for (const double exposure : {0.1, 0.7, 4.0}) {
      const RoomJudgement room = with_shares(share, exposure, exposure);
      const std::string text = vapour_remedy(room, figures) + vapour_estimate(room);
      CHECK_FALSE(std::regex_search(
          text,
          std::regex("\\b([Ss]afe(ly)?|without a (mask|respirator)|you (may|can) enter)\\b")));
    }
}

TEST_CASE("what is switched off goes by the names that the job gives, its heater with them") {
  Job job;
  job.room.ignition_sources = {"water heater", "freezer"};
  CHECK(to_switch_off(job) == job.room.ignition_sources);
  AirMix mix;
  mix.indoors = Indoors{.heating = Heating{.kind = HeaterKind::glowing}};
  job.air = mix;
  CHECK(to_switch_off(job) == std::vector<std::string>{"water heater", "freezer", "the heater"});
}
