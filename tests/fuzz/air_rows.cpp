// Air rows: any text as a CSV file of weather hours, in the formats of the demo and of the tests.

#include "tackfree/input/air_rows_reader.hpp"

#include <array>

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  static const Zone zone = Zone::named("America/New_York").value();
  static const std::array<AirRowsFormat, 3> formats{{{.time_column = "t",
                                                      .time_is_local = true,
                                                      .temperature_column = "c",
                                                      .dew_point_column = "",
                                                      .humidity_column = "rh",
                                                      .replay_in_year = std::nullopt},
                                                     {.time_column = "time_utc",
                                                      .temperature_column = "temp_f",
                                                      .in_fahrenheit = true,
                                                      .dew_point_column = "dewpoint_f",
                                                      .humidity_column = "rh_pct",
                                                      .replay_in_year = 2027},
                                                     {.time_column = "time",
                                                      .temperature_column = "temp",
                                                      .dew_point_column = "dew",
                                                      .humidity_column = "rh",
                                                      .replay_in_year = 2028}}};
  const std::size_t format = text.starts_with("t,") ? 0 : text.starts_with("time_utc") ? 1 : 2;
  Problems problems;
  const AirRows air = parse_air_rows(text, "air.csv", formats.at(format), zone, problems);
  must_help(problems, "air.csv");
  if (!problems.empty()) return;
  for (std::size_t i = 0; i < air.rows.size(); ++i) {
    const AirRow& row = air.rows[i];
    must(i == 0 || air.rows[i - 1].at < row.at, "hours stand in order, each once");
    must(row.dew_point || row.humidity, "an hour's air has its water");
    must(row.temperature >= celsius(air_temperature.least) &&
             row.temperature <= celsius(air_temperature.most),
         "an hour's air is as warm as air is");
  }
}
