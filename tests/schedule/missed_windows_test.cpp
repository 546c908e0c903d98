#include "tackfree/schedule/missed_windows.hpp"

#include "schedule/scheduled.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::Scheduled;

Scheduled unsanded(Duration window) { return testing::scheduled(testing::unsanded_job(window)); }

KeyedCoats missed(const Scheduled& s) { return missed_windows(s.job, s.list, s.air, s.schedule); }

TEST_CASE("a coat that goes on past the window of the one below is named, one inside it not") {
  CHECK(missed(unsanded(hours(12))) == KeyedCoats{{0, 0, 2}, {0, 0, 3}});
  CHECK(missed(unsanded(days(7))).empty());
}

TEST_CASE("warm air shortens the window, the label's hours in hand") {
  const Scheduled s = unsanded(hours(30));
  CHECK(missed(s).empty());  // 24 h from evening to evening at 20 C
  Scheduled warm = s;
  warm.job.air = ConstantAir{celsius(31), humidity_percent(50)};
  Problems problems;
  warm.air = AirSeries::over(warm.job.air, warm.schedule.span, problems).value();
  CHECK_FALSE(missed(warm).empty());
}

TEST_CASE("what is sanded for, has no window, or can never be sanded is not missed") {
  CHECK(missed(testing::scheduled(testing::sample_job())).empty());
  Scheduled open = unsanded(hours(12));
  open.job.coatings[0].recoat_unsanded_within.reset();
  CHECK(missed(open).empty());
  Scheduled bare = unsanded(hours(12));
  bare.job.coatings[0].grits.after_first.reset();
  bare.job.coatings[0].grits.between.reset();
  bare.job.coatings[0].grits.before_last.reset();
  CHECK(missed(bare).empty());
}

}  // namespace
}  // namespace tackfree
