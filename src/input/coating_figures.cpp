#include "tackfree/input/coating_figures.hpp"

#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The Gregorian mean month, 365.2425 / 12 days.
constexpr Unit<DurationKind> months{days.si_per_unit() * 365.2425 / 12};

constexpr NumberRange share{0, 100, "%"};
constexpr NumberRange film{1, 1000, "um"};
constexpr NumberRange wait_hours{0.05, 1000, "h"};
constexpr NumberRange wait_days{0.1, 200, "days"};
constexpr NumberRange coating_temperature{-10, 60, "C"};

void read_spread(FigureReader& figures, Coating& coating) {
  constexpr std::string_view metric = "spread_m2_per_l", us = "spread_ft2_per_gal";
  // A class has one way of writing it; a person copies what the tin says.
  if (figures.in_finishing_data() || figures.has(metric))
    figures.read(coating.spread, metric, {1, 100, "m2 per litre"}, square_metres_per_litre);
  if (figures.in_finishing_data()) return;
  if (figures.has(metric) && figures.has(us))
    figures.object().report(us, "wanted either spread_m2_per_l or spread_ft2_per_gal, not both");
  figures.object().value(metric);
  figures.read(coating.spread, us, {40, 4000, "ft2 per US gallon"}, square_feet_per_us_gallon);
}

/// A range, as labels often give it: `[2, 4]`. The plan takes the upper end.
bool read_range(FigureReader& figures, Coating& coating, const StageKey& stage) {
  JsonCursor& object = figures.object();
  if (figures.in_finishing_data() || !object.has(stage.key)) return false;
  const JsonNode& node = *object.value(stage.key);
  if (node.kind != JsonNode::Kind::array) return false;
  const NumberRange& range = stage.in_days ? wait_days : wait_hours;
  const Unit<DurationKind>& unit = stage.in_days ? days : hours;
  std::vector<Duration> ends;
  for (const JsonNode& item : node.items)
    if (const auto end =
            number_in(item, object.path_of(stage.key), range, object.file(), object.problems()))
      ends.push_back(unit(*end));
    else
      return true;
  if (ends.size() != 2 || ends[0] > ends[1]) {
    object.report(stage.key, "wanted one number, or a range from less to more, such as [2, 4]");
    return true;
  }
  coating.label_least[index_of(stage.stage)] = ends[0];
  coating.label_after[index_of(stage.stage)] = {ends[1], figures.origin(), {}};
  return true;
}

void read_stages(FigureReader& figures, Coating& coating, StagesGiven& given) {
  for (const StageKey& stage : stage_keys) {
    if (figures.has(stage.key)) {
      // A time of the tin's own takes the place of all that was known before.
      coating.label_least[index_of(stage.stage)].reset();
      coating.label_points[index_of(stage.stage)].clear();
    }
    if (read_range(figures, coating, stage)) {
      given[index_of(stage.stage)] = true;
      continue;
    }
    std::optional<Sourced<Duration>>& target = coating.label_after[index_of(stage.stage)];
    if (figures.read(target, stage.key, stage.in_days ? wait_days : wait_hours,
                     stage.in_days ? days : hours))
      given[index_of(stage.stage)] = true;
  }
  figures.read(coating.recoat_unsanded_within, "recoat_unsanded_within_h", wait_hours, hours);
}

void read_limits(FigureReader& figures, CoatingLimits& limits) {
  figures.read(limits.put_on_min, "put_on_min", coating_temperature);
  figures.read(limits.put_on_max, "put_on_max", coating_temperature);
  figures.read(limits.humidity_max, "humidity_max_pct", {1, 100, "% RH"}, humidity_percent);
  figures.read(limits.humidity_caution, "humidity_caution_pct", {1, 100, "% RH"}, humidity_percent);
  figures.read(limits.hold_min, "hold_min", coating_temperature);
  figures.read(limits.hold_put_on_min, "hold_put_on_min_h", {0, 200, "h"}, hours);
  figures.read(limits.dew_point_margin, "dew_point_margin_k", {0, 20, "K"}, kelvins);
}

void read_ways_of_working(FigureReader& figures, Coating& coating) {
  constexpr NumberRange minutes_long{1, 240, "minutes"};
  figures.read(coating.coats_a_day_max, "coats_a_day_max", {1, 20});
  figures.read(coating.pot_life, "pot_life_h", {0.1, 100, "h"}, hours);
  figures.read(coating.wipe_off_after, "wipe_off_after_min", minutes_long, minutes);
  figures.read(coating.wipe_off_within, "wipe_off_within_min", minutes_long, minutes);
  std::optional<Sourced<Temperature>> stops_below;
  figures.read(stops_below, "stops_below", {-50, 40, "C"});
  if (stops_below) coating.law.stops_below = *stops_below;
}

/// Whether the first stage never ends after the second.
using StageOrder = std::array<std::array<bool, stage_count>, stage_count>;

constexpr StageOrder order_of_stages() {
  constexpr std::array neighbours{
      std::pair{Stage::dust_free, Stage::touch},  std::pair{Stage::touch, Stage::handle},
      std::pair{Stage::handle, Stage::recoat},    std::pair{Stage::recoat, Stage::sand},
      std::pair{Stage::recoat, Stage::light_use}, std::pair{Stage::light_use, Stage::full_cure},
      std::pair{Stage::handle, Stage::hardware},  std::pair{Stage::hardware, Stage::stack},
      std::pair{Stage::stack, Stage::full_cure}};
  StageOrder order{};
  for (const auto& [shorter, longer] : neighbours)
    order[index_of(shorter)][index_of(longer)] = true;
  for (std::size_t via = 0; via < stage_count; ++via)
    for (std::size_t from = 0; from < stage_count; ++from)
      for (std::size_t to = 0; to < stage_count; ++to)
        if (order[from][via] && order[via][to]) order[from][to] = true;
  return order;
}
constexpr StageOrder never_after = order_of_stages();

/// A time of the class that another one, from the tin, has moved: no tin says this one.
Sourced<Duration> as_assumed(const Sourced<Duration>& moved) {
  return {moved.value, Origin::assumed, {}};
}

void settle_stages(JsonCursor& at, Coating& coating, const StagesGiven& given) {
  auto& times = coating.label_after;
  for (std::size_t a = 0; a < stage_count; ++a)
    for (std::size_t b = 0; b < stage_count; ++b) {
      if (!never_after[a][b] || !times[a] || !times[b] || times[a]->value <= times[b]->value)
        continue;
      // Recoated lying still it need not bear handling: a tin may say so, a class too.
      const bool lying = a == index_of(Stage::handle) && b == index_of(Stage::recoat);
      if (given[a] && given[b] && lying) continue;
      if (given[a] && given[b])
        at.report(stage_keys[b].key,
                  fmt::format("wanted {} no sooner than {}, {:g} h", stage_keys[b].key,
                              stage_keys[a].key, times[a]->value.in(hours)));
      else if (given[a])
        times[b] = as_assumed(*times[a]);
      else if (given[b])
        times[a] = as_assumed(*times[b]);
    }
}

void settle_recoat_window(JsonCursor& at, Coating& coating, const StagesGiven& given) {
  const auto& recoat = coating.label_after[index_of(Stage::recoat)];
  auto& within = coating.recoat_unsanded_within;
  if (!recoat || !within || within->value >= recoat->value) return;
  // A tin with a later recoat time than its class has no window unless it names one.
  if (given[index_of(Stage::recoat)] && !at.has("recoat_unsanded_within_h"))
    within = recoat;
  else
    at.report("recoat_unsanded_within_h",
              fmt::format("wanted no less than recoat_after_h, {:g} h", recoat->value.in(hours)));
}

}  // namespace

void read_coating_figures(FigureReader& figures, Coating& coating, StagesGiven& given) {
  figures.read(coating.solids, "solids_pct", {1, 100, "% by volume"}, percent);
  read_spread(figures, coating);
  figures.read(coating.spread_later, "spread_later_m2_per_l", {1, 100, "m2 per litre"},
               square_metres_per_litre);
  figures.read(coating.bare_factor, "bare_factor", {0.5, 5});
  figures.read(coating.coats_min, "coats_min", {1, 20});
  figures.read(coating.coats_max, "coats_max", {1, 20});
  if (coating.builds_film) {
    figures.read(coating.film_aim[0], "film_aim_light_um", film, micrometres);
    figures.read(coating.film_aim[1], "film_aim_normal_um", film, micrometres);
    figures.read(coating.film_aim[2], "film_aim_hard_um", film, micrometres);
    figures.read(coating.film_cap, "film_cap_um", film, micrometres);
    figures.read(coating.lost_to_sanding, "lost_to_sanding_um", {0, 50, "um"}, micrometres);
  }
  figures.read(coating.first_coat_thinner, "first_coat_thinner_pct", share, percent);
  figures.read(coating.spray_thinner_of_mix, "spray_thinner_of_mix_pct", {0, 60, "% of the mix"},
               percent);
  figures.read(coating.volatiles, "volatiles_g_per_l", {0, 1500, "g per litre"}, grams_per_litre);
  figures.read(coating.thinner_volatiles, "thinner_volatiles_g_per_l", {0, 1500, "g per litre"},
               grams_per_litre);
  figures.read(coating.flash_point, "flash_point", {-60, 400, "C"});
  read_stages(figures, coating, given);
  read_limits(figures, coating.limits);
  read_ways_of_working(figures, coating);
  figures.read(coating.grits.bare, "grits_bare");
  figures.read(coating.grits.bare_veneer, "grits_bare_veneer");
  figures.read(coating.grits.after_first, "grit_after_first");
  figures.read(coating.grits.between, "grit_between");
  figures.read(coating.grits.before_last, "grit_before_last");
  figures.read(coating.clean_up, "clean_up_min", {0, 240, "minutes"}, minutes);
  figures.read(coating.tin_keeps, "tin_keeps_months", {0.1, 120, "months"}, months);
}

void settle_coating_figures(JsonCursor& at, Coating& coating, const StagesGiven& given) {
  settle_stages(at, coating, given);
  settle_recoat_window(at, coating, given);
  if (coating.wipe_off_after.has_value() != coating.wipe_off_within.has_value())
    at.report(coating.wipe_off_after ? "wipe_off_after_min" : "wipe_off_within_min",
              "wanted wipe_off_after_min and wipe_off_within_min, both or neither");
  else if (coating.wipe_off_after &&
           coating.wipe_off_after->value + minutes(1) > coating.wipe_off_within->value)
    at.report("wipe_off_within_min", "wanted more than wipe_off_after_min");
  if (coating.coats_min.value > coating.coats_max.value)
    at.report("coats_min",
              fmt::format("wanted no more than coats_max, {}", coating.coats_max.value));
  if (coating.limits.put_on_min.value > coating.limits.put_on_max.value)
    at.report(at.has("put_on_min_f") ? "put_on_min_f" : "put_on_min_c",
              fmt::format("wanted no more than put_on_max, {:.4g} C",
                          coating.limits.put_on_max.value.in_celsius()));
  for (std::size_t wear = 1; wear < coating.film_aim.size(); ++wear)
    if (coating.film_aim[wear].value < coating.film_aim[wear - 1].value)
      at.report(wear == 1 ? "film_aim_normal_um" : "film_aim_hard_um",
                "wanted the film aims to rise from light to normal to hard wear");
}

void read_method_figures(FigureReader& figures, Method& method) {
  figures.read(method.transfer, "transfer_pct", {5, 100, "%"}, percent);
  figures.read(method.kept_by_tool, "kept_by_tool_ml", {0, 5000, "ml"}, millilitres);
  figures.read(method.rate, "rate_m2_per_h", {0.1, 500, "m2 per hour"}, square_metres_per_hour);
  figures.read(method.need_sigma, "need_sigma", {0, 1});
}

void read_labour_figures(FigureReader& figures, Labour& labour) {
  constexpr NumberRange rate{0.05, 500, "m2 per hour"};
  constexpr NumberRange stretch{0, 1440, "minutes"};
  constexpr NumberRange serves{0.01, 1000, "m2"};
  figures.read(labour.sand_bare_machine, "sand_bare_machine_m2_per_h", rate,
               square_metres_per_hour);
  figures.read(labour.sand_bare_hand, "sand_bare_hand_m2_per_h", rate, square_metres_per_hour);
  figures.read(labour.sand_between, "sand_between_m2_per_h", rate, square_metres_per_hour);
  figures.read(labour.dust_off, "dust_off_m2_per_h", rate, square_metres_per_hour);
  figures.read(labour.set_up, "set_up_min", stretch, minutes);
  figures.read(labour.turn_over, "turn_over_min", stretch, minutes);
  figures.read(labour.fit_hardware, "fit_hardware_min", stretch, minutes);
  figures.read(labour.dust_settles, "dust_settles_min", stretch, minutes);
  figures.read(labour.raised_grain_dries, "raised_grain_dries_h", stretch, hours);
  figures.read(labour.mix_pot, "mix_pot_min", stretch, minutes);
  figures.read(labour.wipe_off, "wipe_off_m2_per_h", rate, square_metres_per_hour);
  figures.read(labour.fill_pores, "fill_pores_m2_per_h", rate, square_metres_per_hour);
  figures.read(labour.filler_dries, "filler_dries_h", {0, 240, "h"}, hours);
  figures.read(labour.abrasive_bare, "abrasive_bare_m2", serves, square_metres);
  figures.read(labour.abrasive_between, "abrasive_between_m2", serves, square_metres);
  constexpr std::array<std::string_view, 2> tools{"machine", "hand"};
  if (const auto tool = figures.object().word("bare_tool", tools))
    labour.bare_tool = *tool == 0 ? SandingTool::machine : SandingTool::hand;
}

}  // namespace tackfree
