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
