#include "tackfree/shopping/sundries.hpp"

#include <algorithm>

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::vector<Sundry> listed(const Job& job, const OperationList& list, Length tape = {}) {
  const JobVolumes volumes =
      job_volumes(job, take_off(job), std::vector<double>(job.coatings.size(), 1.0));
  return sundries(job, volumes, list, {{.coating = 0, .method = 0, .sessions = 2}}, tape);
}

bool has(const std::vector<Sundry>& list, const std::string& piece) {
  return std::any_of(list.begin(), list.end(),
                     [&](const Sundry& s) { return s.what.find(piece) != std::string::npos; });
}

double amount_of(const std::vector<Sundry>& list, const std::string& what) {
  for (const Sundry& sundry : list)
    if (sundry.what.find(what) != std::string::npos) return sundry.amount;
  return 0;
}

TEST_CASE("rags, dusting cloths and applicators are counted by the data, not by the code") {
  Job job = small_job();
  CHECK(amount_of(listed(job, {}), "rags") == 4);  // two a session, two sessions
  CHECK(amount_of(listed(job, {}), "take the dust off") == 1);
  CHECK(amount_of(listed(job, {}), "brush, for") == 1);  // cleaned and used again
  job.data.shop.rags_per_session.value = 5;
  job.data.shop.sessions_per_cloth.value = 1;
  job.data.methods[0].applicator = "foam sleeves";
  job.data.methods[0].applicator_each_session = true;
  CHECK(amount_of(listed(job, {}), "rags") == 10);
  CHECK(amount_of(listed(job, {}), "take the dust off") == 2);
  CHECK(amount_of(listed(job, {}), "foam sleeves, for") == 2);
}

TEST_CASE("reasons are told in the units of the job") {
  OperationList sanding;
  Operation sand;
  sand.grit = Grit{120};
  sand.sheets = 1;
  sand.area = square_metres(2);
  sanding.operations = {sand};
  Job job = small_job();
  const auto why = [&] {
    for (const Sundry& sundry : listed(job, sanding))
      if (sundry.what.find("P120") != std::string::npos) return sundry.why;
    return std::string();
  };
  CHECK(why() == "for 2.0 m2");
  job.units = UnitSystem::us;
  CHECK(why() == "for 22 sq ft");
}

TEST_CASE("a lidded can is listed only where rags can heat themselves") {
  Job job = small_job();
  job.coatings[0].dries_by_oxidation = true;
  CHECK(has(listed(job, {}), "oily rags"));
  job.coatings[0].dries_by_oxidation = false;
  CHECK_FALSE(has(listed(job, {}), "oily rags"));
}

TEST_CASE("tape, masks and abrasives are listed only when something is masked or sanded") {
  const Job job = small_job();
  OperationList sanding;
  Operation sand;
  sand.kind = OperationKind::sand_bare;
  sand.grit = Grit{120};
  sand.sheets = 1.2;
  sand.work = hours(1);
  sanding.operations = {sand};
  CHECK(has(listed(job, sanding), "P120"));
  CHECK(has(listed(job, sanding), "mask"));
  CHECK_FALSE(has(listed(job, {}), "P120"));
  CHECK(has(listed(job, {}, metres(2)), "tape"));
  CHECK_FALSE(has(listed(job, {}), "tape"));
}

}  // namespace
}  // namespace tackfree
