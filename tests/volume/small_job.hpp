// Small job: one board, one oil varnish by brush, with the figures that the tests reckon with.
#pragma once

#include "tackfree/model/job.hpp"

namespace tackfree {

/// Typical figures of an oil-based polyurethane varnish. All are this project's starting data.
inline Coating oil_varnish() {
  Coating coating;
  coating.name = "varnish";
  coating.solids.value = percent(45);
  coating.spread.value = square_metres_per_litre(12.3);
  coating.bare_factor.value = 1.25;
  coating.coats_min.value = 2;
  coating.coats_max.value = 4;
  coating.film_aim[0].value = micrometres(50);
  coating.film_aim[1].value = micrometres(80);
  coating.film_aim[2].value = micrometres(110);
  coating.film_cap.value = micrometres(160);
  coating.lost_to_sanding.value = micrometres(4);
  coating.first_coat_thinner.value = percent(10);
  coating.grits.after_first = sourced(Grit{240}, Origin::practice);
  coating.grits.between = sourced(Grit{320}, Origin::practice);
  coating.grits.before_last = sourced(Grit{320}, Origin::practice);
  coating.volatiles.value = grams_per_litre(450);
  coating.thinner_volatiles.value = grams_per_litre(780);
  coating.flash_point = sourced(celsius(40), Origin::label);
  coating.dries_by_oxidation = true;
  coating.words.thinner = "mineral spirits";
  coating.words.cleaner = "mineral spirits";
  coating.words.wipe_with = "a tack cloth";
  return coating;
}

inline Coating waterborne() {
  Coating coating = oil_varnish();
  coating.name = "waterborne";
  coating.solids.value = percent(32);
  coating.spread.value = square_metres_per_litre(12);
  coating.bare_factor.value = 1.2;
  coating.film_aim[1].value = micrometres(75);
  coating.film_cap.value = micrometres(150);
  coating.lost_to_sanding.value = micrometres(4);
  coating.first_coat_thinner.value = percent(0);
  coating.volatiles.value = grams_per_litre(80);
  coating.thinner_volatiles.value = grams_per_litre(0);
  coating.flash_point.reset();
  coating.dries_by_oxidation = false;
  coating.words.thinner = "water";
  coating.words.cleaner = "water and soap";
  return coating;
}

inline std::vector<TinSize> litre_sizes(const std::vector<std::string>& amounts) {
  std::vector<TinSize> sizes;
  for (const std::string& amount : amounts)
    sizes.push_back({.label = amount + " L", .volume = litres(std::stod(amount)), .price = {}});
  return sizes;
}

inline FinishingData small_data() {
  FinishingData data;
  data.grain_factors = {{{.first = {1.0}, .second = {1.0}},
                         {.first = {1.0}, .second = {1.0}},
                         {.first = {2.0}, .second = {1.3}},
                         {.first = {2.0}, .second = {1.3}}}};
  data.need_spread.absorption_sigma.value = 0.20;
  data.shop.tins_metric.value = litre_sizes({"0.25", "0.375", "0.75", "1", "2.5", "5"});
  data.shop.thinner_metric.value = litre_sizes({"0.5", "1", "5"});
  data.shop.tins_us.value = {{.label = "1/2 pt", .volume = us_pints(0.5), .price = {}},
                             {.label = "1 pt", .volume = us_pints(1), .price = {}},
                             {.label = "1 qt", .volume = us_quarts(1), .price = {}},
                             {.label = "1 gal", .volume = us_gallons(1), .price = {}}};
  data.shop.thinner_us.value = {data.shop.tins_us.value.begin() + 1, data.shop.tins_us.value.end()};
  data.shop.cleaner_per_session.value = litres(0.1);
  data.shop.rags_per_session.value = 2;
  data.shop.sessions_per_cloth.value = 3;
  data.shop.dust_mask_lasts.value = hours(8);
  data.need_spread.first_coat_film_share.value = 0.5;
  Method brush;
  brush.key = "brush";
  brush.title = "brush";
  brush.transfer.value = percent(95);
  brush.kept_by_tool.value = millilitres(20);
  brush.rate.value = square_metres_per_hour(8);
  brush.need_sigma.value = 0.15;
  brush.applicator = "brush";
  data.methods = {brush};
  return data;
}

inline constexpr FaceSet all_board_faces{Face::top,  Face::bottom, Face::front,
                                         Face::back, Face::left,   Face::right};

/// A solid top of 1.800 x 0.600 x 0.030 m, coated all over.
inline Part small_top() {
  Part top;
  top.name = "top";
  top.shape = Board{.length = metres(1.8), .width = metres(0.6), .thickness = millimetres(30)};
  top.coated = all_board_faces;
  top.batch = "tops";
  return top;
}

/// The top with a system of one step, as many coats as normal wear asks for.
inline Job small_job() {
  Job job;
  job.data = small_data();
  job.parts = {small_top()};
  job.coatings = {oil_varnish()};
  FinishSystem system;
  system.name = "system";
  system.steps = {SystemStep{.name = "varnish",
                             .coating = "varnish",
                             .method = "brush",
                             .coats = {},
                             .first_coat_thinner = {},
                             .line = 0}};
  job.systems = {system};
  Batch batch;
  batch.name = "tops";
  batch.system = "system";
  job.batches = {batch};
  return job;
}

}  // namespace tackfree
