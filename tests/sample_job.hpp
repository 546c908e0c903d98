// Sample job: a small invented job with the built-in finishing data, for tests of any stage.
#pragma once

#include "tackfree/input/finishing_data_reader.hpp"
#include "tackfree/model/job.hpp"

#include <stdexcept>

namespace tackfree::testing {

inline Coating class_of(const FinishingData& data, const std::string& key) {
  for (const Coating& coating : data.classes)
    if (coating.class_key == key) return coating;
  throw std::runtime_error("no class " + key);
}

inline Coating named(Coating coating, const std::string& name) {
  coating.name = name;
  return coating;
}

inline Instant instant(const char* text) { return parse_instant(text).value(); }

/// One solid top, both faces, 1.800 x 0.600 x 0.030 m; oil varnish by brush; 20 C and 50 % RH;
/// every evening 18:00 to 21:30 and Saturday 9:00 to 17:00, UTC; no power sanding 20:00 to 08:00.
inline Job sample_job(const std::string& class_key = "oil_polyurethane") {
  Job job;
  job.data = built_in_finishing_data();
  job.file = "sample.json";
  job.id = "sample";
  job.name = "Sample";
  job.coatings = {named(class_of(job.data, class_key), "finish")};
  job.systems = {{"clear", Wear::normal, {{"finish", "finish", "brush", 3, std::nullopt, 0}}, 0}};
  job.batches = {{.name = "top", .system = "clear", .sides = Sides::turn_over}};
  Part top;
  top.name = "top";
  top.shape = Board{metres(1.8), metres(0.6), metres(0.03)};
  top.coated = {Face::top, Face::bottom, Face::front, Face::back, Face::left, Face::right};
  top.batch = "top";
  job.parts = {top};
  job.air = ConstantAir{celsius(20), humidity_percent(50)};
  job.room.volume = cubic_metres(90);
  for (std::size_t day = 0; day < 5; ++day) job.calendar.weekly[day] = {{18 * 60, 21 * 60 + 30}};
  job.calendar.weekly[5] = {{9 * 60, 17 * 60}};
  job.calendar.no_power_sanding = {{0, 8 * 60}, {20 * 60, 24 * 60}};
  return job;
}

/// A second batch: two legs, 0.700 m long, 40 mm thick, coated in one go.
inline void add_legs(Job& job) {
  Part leg;
  leg.name = "leg";
  leg.shape = Round{metres(0.7), millimetres(40)};
  leg.quantity = 2;
  leg.coated = {Face::side, Face::left, Face::right};
  leg.batch = "legs";
  job.parts.push_back(leg);
  job.batches.push_back({.name = "legs", .system = "clear", .sides = Sides::on_points});
}

/// A job of one coat of each class, one over the other.
inline Job layers(const std::vector<std::string>& classes) {
  Job job = sample_job();
  job.batches[0].sides = Sides::on_points;
  job.coatings.clear();
  job.systems[0].steps.clear();
  for (const std::string& key : classes) {
    job.coatings.push_back(named(class_of(job.data, key), key));
    job.systems[0].steps.push_back({key, key, "brush", 1, std::nullopt, 0});
  }
  return job;
}

}  // namespace tackfree::testing
