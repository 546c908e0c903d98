// EPW: any text as a weather file in the EnergyPlus format, for a leap year and another one.

#include "tackfree/input/air_rows_reader.hpp"
#include "tackfree/input/epw_reader.hpp"

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  for (const int year : {2027, 2028}) {
    Problems problems;
    const auto rows = parse_epw(text, "year.epw", year, problems);
    must_help(problems, "year.epw");
    must(rows.empty() || problems.empty(), "there are no hours where there are problems");
    for (std::size_t i = 0; i < rows.size(); ++i) {
      must(i == 0 || rows[i - 1].at < rows[i].at, "hours stand in order, each once");
      must(rows[i].dew_point || rows[i].humidity, "an hour's air has its water");
      must(rows[i].temperature >= celsius(air_temperature.least) &&
               rows[i].temperature <= celsius(air_temperature.most),
           "an hour's air is as warm as air is");
    }
  }
}
