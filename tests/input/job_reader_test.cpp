#include "tackfree/input/job_reader.hpp"

#include "tackfree/input/finishing_data_reader.hpp"

#include <random>

#include "input/bench_copy.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

TEST_CASE("a job is read as it is written") {
  const Job job = read_file("tests/input/bench/hall_bench.json");
  CHECK(job.name == "Hall bench");
  CHECK(job.id == "hall-bench");
  CHECK(holds(job.note, "invented"));
  CHECK(job.units == UnitSystem::us);
  CHECK(iso_utc(job.now_at.value()) == "2027-04-05T21:45:00Z");
  CHECK(job.grid == Minutes(5));
  CHECK(job.horizon == days(56));
  CHECK(job.parts.size() == 7);
  CHECK(job.batches[1].sides == Sides::on_points);
  const Coating& varnish = job.coatings.at(0);
  CHECK(varnish.spread.value == square_feet_per_us_gallon(500));
  CHECK(varnish.spread.origin == Origin::label);
  CHECK(varnish.film_cap.origin == Origin::practice);
  CHECK(varnish.limits.put_on_min.value.in_celsius() == doctest::Approx(10));
  CHECK(varnish.tins.at(1).volume == us_quarts(1));
  CHECK(varnish.tins.at(1).price == 24.0);
  CHECK(varnish.on_shelf.at(0).volume == us_pints(0.5));
  CHECK_FALSE(job.systems.at(0).steps.at(0).coats);
  const auto& air = std::get<AirRows>(job.air);
  CHECK(air.rows.size() == 48);
  CHECK(air.recorded_in == 2013);
  CHECK(iso_utc(air.rows.front().at) == "2027-04-05T00:00:00Z");
  CHECK(job.calendar.weekly[0] == std::vector<DayWindow>{{18 * 60 + 30, 21 * 60 + 30}});
  CHECK(job.calendar.weekly[5].size() == 2);
  CHECK(job.calendar.weekly[6].empty());
  CHECK(job.calendar.no_power_sanding == std::vector<DayWindow>{{0, 8 * 60}, {20 * 60, 24 * 60}});
  CHECK(job.room.volume == cubic_metres(90));
  CHECK(job.room.ignition_sources == std::vector<std::string>{"water heater"});
}

TEST_CASE("the demo job is read without a problem and says that it is invented") {
  const Job job = read_file("data/demo/hall_bench/hall_bench.json");
  CHECK(holds(job.note, "invented"));
  CHECK(job.now_at);
  const auto& air = std::get<AirRows>(job.air);
  CHECK(air.recorded_in == 2013);
  CHECK(air.rows.front().at <= *job.now_at);
  CHECK(air.rows.back().at > *job.now_at);
}

TEST_CASE(
    "the demos of shelves and fronts are read without a problem and say that they are invented") {
  for (const char* demo : {"data/demo/wall_shelves/wall_shelves.json",
                           "data/demo/cabinet_fronts/cabinet_fronts.json"}) {
    const Job job = read_file(demo);
    CHECK(holds(job.note, "nvented"));
    CHECK(job.now_at);
  }
}

TEST_CASE("a job with every key there is, is read") {
  const Job job = read_file("tests/input/every_key/job.json");
  CHECK(job.clock == ClockForm::hours_12);
  CHECK(job.week_begins_on == 6);
  CHECK(job.id == "every-key");
  CHECK(job.coatings.at(0).sheen == Sheen::satin);
  CHECK(job.coatings.at(0).pot_life->value == hours(4));
  CHECK(job.coatings.at(0).law.stops_below.value == celsius(2));
  CHECK(job.coatings.at(0).lost_to_sanding.value == micrometres(3));
  CHECK(job.coatings.at(1).contains_wax);
  CHECK(job.batches.at(1).after == "top");
  CHECK(job.systems.at(0).clear_build);
  CHECK(job.systems.at(0).steps.at(0).fill_pores);
  CHECK(job.data.labour.filler_dries.value == hours(36));
  CHECK(job.faster_than_label);
  CHECK(job.aim == Aim::sessions);
  CHECK(job.recoat_to_spare == hours(2.5));
  CHECK(job.calendar.late_after == 22 * 60);
  CHECK(job.calendar.added.at(0).windows.at(0) == DayWindow{9 * 60, 12 * 60});
  CHECK(job.data.methods.at(0).rate.value == square_metres_per_hour(6));
  CHECK(job.data.methods.at(0).rate.origin == Origin::measured);
  CHECK(job.coatings.at(0).limits.put_on_min.origin == Origin::measured);
  CHECK(job.coatings.at(0).grits.bare.value == std::vector<Grit>{{120}, {180}});
  CHECK(job.batches.at(0).show_side_is_bottom);
  CHECK(job.systems.at(0).steps.at(0).first_coat_thinner->value == percent(15));
}

TEST_CASE("a wrong value in a job is named with file, line, key, value and remedy") {
  struct Row {
    const char* from;
    const char* to;
    const char* key;
    const char* text;  // of the whole problem, behind the key
  };
  const Row rows[] = {
      {"\"tackfree_job\": 1", "\"tackfree_job\": 2", "tackfree_job",
       "found \"2\"; wanted a number"},
      {"\"name\": \"Hall bench\"", "\"name\": \"\"", "name", "wanted text in quotes"},
      {"\"units\": \"us\"", "\"units\": \"imperial\"", "units", "\"metric\", \"us\""},
      {"\"America/New_York\"", "\"America/New_Yrok\"", "zone", "mean \"America/New_York\"?"},
      {"2027-04-05T17:45", "2027-03-14T02:30", "now_at", "the clocks of America/New_York skip it"},
      {"2027-04-05T17:45", "2027-02-30T02:30", "now_at", "a local time from 1970 to 2037"},
      {"2027-04-05T17:45", "2038-04-05T17:45", "now_at", "a local time from 1970 to 2037"},
      {"2027-04-05T17:45", "2037-12-20T17:45", "now_at", "ends before 2038"},
      {"\"class\": \"oil_polyurethane\"", "\"class\": \"oil_polyurethan\"", "coatings[0].class",
       "mean \"oil_polyurethane\"?"},
      {"\"spread_ft2_per_gal\": 500", "\"spread_ft2_per_gal\": 0",
       "coatings[0].label.spread_ft2_per_gal", "found \"0\"; wanted a number of ft2 per US gallon"},
      {"\"spread_ft2_per_gal\": 500", "\"spread_ft2_per_gal\": 500, \"spread_m2_per_l\": 12",
       "coatings[0].label.spread_ft2_per_gal", "not both"},
      {"\"solids_pct\": 45", "\"solids_pct\": -45", "coatings[0].label.solids_pct",
       "found \"-45\"; wanted a number of % by volume from 1 to 100"},
      {"\"solids_pct\": 45", "\"solds_pct\": 45", "coatings[0].label.solds_pct",
       "did you mean \"solids_pct\"?"},
      {"\"recoat_after_h\": 8", "\"recoat_after_h\": 8, \"sand_after_h\": 7",
       "coatings[0].label.sand_after_h", "no sooner than recoat_after_h, 8 h"},
      {"\"recoat_unsanded_within_h\": 12", "\"recoat_unsanded_within_h\": 4",
       "coatings[0].label.recoat_unsanded_within_h", "no less than recoat_after_h, 8 h"},
      {"\"put_on_min_f\": 50", "\"put_on_min_f\": 95", "coatings[0].label.put_on_min_f",
       "no more than put_on_max"},
      {"\"put_on_min_f\": 50", "\"put_on_min_f\": 50, \"put_on_min_c\": 10",
       "coatings[0].label.put_on_min_f", "either put_on_min_c or put_on_min_f, not both"},
      {"\"1 qt\"", "\"1 quatr\"", "coatings[0].tins[1].size", "a volume with its unit"},
      {"\"1 qt\"", "\"0 qt\"", "coatings[0].tins[1].size", "a size over 0"},
      {"\"price\": 24", "\"price\": -24", "coatings[0].tins[1].price", "0 to 1000000"},
      {"[\"1/2 pt\"]", "[\"half a pint\"]", "coatings[0].on_shelf[0]", "a volume with its unit"},
      {"\"wear\": \"normal\"", "\"wear\": \"rough\"", "systems[0].wear", "\"light\""},
      {"\"coating\": \"oil varnish\"", "\"coating\": \"oil varnsih\"",
       "systems[0].steps[0].coating", "did you mean \"oil varnish\"?"},
      {"\"method\": \"brush\"", "\"method\": \"bruhs\"", "systems[0].steps[0].method",
       "did you mean \"brush\"?"},
      {"\"coats\": \"by_film\"", "\"coats\": \"three\"", "systems[0].steps[0].coats",
       "from 1 to 20, or \"by_film\""},
      {"\"coats\": \"by_film\"", "\"coats\": 0", "systems[0].steps[0].coats", "from 1 to 20"},
      {"\"coats\": \"by_film\"", "\"coats\": 2.5", "systems[0].steps[0].coats", "a whole number"},
      {"\"sides\": \"on_points\"", "\"sides\": \"on_point\"", "batches[1].sides",
       "did you mean \"on_points\"?"},
      {"\"volume_m3\": 90", "\"volume_m3\": 0", "room.volume_m3", "from 1 to 100000"},
      {"\"volume_m3\": 90", "\"volume\": \"90\"", "room.volume", "a volume with its unit"},
      {"\"mon\": [\"18:30-21:30\"]", "\"mon\": [\"18:30-25:30\"]", "calendar.weekly.mon",
       "wanted hours from begin to end"},
      {"\"mon\": [\"18:30-21:30\"]", "\"mon\": [\"22:30-01:30\"]", "calendar.weekly.mon",
       "split hours over midnight"},
      {"\"mon\": [\"18:30-21:30\"]", "\"mno\": [\"18:30-21:30\"]", "calendar.weekly.mno",
       "did you mean \"mon\"?"},
      {"\"13:00-18:00\"", "\"11:00-18:00\"", "calendar.weekly.sat",
       "09:00-12:00 and 11:00-18:00 do"},
      {"\"late_after\": \"21:00\"", "\"late_after\": \"9 pm\"", "calendar.late_after",
       "a clock time"},
      {"\"late_after\": \"21:00\"", "\"late_after\": \"21:00\", \"days_off\": [\"2027-02-29\"]",
       "calendar.days_off", "wanted a date from 1970 to 2037"},
      {"\"late_after\": \"21:00\"",
       "\"late_after\": \"21:00\", \"added\": [{\"on\": \"2038-01-01\", \"hours\": []}]",
       "calendar.added[0].on", "wanted a date from 1970 to 2037"},
      {"\"time_is\": \"utc\"", "\"time_is\": \"zulu\"", "air.rows.time_is", "\"utc\", \"local\""},
      {"\"replay_in_year\": 2027", "\"replay_in_year\": 2038", "air.rows.replay_in_year",
       "from 1970 to 2037"},
      {"\"zone\"", "\"grid_min\": 7, \"zone\"", "grid_min", "divides 60"},
      {"\"zone\"", "\"horizon_days\": 0, \"zone\"", "horizon_days", "from 1 to 366"},
      {"\"zone\"", "\"id\": \"Hall Bench\", \"zone\"", "id", "such as \"hall-bench\""},
      {"\"zone\"", "\"methods\": {\"bursh\": {}}, \"zone\"", "methods.bursh",
       "did you mean \"brush\"?"},
      {"\"zone\"", "\"labour\": {\"set_up_min\": -1}, \"zone\"", "labour.set_up_min",
       "from 0 to 1440"}};
  for (const Row& row : rows) {
    CAPTURE(row.to);
    BenchCopy bench;
    bench.text = replaced(bench.text, row.from, row.to);
    const Problems problems = bench.read_bad();
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].file == "bench/job.json");
    CHECK(problems[0].line == line_of(bench.text, row.to));
    CHECK(problems[0].key == row.key);
    CHECK(holds(to_text(problems[0]), row.text));
  }
}

TEST_CASE("a job needs working hours, a tin size, steps, parts and one kind of air") {
  const std::string begin = "{\"tackfree_job\": 1, \"name\": \"x\", \"zone\": \"Etc/UTC\", ";
  const std::string finish =
      "\"coatings\": [{\"name\": \"v\", \"class\": \"shellac\", \"tins\": [{\"size\": \"1 l\"}]}], "
      "\"systems\": [{\"name\": \"s\", \"steps\": [{\"coating\": \"v\", \"method\": \"brush\", "
      "\"coats\": 3}]}], \"batches\": [{\"name\": \"b\", \"system\": \"s\"}], ";
  const std::string air =
      "\"air\": {\"constant\": {\"temperature_c\": 20, \"humidity_pct\": 50}}, ";
  const std::string calendar = "\"calendar\": {\"weekly\": {\"sat\": [\"09:00-12:00\"]}}, ";
  const std::string parts = "\"parts_file\": \"p.csv\"}";
  const auto only = [&](const std::string& text) {
    FilesInMemory files;
    files.put("p.csv", "kind,part,length,width,thickness,batch,coat\nboard,x,1 m,1 m,2 cm,b,all\n");
    files.put("job.json", text);
    Problems problems;
    CHECK_FALSE(read_job(files, "job.json", std::nullopt, problems));
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    return problems[0];
  };
  const Problem no_hours = only(begin + finish + air + "\"calendar\": {}, " + parts);
  CHECK(no_hours.key == "calendar.weekly");
  CHECK(no_hours.line == 1);
  CHECK(holds(no_hours.wanted, "has no working hours"));
  CHECK(holds(no_hours.hint, "09:00-12:00"));
  const Problem aim = only(begin + "\"aim\": \"session\", " + finish + air + calendar + parts);
  CHECK(aim.key == "aim");
  CHECK(aim.line == 1);
  CHECK(holds(aim.wanted, "wanted one of"));
  CHECK(aim.hint == "did you mean \"sessions\"?");
  const Problem spare =
      only(begin + "\"recoat_to_spare_h\": -1, " + finish + air + calendar + parts);
  CHECK(spare.key == "recoat_to_spare_h");
  const Problem no_calendar = only(begin + finish + air + parts);
  CHECK(no_calendar.key == "calendar");
  const Problem no_steps =
      only(begin +
           replaced(finish, "[{\"coating\": \"v\", \"method\": \"brush\", \"coats\": 3}]", "[]") +
           air + calendar + parts);
  CHECK(no_steps.key == "systems[0].steps");
  const Problem no_air = only(begin + finish + "\"air\": {}, " + calendar + parts);
  CHECK(no_air.key == "air.sources");
  CHECK(holds(no_air.wanted, "constant, rows or sources"));
  const Problem too_humid = only(begin + finish + replaced(air, "50", "101") + calendar + parts);
  CHECK(too_humid.key == "air.constant.humidity_pct");
  CHECK(too_humid.found == "101");
  const Problem no_parts = only(begin + finish + air + calendar + "\"parts_file\": \"q.csv\"}");
  CHECK(holds(no_parts.file, "q.csv"));
  CHECK(holds(no_parts.wanted, "cannot be read"));
}

TEST_CASE("the mistakes of all files of a job come out in one run") {
  BenchCopy bench;
  bench.text = replaced(bench.text, "\"solids_pct\": 45", "\"solids_pct\": 145");
  bench.text = replaced(bench.text, "\"mon\": [\"18:30-21:30\"]", "\"mon\": [\"18:30\"]");
  bench.text = replaced(bench.text, "\"time_column\": \"time_utc\"", "\"time_column\": \"time\"");
  bench.text = replaced(bench.text, "\"units\"", "\"unit\"");
  bench.parts = replaced(bench.parts, "board,shelf,1,3 ft 8 in", "board,shelf,0,-3 ft 8 in");
  const Problems problems = bench.read_bad();
  INFO(all_text(problems));
  REQUIRE(problems.size() == 6);
  CHECK(problems[0].key == "coatings[0].label.solids_pct");
  CHECK(problems[1].key == "quantity");
  CHECK(problems[2].key == "length");
  CHECK(holds(problems[3].file, "garage_hours.csv"));
  CHECK(problems[3].key == "time");
  CHECK(problems[4].key == "calendar.weekly.mon");
  CHECK(problems[5].key == "unit");
  CHECK(problems[5].hint == "did you mean \"units\"?");
}

TEST_CASE("the text of a job is read with the files beside its place, whatever stands there") {
  const std::filesystem::path place = root / "tests/input/bench/none.json";
  Problems problems;
  const auto trade = built_in_finishing_data();
  const FilesOnDisk files;
  const std::string text = file_text(root / "tests/input/bench/hall_bench.json");
  const auto job = parse_job(text, files, place, trade, problems);
  REQUIRE(job);
  CHECK(job->file == place.string());
  CHECK(job->parts.size() == 7);
  CHECK(std::get<AirRows>(job->air).rows.size() == 48);
  CHECK_FALSE(parse_job("{}", files, place, trade, problems));
  CHECK(problems.at(0).file == place.string());
}

TEST_CASE("a job file that is missing, no object or rubbish is one problem") {
  const auto only = [](const std::optional<std::string>& text) {
    FilesInMemory files;
    if (text) files.put("job.json", *text);
    Problems problems;
    CHECK_FALSE(read_job(files, "job.json", std::nullopt, problems));
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].file == "job.json");
    return problems[0].wanted;
  };
  CHECK(holds(only(std::nullopt), "cannot be read"));
  CHECK(holds(only("[1, 2]"), "wanted an object"));
  CHECK(holds(only(""), "is empty"));
  std::mt19937 generator(1);
  std::string bytes(10'000'000, ' ');
  for (char& byte : bytes) byte = static_cast<char>(generator() & 0xFFU);
  CHECK(holds(only(bytes), "wanted JSON text"));
}
