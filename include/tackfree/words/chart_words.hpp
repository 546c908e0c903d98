// Chart words: titles, legends and descriptions of the charts, and headings that only a page has.
#pragma once

#include <string>

namespace tackfree {

/// `{}` stands for what the chart puts in.
namespace chart_words {

inline constexpr const char* put_on_limit = "{} {} to {}";
inline constexpr const char* damp_limit = ", up to {}";
inline constexpr const char* air_of_week = "Air and drying, {}";
inline constexpr const char* air_low = "air, low";
inline constexpr const char* air_high = "air, high";
inline constexpr const char* dew_low = "dew point, low";
inline constexpr const char* dew_high = "dew point, high";
inline constexpr const char* dry_to_handle = "dry to handle";
inline constexpr const char* air_curve = "air temperature";
inline constexpr const char* temperature_panel = "Temperature, {}";
inline constexpr const char* humidity_panel = "Humidity, %";
inline constexpr const char* outside_limits = "no coat goes on in this air";
inline constexpr const char* coat_limits = "limits for coating: {}";
inline constexpr const char* dried_share =
    "how far a coat has dried: full height is what it waits for";
inline constexpr const char* drying_of = "{}: drying";
inline constexpr const char* same_as_tables = "The same as tables";
inline constexpr const char* same_as_table = "The same as a table";
inline constexpr const char* working_hours = "your working hours";
inline constexpr const char* quiet_hours = "quiet hours: no power sanding";
inline constexpr const char* air_unfit_for = "air unfit for {}";
inline constexpr const char* air_unfit = "air unfit for the coat";
inline constexpr const char* no_work = "No work of your own; what is coated dries or waits.";
inline constexpr const char* work_of_week = "Work and waits, {}";
inline constexpr const char* waits_for_you = "waits for you";
inline constexpr const char* quarter_explosive = "a quarter of explosive";
inline constexpr const char* tenth_explosive = "a tenth of explosive";
inline constexpr const char* vapour_limits = "Vapour of the room against its limits";
inline constexpr const char* share_of_limit = "{}: {}";
inline constexpr const char* other_stretches = "The vapour of the other days";
inline constexpr const char* at_most = "At most {} the 8-hour limits{}, {}.";
inline constexpr const char* vapour_curve =
    "vapour, in 8-hour limits, each line ten times the one below";
inline constexpr const char* room_aired = "the room is aired";
inline constexpr const char* tins_hold =
    "Tins hold {}; expected {}, in nine jobs of ten {} or less; left over as expected {}.";
inline constexpr const char* on_the_shelf = "on the shelf";
inline constexpr const char* expected_use = "you will likely use";
inline constexpr const char* nine_in_ten = "enough in nine jobs out of ten";
inline constexpr const char* tins_left = "{} {}; left over, expected: {}";
inline constexpr const char* typical_from_here = "typical air";
inline constexpr const char* from_then = "; {} from {}";
inline constexpr const char* known_air_ends = "the air is known less well from here";
inline constexpr const char* characters =
    "Each character is {} hours: # your work, ~ dries, x air unfit for the coat, . waits for "
    "you{}.";
inline constexpr const char* typical_mark = "; ? typical air, hours may move";
inline constexpr const char* done_at = "Done at";
inline constexpr const char* plan_of = ": plan of {}, {}";
inline constexpr const char* as_of = "As of {}, {}; local times, {}";
inline constexpr const char* on_this_page = "On this page";
inline constexpr const char* the_days = "The days";
inline constexpr const char* the_weeks = "The weeks";
inline constexpr const char* work_and_waits = "Work and waits";
inline constexpr const char* air_and_drying = "Air and drying";
inline constexpr const char* fumes_and_airing = "Fumes and airing";
inline constexpr const char* coats_and_film = "Coats and film";
inline constexpr const char* what_to_buy = "What to buy";
inline constexpr const char* what_is_left = "What is left over";
inline constexpr const char* areas_to_coat = "Areas to coat";
inline constexpr const char* sources = "Where the numbers come from";

}  // namespace chart_words

/// A mark of a scale in steps of ten: `0.01`, `100`.
std::string tenfold_mark(double value);

}  // namespace tackfree
