#include "tackfree/input/job_reader.hpp"

#include "tackfree/input/starter_job.hpp"

#include <random>

#include "input/written_files.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::filesystem::path root = TACKFREE_ROOT;

std::string file_text(const std::filesystem::path& path) {
  Problems problems;
  return read_text_file(path, problems).value();
}

/// The demo job in a folder of its own, with `job` for its job file.
struct DemoCopy {
  WrittenFiles files;
  std::string text = file_text(root / "data/demo/hall_bench/hall_bench.json");
  std::string parts = file_text(root / "data/demo/hall_bench/hall_bench_parts.csv");

  std::optional<Job> read(Problems& problems) {
    files.write("garage_hours.csv", file_text(root / "data/demo/hall_bench/garage_hours.csv"));
    files.write("hall_bench_parts.csv", parts);
    return read_job(files.write("job.json", text), std::nullopt, problems);
  }
  Job read_good() {
    Problems problems;
    auto job = read(problems);
    INFO(all_text(problems));
    REQUIRE(job);
    CHECK(problems.empty());
    return std::move(*job);
  }
  Problems read_bad() {
    Problems problems;
    CHECK_FALSE(read(problems));
    return problems;
  }
};

Job read_file(const char* name) {
  Problems problems;
  auto job = read_job(root / name, std::nullopt, problems);
  INFO(all_text(problems));
  REQUIRE(job);
  return std::move(*job);
}

}  // namespace

TEST_CASE("the demo job is read as it is written") {
  const Job job = read_file("data/demo/hall_bench/hall_bench.json");
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
  CHECK(varnish.on_shelf.at(0) == us_pints(0.5));
  CHECK_FALSE(job.systems.at(0).steps.at(0).coats);
  const auto& air = std::get<AirRows>(job.air);
  CHECK(air.rows.size() == 361);
  CHECK(air.recorded_in == 2013);
  CHECK(iso_utc(air.rows.front().at) == "2027-04-05T00:00:00Z");
  CHECK(job.calendar.weekly[0] == std::vector<DayWindow>{{18 * 60 + 30, 21 * 60 + 30}});
  CHECK(job.calendar.weekly[5].size() == 2);
  CHECK(job.calendar.weekly[6].empty());
  CHECK(job.calendar.no_power_sanding == std::vector<DayWindow>{{0, 8 * 60}, {20 * 60, 24 * 60}});
  CHECK(job.room.volume == cubic_metres(90));
  CHECK(job.room.ignition_sources == std::vector<std::string>{"water heater"});
}

TEST_CASE("the starter job that is written out is read without a problem") {
  const WrittenFiles files;
  for (const StarterFile& file : starter_job()) files.write(file.name, file.text);
  Problems problems;
  const auto job = read_job(files.folder() / starter_job()[0].name, std::nullopt, problems);
  INFO(all_text(problems));
  REQUIRE(job);
  CHECK(problems.empty());
  CHECK(holds(job->note, "invented"));
  CHECK(std::holds_alternative<ConstantAir>(job->air));
  CHECK(job->data.labour.fit_hardware.value == minutes(20));
  CHECK(job->data.labour.fit_hardware.origin == Origin::measured);
  CHECK(job->systems.at(1).steps.at(0).coats == 2);
}

TEST_CASE("a job with every key there is, is read") {
  const Job job = read_file("tests/input/every_key/job.json");
  CHECK(job.id == "every-key");
  CHECK(job.faster_than_label);
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
      {"\"recoat_after_h\": 8", "\"recoat_after_h\": 8, \"handle_after_h\": 9",
       "coatings[0].label.recoat_after_h", "no sooner than handle_after_h, 9 h"},
      {"\"recoat_unsanded_within_h\": 12", "\"recoat_unsanded_within_h\": 4",
       "coatings[0].label.recoat_unsanded_within_h", "no less than recoat_after_h, 8 h"},
      {"\"put_on_min_f\": 50", "\"put_on_min_f\": 95", "coatings[0].label.put_on_min_f",
       "no more than put_on_max"},
      {"\"put_on_min_f\": 50", "\"put_on_min_f\": 50, \"put_on_min_c\": 10",
       "coatings[0].label.put_on_min_f", "either put_on_min_c or put_on_min_f, not both"},
      {"\"1 qt\"", "\"1 quatr\"", "coatings[0].tins[1].size", "a volume with its unit"},
      {"\"1 qt\"", "\"0 qt\"", "coatings[0].tins[1].size", "a size over 0"},
      {"\"price\": 24", "\"price\": -24", "coatings[0].tins[1].price", "0 to 1000000"},
      {"[\"1/2 pt\"]", "[\"half a pint\"]", "coatings[0].on_shelf", "a volume with its unit"},
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
    DemoCopy demo;
    demo.text = replaced(demo.text, row.from, row.to);
    const Problems problems = demo.read_bad();
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].file == (demo.files.folder() / "job.json").string());
    CHECK(problems[0].line == line_of(demo.text, row.to));
    CHECK(problems[0].key == row.key);
    CHECK(holds(to_text(problems[0]), row.text));
  }
}

TEST_CASE("names that do not fit together are named, in the job and in the parts list") {
  DemoCopy demo;
  demo.text = replaced(demo.text, "{ \"name\": \"frame\", \"system\": \"bench varnish\"",
                       "{ \"name\": \"farme\", \"system\": \"bench varnsih\"");
  const Problems problems = demo.read_bad();
  INFO(all_text(problems));
  REQUIRE(problems.size() == 7);
  CHECK(problems[0].key == "batches[1].system");
  CHECK(problems[0].hint == "did you mean \"bench varnish\"?");
  for (std::size_t i = 1; i < 6; ++i) {
    CHECK(problems[i].file == (demo.files.folder() / "hall_bench_parts.csv").string());
    CHECK(problems[i].key == "batch");
    CHECK(problems[i].found == "frame");
    CHECK(problems[i].hint == "did you mean \"farme\"?");
  }
  CHECK(problems[1].line == 5);
  CHECK(problems[6].found == "farme");
  CHECK(holds(problems[6].wanted, "has no parts"));
  CHECK(problems[6].line == line_of(demo.text, "\"farme\""));
}

TEST_CASE("names that differ in case and signs only are refused: they share calendar entries") {
  DemoCopy demo;
  demo.text = replaced(demo.text, "{ \"name\": \"frame\"", "{ \"name\": \"Seat and Shelf\"");
  const Problems problems = demo.read_bad();
  REQUIRE_FALSE(problems.empty());
  CHECK(problems[0].found == "Seat and Shelf");
  CHECK(holds(problems[0].wanted, "the same but for case and signs"));
}

TEST_CASE("a job needs working hours, a tin size, steps, parts and one kind of air") {
  const std::string begin = "{\"tackfree_job\": 1, \"name\": \"x\", \"zone\": \"Etc/UTC\", ";
  const std::string finish =
      "\"coatings\": [{\"name\": \"v\", \"class\": \"shellac\", \"tins\": [{\"size\": \"1 l\"}]}], "
      "\"systems\": [{\"name\": \"s\", \"steps\": [{\"coating\": \"v\", \"method\": \"brush\", "
      "\"coats\": 3}]}], \"batches\": [{\"name\": \"b\", \"system\": \"s\"}], ";
  const std::string air =
      "\"air\": {\"constant\": {\"temperature_c\": 20, \"humidity_pct\": 50}}, ";
  const std::string hours = "\"calendar\": {\"weekly\": {\"sat\": [\"09:00-12:00\"]}}, ";
  const std::string parts = "\"parts_file\": \"p.csv\"}";
  const auto only = [&](const std::string& text) {
    const WrittenFiles files;
    files.write("p.csv", "kind,part,length,width,thickness,batch\nboard,x,1 m,1 m,2 cm,b\n");
    Problems problems;
    CHECK_FALSE(read_job(files.write("job.json", text), std::nullopt, problems));
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    return problems[0];
  };
  const Problem no_hours = only(begin + finish + air + "\"calendar\": {}, " + parts);
  CHECK(no_hours.key == "calendar.weekly");
  CHECK(no_hours.line == 1);
  CHECK(holds(no_hours.wanted, "has no working hours"));
  CHECK(holds(no_hours.hint, "09:00-12:00"));
  const Problem no_calendar = only(begin + finish + air + parts);
  CHECK(no_calendar.key == "calendar");
  const Problem no_tins =
      only(begin + replaced(finish, "[{\"size\": \"1 l\"}]", "[]") + air + hours + parts);
  CHECK(no_tins.key == "coatings[0].tins");
  CHECK(holds(no_tins.wanted, "at least one entry"));
  const Problem no_steps =
      only(begin +
           replaced(finish, "[{\"coating\": \"v\", \"method\": \"brush\", \"coats\": 3}]", "[]") +
           air + hours + parts);
  CHECK(no_steps.key == "systems[0].steps");
  const Problem no_air = only(begin + finish + "\"air\": {}, " + hours + parts);
  CHECK(no_air.key == "air.constant");
  CHECK(holds(no_air.wanted, "either constant or rows"));
  const Problem too_humid = only(begin + finish + replaced(air, "50", "101") + hours + parts);
  CHECK(too_humid.key == "air.constant.humidity_pct");
  CHECK(too_humid.found == "101");
  const Problem no_parts = only(begin + finish + air + hours + "\"parts_file\": \"q.csv\"}");
  CHECK(holds(no_parts.file, "q.csv"));
  CHECK(holds(no_parts.wanted, "cannot be read"));
}

TEST_CASE("the mistakes of all files of a job come out in one run") {
  DemoCopy demo;
  demo.text = replaced(demo.text, "\"solids_pct\": 45", "\"solids_pct\": 145");
  demo.text = replaced(demo.text, "\"mon\": [\"18:30-21:30\"]", "\"mon\": [\"18:30\"]");
  demo.text = replaced(demo.text, "\"time_column\": \"time_utc\"", "\"time_column\": \"time\"");
  demo.text = replaced(demo.text, "\"units\"", "\"unit\"");
  demo.parts = replaced(demo.parts, "board,shelf,1,3 ft 8 in", "board,shelf,0,-3 ft 8 in");
  const Problems problems = demo.read_bad();
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

TEST_CASE("class times that contradict the tin's move to it, in both directions") {
  DemoCopy demo;
  demo.text = replaced(demo.text, "\"recoat_after_h\": 8,", "\"recoat_after_h\": 4,");
  const Coating fast = demo.read_good().coatings.at(0);
  const auto after = [](const Coating& coating, Stage stage) {
    return coating.label_after[index_of(stage)].value();
  };
  CHECK(after(fast, Stage::dust_free).value == hours(2));
  CHECK(after(fast, Stage::touch).value == hours(4));
  CHECK(after(fast, Stage::touch).origin == Origin::label);
  CHECK(after(fast, Stage::handle).value == hours(4));
  CHECK(after(fast, Stage::sand).value == hours(12));
  CHECK(after(fast, Stage::sand).origin == Origin::practice);

  demo.text = replaced(demo.text, "\"recoat_after_h\": 4,", "\"recoat_after_h\": 24,");
  demo.text = replaced(demo.text, "        \"recoat_unsanded_within_h\": 12,\n", "");
  const Coating slow = demo.read_good().coatings.at(0);
  CHECK(after(slow, Stage::handle).value == hours(8));
  CHECK(after(slow, Stage::sand).value == hours(24));
  CHECK(slow.recoat_unsanded_within->value == hours(24));
}

TEST_CASE("what was measured goes before the label, and the label before the class") {
  const Job job = read_file("tests/input/every_key/job.json");
  const Coating& varnish = job.coatings.at(0);
  CHECK(varnish.limits.put_on_min.value == celsius(12));
  CHECK(varnish.limits.put_on_max.value == celsius(30));
  CHECK(varnish.limits.put_on_max.origin == Origin::label);
  CHECK(varnish.label_temperature == celsius(20));
  CHECK(job.coatings.at(1).label_temperature.in_celsius() == doctest::Approx(23));
  CHECK(job.coatings.at(1).solids.origin == Origin::practice);
}

TEST_CASE("a job file that is missing, a folder, no object or rubbish is one problem") {
  const WrittenFiles files;
  const auto only = [&](const std::filesystem::path& path) {
    Problems problems;
    CHECK_FALSE(read_job(path, std::nullopt, problems));
    INFO(all_text(problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].file == path.string());
    return problems[0].wanted;
  };
  CHECK(holds(only(files.folder() / "none.json"), "cannot be read"));
  CHECK(holds(only(files.folder()), "is a folder"));
  CHECK(holds(only(files.write("list.json", "[1, 2]")), "wanted an object"));
  CHECK(holds(only(files.write("empty.json", "")), "is empty"));
  std::mt19937 generator(1);
  std::string bytes(10'000'000, ' ');
  for (char& byte : bytes) byte = static_cast<char>(generator() & 0xFFU);
  CHECK(holds(only(files.write("rubbish.json", bytes)), "wanted JSON text"));
}
