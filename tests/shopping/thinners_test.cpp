#include "tackfree/shopping/thinners.hpp"

#include "volume/small_job.hpp"
#include <doctest/doctest.h>

using namespace tackfree;
using doctest::Approx;

namespace {

JobVolumes volumes_of(const Job& job) {
  return job_volumes(job, take_off(job), std::vector<double>(job.coatings.size(), 1.0));
}

std::vector<ThinnerPurchase> bought(const Job& job, int sessions = 3) {
  return thinner_purchases(job, job.thinners, volumes_of(job),
                           {{.coating = 0, .method = 0, .sessions = sessions}});
}

}  // namespace

TEST_CASE("one liquid that thins and cleans is one purchase with both uses summed") {
  const Job job = small_job();
  const auto purchases = bought(job);
  REQUIRE(purchases.size() == 1);
  const ThinnerPurchase& spirits = purchases[0];
  CHECK(spirits.liquid == "mineral spirits");
  CHECK(spirits.sessions == 3);
  const CoatingNeed need = volumes_of(job).coatings[0];
  CHECK(spirits.to_thin.in(litres) == Approx(need.thinner.in(litres)));
  CHECK(spirits.to_clean.in(litres) == Approx(0.3));
  CHECK(spirits.expected.in(litres) == Approx(need.thinner.in(litres) + 0.3));
  // The reserve is on what thins; cleaning is known.
  CHECK(spirits.nine_in_ten.in(litres) == Approx(need.thinner.in(litres)*need.nine_in_ten + 0.3));
}

TEST_CASE("two liquids are two purchases, each with its own use") {
  Job job = small_job();
  job.coatings[0].words.cleaner = "turpentine";
  const auto purchases = bought(job);
  REQUIRE(purchases.size() == 2);
  CHECK(purchases[0].liquid == "mineral spirits");
  CHECK(purchases[0].to_clean == Volume{});
  CHECK(purchases[1].liquid == "turpentine");
  CHECK(purchases[1].to_thin == Volume{});
}

TEST_CASE("two coatings that take the same liquid buy it together") {
  Job job = small_job();
  job.coatings.push_back(oil_varnish());
  job.coatings[1].name = "second varnish";
  const JobVolumes one = volumes_of(small_job());
  JobVolumes both = one;
  both.coatings.push_back(one.coatings[0]);
  both.coatings[1].coating = 1;
  const auto purchases = thinner_purchases(
      job, job.thinners, both,
      {{.coating = 0, .method = 0, .sessions = 2}, {.coating = 1, .method = 0, .sessions = 3}});
  REQUIRE(purchases.size() == 1);
  CHECK(purchases[0].sessions == 5);
  CHECK(purchases[0].to_thin.in(litres) == Approx(2 * one.coatings[0].thinner.in(litres)));
}

TEST_CASE("water is not bought, and nothing is where nothing is thinned or cleaned") {
  Job water = small_job();
  water.coatings[0] = waterborne();
  water.coatings[0].name = "varnish";
  CHECK(bought(water).empty());
  Job unthinned = small_job();
  unthinned.coatings[0].first_coat_thinner.value = percent(0);
  CHECK(bought(unthinned, 0).empty());
  CHECK(bought(unthinned, 1).size() == 1);
}

TEST_CASE("thinner comes in the job's own tins, else in the usual ones of its units") {
  Job job = small_job();
  CHECK(bought(job)[0].usual_sizes);
  CHECK(bought(job)[0].sizes.at(0).label == "0.5 L");
  job.units = UnitSystem::us;
  CHECK(bought(job)[0].sizes.at(0).label == "1 pt");
  Thinner own;
  own.name = "mineral spirits";
  own.tins = {{.label = "300 ml", .volume = millilitres(300), .price = 4.0}};
  job.thinners = {own};
  // 0.3 L to clean and some to thin: two tins, or one with 100 ml on the shelf.
  CHECK_FALSE(bought(job)[0].usual_sizes);
  CHECK(bought(job)[0].tins.counts == std::vector<int>{2});
  CHECK(bought(job)[0].tins.cost == Approx(8));
  job.thinners[0].on_shelf = {{millilitres(60)}, {millilitres(40)}};
  CHECK(bought(job)[0].on_shelf.in(millilitres) == Approx(100));
  CHECK(bought(job)[0].tins.counts == std::vector<int>{1});
}

TEST_CASE("a shelf alone keeps the usual sizes") {
  Job job = small_job();
  Thinner own;
  own.name = "mineral spirits";
  own.on_shelf = {{litres(3)}};
  job.thinners = {own};
  CHECK(bought(job)[0].usual_sizes);
  CHECK(bought(job)[0].tins.bought == Volume{});
  CHECK(bought(job)[0].left_over > litres(2));
}
