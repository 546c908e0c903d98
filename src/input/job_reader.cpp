#include "tackfree/input/job_reader.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/input/air_reader.hpp"
#include "tackfree/input/calendar_reader.hpp"
#include "tackfree/input/coating_figures.hpp"
#include "tackfree/input/finish_reader.hpp"
#include "tackfree/input/finishing_data_reader.hpp"
#include "tackfree/input/follows_reader.hpp"
#include "tackfree/input/log_lines.hpp"
#include "tackfree/input/named_files.hpp"
#include "tackfree/input/parts_reader.hpp"
#include "tackfree/input/room_reader.hpp"
#include "tackfree/input/shelf_reader.hpp"
#include "tackfree/input/tin_reader.hpp"
#include "tackfree/syntax/measure.hpp"

#include <array>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

Zone read_zone(JsonCursor& job) {
  const auto name = job.text(needed("zone"));
  if (!name) return Zone::utc();
  if (const auto zone = Zone::named(*name)) return *zone;
  const auto near = nearest_name(*name, zone_names());
  job.report("zone", "wanted a time zone of the IANA list, such as \"America/New_York\"",
             near ? fmt::format("did you mean \"{}\"?", *near) : "");
  return Zone::utc();
}

std::optional<Instant> read_now(JsonCursor& job, const Zone& zone) {
  const auto text = job.text("now_at");
  if (!text) return std::nullopt;
  const auto local = parse_local_time(*text);
  if (!local || !parse_planning_date(iso_date(local->on))) {
    job.report("now_at", "wanted a local time from 1970 to 2037, such as \"2027-04-05T17:45\"");
    return std::nullopt;
  }
  const LocatedTime located = zone.locate(*local);
  if (located.fate == LocalFate::skipped)
    job.report("now_at",
               fmt::format("wanted a time that exists: the clocks of {} skip it", zone.name()),
               fmt::format("the clock then shows {}", iso_local(located.at, zone)));
  return located.at;
}

/// Names the job for calendars and lists; what it plans comes later.
void read_heading(JsonCursor& root, Job& job, const Zone& zone) {
  constexpr std::array<std::string_view, 3> unit_systems{"metric", "us", "both"};
  constexpr std::array<std::string_view, 2> clock_forms{"24 h", "12 h"};
  constexpr std::array<std::string_view, 2> first_days{"mon", "sun"};
  root.text("$schema");
  root.whole(needed("tackfree_job"), {1, 1, "the format, which is"});
  job.name = root.text(needed("name")).value_or("");
  job.note = root.text("note").value_or("");
  job.id = slug(job.name);
  if (const auto id = root.text("id")) {
    if (slug(*id) != *id)
      root.report("id", "wanted small letters, digits and single hyphens",
                  fmt::format("such as \"{}\"", slug(*id)));
    job.id = *id;
  }
  job.units = static_cast<UnitSystem>(root.word("units", unit_systems).value_or(0));
  if (const auto clock = root.word("clock", clock_forms))
    job.clock = static_cast<ClockForm>(*clock);
  if (const auto day = root.word("week_begins_on", first_days))
    job.week_begins_on = *day == 0 ? 0 : 6;
  job.now_at = read_now(root, zone);
  job.horizon = days(root.whole("horizon_days", {1, 366, "days"}).value_or(56));
  if (job.now_at && *job.now_at + whole_minutes_up(job.horizon) > last_zoned_instant())
    root.report("now_at", "wanted a plan that ends before 2038: time zone rules end there");
  const int grid = root.whole("grid_min", {1, 60, "minutes"}).value_or(5);
  if (60 % grid != 0) root.report("grid_min", "wanted a number of minutes that divides 60");
  job.grid = Minutes(grid);
  constexpr std::array<std::string_view, 2> aims{"ready", "sessions"};
  job.aim = static_cast<Aim>(root.word("aim", aims).value_or(0));
  if (const auto spare = root.number("recoat_to_spare_h", {0, 1000, "h"}))
    job.recoat_to_spare = hours(*spare);
  job.faster_than_label = root.flag("faster_than_label").value_or(false);
}

/// The person's own rates over the trade's.
void read_own_rates(JsonCursor& root, FinishingData& data) {
  if (auto labour = root.object("labour")) {
    FigureReader figures(*labour, Origin::measured);
    read_labour_figures(figures, data.labour);
    labour->refuse_unknown();
  }
  auto methods = root.object("methods");
  if (!methods) return;
  for (Method& method : data.methods) {
    auto object = methods->object(std::string_view(method.key));
    if (!object) continue;
    FigureReader figures(*object, Origin::measured);
    read_method_figures(figures, method);
    object->refuse_unknown();
  }
  methods->refuse_unknown();
}

void read_parts_of(JsonCursor& root, Job& job, NamedFiles& files) {
  const auto name = root.text(needed("parts_file"));
  if (!name) return;
  const std::filesystem::path path = files.path_of(*name, "the parts list");
  if (const auto text = files.text(path, root.problems()))
    job.parts = parse_parts(*text, path.string(), root.problems());
  check_parts_have_batches(job, path.string(), root.problems());
}

/// The log stands beside the job, under the job's own name unless it says another.
void read_history(JsonCursor& root, Job& job, NamedFiles& files) {
  std::filesystem::path path = job.file;
  path.replace_extension(".log.jsonl");
  const auto name = root.text("log_file");
  path = name ? files.path_of(*name, "the log") : files.note(path, "the log");
  const auto text = files.appended(path, root.problems());
  if (text) job.history = read_log(*text, path.string());
}

/// The shelf that jobs share need not be there yet.
void read_shared_shelf(JsonCursor& root, Job& job, NamedFiles& files) {
  const auto name = root.text("shelf_file");
  if (!name) return;
  const std::filesystem::path path = files.path_of(*name, "the shelf file");
  if (const auto text = files.appended(path, root.problems()))
    job.shelf = parse_shelf(text->lines + text->torn, path.string(), job.data, root.problems());
}

/// The job in `tree`, with the files that it names added to `files`.
std::optional<Job> job_in(const JsonNode& tree, const std::filesystem::path& file,
                          FinishingData data, NamedFiles files, Problems& problems) {
  const std::size_t before = problems.size();
  JsonCursor root(tree, "", file.string(), problems);
  if (tree.kind != JsonNode::Kind::object) return std::nullopt;
  files.note(file, "the job file");
  Job job;
  job.file = file.string();
  job.data = std::move(data);
  const Zone zone = read_zone(root);
  read_heading(root, job, zone);
  read_own_rates(root, job.data);
  job.coatings = read_coatings(root, job.data);
  job.thinners = read_thinners(root, job.coatings);
  job.systems = read_systems(root, job.coatings, job.data);
  check_systems_hold(job, problems);
  check_touches(job, problems);
  const SharedRules shared = read_shared_rules(root, zone);
  job.rooms = shared.rooms;
  job.batches = read_batches(root, job.systems, shared);
  read_parts_of(root, job, files);
  job.room = read_room(root, job.data.air_changes);
  if (auto air = root.object(needed("air"))) job.air = read_air(*air, files, zone);
  if (auto calendar = root.object(needed("calendar")))
    job.calendar = read_calendar(*calendar, zone, files, !root.has("people"));
  job.people = read_people(root, job.calendar, files);
  read_history(root, job, files);
  read_shared_shelf(root, job, files);
  job.files_read = files.read();
  root.refuse_unknown();
  if (problems.size() == before) return job;
  for (const LeftOutLine& line : job.history.left_out)
    problems.insert(problems.end(), line.why.begin(), line.why.end());
  return std::nullopt;
}

}  // namespace

std::optional<Job> read_job(const Files& files, const std::filesystem::path& file,
                            const std::optional<std::filesystem::path>& data_dir,
                            Problems& problems) {
  auto data = data_dir ? read_finishing_data(files, *data_dir, problems)
                       : std::optional(built_in_finishing_data());
  const auto text = files.text(file, problems);
  const auto tree = text ? parse_json(*text, file.string(), problems) : std::nullopt;
  // Without the trade's data no name in the job can be judged.
  if (!data || !tree) return std::nullopt;
  NamedFiles named(files, file.parent_path());
  if (data_dir)
    for (const std::string_view name : finishing_data_files)
      named.note(*data_dir / name, "a file of the finishing data");
  return job_in(*tree, file, std::move(*data), std::move(named), problems);
}

std::optional<Job> parse_job(std::string_view text, const Files& files,
                             const std::filesystem::path& file, FinishingData data,
                             Problems& problems) {
  const auto tree = parse_json(text, file.string(), problems);
  if (!tree) return std::nullopt;
  return job_in(*tree, file, std::move(data), NamedFiles(files, file.parent_path()), problems);
}

}  // namespace tackfree
