#include "tackfree/export/figures_json.hpp"

#include "small_plan.hpp"
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace tackfree;

TEST_CASE("figures are written in the unit of their key, with origin and source") {
  nlohmann::ordered_json document;
  put_figures(document, small_plan({}, UnitSystem::us));
  const auto& varnish = document["coatings"][0];
  CHECK(varnish["film"]["spread_m2_per_l"]["value"] == 12.3);
  CHECK(varnish["film"]["film_cap_um"]["value"] == 160);
  CHECK(varnish["film"]["flash_point_c"]["value"] == 40);
  CHECK(varnish["film"]["thinner_volatiles_g_per_l"]["value"] == 780);
  CHECK(varnish["drying"]["sand_after_h"]["value"] == 12);
  CHECK(varnish["limits"]["put_on_min_c"]["value"] == 10);
  CHECK(varnish["grits"]["bare_p"]["value"] == nlohmann::ordered_json{120, 180});
  CHECK(document["methods"].size() == 1);
  CHECK(document["methods"][0]["transfer_pct"]["value"] == 95);
  CHECK(document["methods"][0]["transfer_pct"]["origin"] == "practice");
}

TEST_CASE("figures that a coating does not have are left out") {
  Plan plan = small_plan();
  plan.job.coatings[0].flash_point.reset();
  nlohmann::ordered_json document;
  put_figures(document, plan);
  CHECK_FALSE(document["coatings"][0]["film"].contains("flash_point_c"));
  CHECK_FALSE(document["coatings"][0]["drying"].contains("touch_after_h"));
}
