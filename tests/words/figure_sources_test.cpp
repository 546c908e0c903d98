#include "tackfree/words/figure_sources.hpp"

#include <algorithm>
#include <string>

#include "small_plan.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const FiguresFrom* from(const FigureGroup& group, Origin origin, const std::string& source) {
  const auto found =
      std::find_if(group.origins.begin(), group.origins.end(),
                   [&](const FiguresFrom& f) { return f.origin == origin && f.source == source; });
  return found == group.origins.end() ? nullptr : &*found;
}

bool lists(const FiguresFrom* figures, const std::string& text) {
  return figures != nullptr && std::find(figures->figures.begin(), figures->figures.end(), text) !=
                                   figures->figures.end();
}

}  // namespace

TEST_CASE("figures stand under their own origin and source") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  const auto groups = figure_groups(plan, Figures(plan.job));
  REQUIRE(groups.size() == 3);  // varnish, brush, the rest
  const FigureGroup& varnish = groups[0];
  CHECK(varnish.title.starts_with("varnish (oil-based polyurethane varnish)"));
  CHECK(lists(from(varnish, Origin::practice, "typical of labels"), "solids 45 %"));
  CHECK(lists(from(varnish, Origin::label, ""), "dry to sand after 12 h"));
  CHECK(lists(from(varnish, Origin::practice, ""), "spread 12.3 m\u00b2/L"));
  CHECK_FALSE(lists(from(varnish, Origin::label, ""), "spread 12.3 m\u00b2/L"));
  CHECK(std::is_sorted(varnish.origins.begin(), varnish.origins.end(),
                       [](const auto& a, const auto& b) { return a.origin < b.origin; }));
}

TEST_CASE("a system's own thinning stands beside the coating's") {
  Plan plan = small_plan({}, UnitSystem::metric);
  plan.job.systems[0].steps[0].first_coat_thinner = sourced(percent(25), Origin::measured);
  const auto groups = figure_groups(plan, Figures(plan.job));
  CHECK(lists(from(groups[0], Origin::measured, ""), "first coat of clear thinned by 25 %"));
  CHECK(lists(from(groups[0], Origin::practice, ""), "first coat thinned by 10 %"));
}

TEST_CASE(
    "usual sizes and the small things of a session tell their source, sizes only where used") {
  Plan plan = small_plan({}, UnitSystem::us);
  plan.job.data.shop.tins_us =
      sourced(std::vector<TinSize>{{"1 qt", us_quarts(1), {}}, {"1 gal", us_gallons(1), {}}},
              Origin::practice);
  plan.job.data.shop.rags_per_session = {2, Origin::practice, {}};
  plan.shopping.coatings = {CoatingPurchase{}};
  const auto rest = [&] { return figure_groups(plan, Figures(plan.job)).back(); };
  CHECK_FALSE(lists(from(rest(), Origin::practice, ""), "usual tins 1 qt, 1 gal"));
  CHECK(lists(from(rest(), Origin::practice, ""), "rags a session 2"));
  plan.shopping.coatings[0].usual_sizes = true;
  CHECK(lists(from(rest(), Origin::practice, ""), "usual tins 1 qt, 1 gal"));
}

TEST_CASE("what the cleaner gives off is listed where tools are cleaned with solvent") {
  Plan plan = small_plan({}, UnitSystem::metric);
  plan.job.data.shop.cleaner_volatiles = sourced(grams_per_litre(780), Origin::assumed);
  const auto rest = [&] { return figure_groups(plan, Figures(plan.job)).back(); };
  REQUIRE_FALSE(plan.volumes.coatings.empty());
  plan.job.coatings[0].cleaner_mix.clear();
  CHECK_FALSE(lists(from(rest(), Origin::assumed, ""), "cleaner gives off 780 g/L"));
  plan.job.coatings[0].cleaner_mix.emplace_back();
  CHECK(lists(from(rest(), Origin::assumed, ""), "cleaner gives off 780 g/L"));
}

TEST_CASE("the estimate of vapour tells where its limits and air changes come from") {
  Plan plan = small_plan({}, UnitSystem::metric);
  CHECK(figure_groups(plan, Figures(plan.job)).back().title != "Vapour and airing");
  Solvent spirits;
  spirits.key = spirits.title = "spirits";
  spirits.limit_8h = sourced(milligrams_per_cubic_metre(350), Origin::published, "a guide");
  plan.job.data.solvents = {spirits};
  plan.job.data.air_changes.ajar = sourced(per_hour(1.5), Origin::assumed);
  plan.room.emplace();
  plan.room->solvents = {0};
  const FigureGroup vapour = figure_groups(plan, Figures(plan.job)).back();
  CHECK(vapour.title == "Vapour and airing");
  CHECK(lists(from(vapour, Origin::published, "a guide"), "spirits at work, 8 h, 350 mg/m\u00b3"));
  CHECK(lists(from(vapour, Origin::assumed, ""), "ajar 1.5 air changes an hour"));
}

TEST_CASE("only film aims for the wear of the systems in use are listed") {
  const Plan plan = small_plan({}, UnitSystem::metric);
  const auto groups = figure_groups(plan, Figures(plan.job));
  const FiguresFrom* assumed = from(groups[0], Origin::assumed, "");
  CHECK(lists(assumed, "film aim for normal wear 80 \u00b5m"));
  CHECK_FALSE(lists(assumed, "film aim for hard wear 110 \u00b5m"));
}

TEST_CASE("a method in use is listed once") {
  const Plan plan = small_plan();
  const auto groups = figure_groups(plan, Figures(plan.job));
  CHECK(std::count_if(groups.begin(), groups.end(),
                      [](const FigureGroup& g) { return g.title == "brush"; }) == 1);
  CHECK(lists(from(groups[1], Origin::practice, ""), "stays on the work: 95 %"));
}
