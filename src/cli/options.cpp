#include "tackfree/cli/options.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/cli/gone_options.hpp"
#include "tackfree/cli/number_check.hpp"
#include "tackfree/cli/plan_part.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

const char* const description =
    "Plans wood finishing: litres and tins, coats and grits,\nand the day and hour of every step.";
const char* const exit_codes =
    "Exit codes: 0 done, 2 a mistake in what was given, 3 a step has no time,\n1 a bug.";

/// Help in 80 columns: what an option takes in the words it was given for that, without the
/// library's names of types.
class HelpPage : public CLI::Formatter {
 public:
  HelpPage() { column_width(name_columns); }

  std::string make_option_opts(const CLI::Option* option) const override {
    const std::string& taken = option->get_option_text();
    return (taken.empty() ? "" : " " + taken) +
           (option->get_required() && option->nonpositional() ? " (required)" : "");
  }
  std::string make_option_desc(const CLI::Option* option) const override {
    return in_lines(option->get_description());
  }
  std::string make_subcommand(const CLI::App* command) const override {
    std::ostringstream out;
    CLI::detail::format_help(out, command->get_display_name(true),
                             in_lines(command->get_description()), name_columns);
    return out.str();
  }

 private:
  static constexpr std::size_t name_columns = 28, all_columns = 80;

  static std::string in_lines(const std::string& text) {
    return fmt::format("{}", fmt::join(wrapped(all_columns - name_columns, text), "\n"));
  }
};

/// The library's own message says only that a command is required.
std::optional<ReadOptions> unknown_command(const std::vector<std::string>& arguments) {
  const std::vector<std::string> known{"plan", "choices", "tonight", "log",   "area",
                                       "buy",  "drying",  "check",   "start", "shelf"};
  if (arguments.empty() || arguments[0].starts_with('-') ||
      std::find(known.begin(), known.end(), arguments[0]) != known.end())
    return std::nullopt;
  const Problem problem{
      .found = arguments[0], .wanted = "wanted a command", .hint = name_hint(arguments[0], known)};
  return ReadOptions{std::nullopt, clean(to_text(problem)) + "\n", true};
}

void add_job(CLI::App* command, Options& options) {
  command->add_option("job", options.job_file, "Job file (JSON)")->required();
}

void add_file(CLI::App* command, const char* name, std::optional<std::filesystem::path>& file,
              const char* what) {
  command->add_option(name, file, what)->option_text("FILE");
}

/// How much of the plan is printed.
void add_parts(CLI::App* plan, Options& options) {
  plan->add_flag("--full", options.full,
                 "Print everything: each reason and figure with where it comes from");
  plan->add_option_function<std::string>(
          "--only", [&options](const std::string& word) { options.only = plan_part_of(word); },
          fmt::format("Print one part of the plan: {}", fmt::join(plan_part_words, ", ")))
      ->check(CLI::Validator(plan_part_fault, ""))
      ->excludes("--full")
      ->option_text("PART");
}

CLI::App* plan_command(CLI::App& app, Options& options) {
  CLI::App* plan =
      app.add_subcommand("plan", "Plan a job and print what matters first, on one screen");
  add_job(plan, options);
  add_parts(plan, options);
  add_file(plan, "--json", options.json_file, "Write the plan as JSON to this file");
  add_file(plan, "--calendar", options.calendar_file,
           "Write calendar events (iCalendar) to this file");
  plan->add_option("--calendar-of", options.calendar_of,
                   "Write --calendar for this person of the job alone")
      ->option_text("NAME")
      ->needs("--calendar");
  plan->add_option("--csv", options.csv_folder,
                   "Write steps.csv, areas.csv and shopping.csv for a spreadsheet to this folder")
      ->option_text("FOLDER");
  add_file(plan, "--page", options.page_file,
           "Write the plan as one HTML file for a browser or paper to this file");
  const std::map<std::string, AiringChoice> airings{{"given", AiringChoice::given},
                                                    {"proposed", AiringChoice::proposed}};
  plan->add_option("--airing", options.airing,
                   "Air as the job says (given), or as a first plan proposes (proposed)")
      ->transform(CLI::CheckedTransformer(airings))
      ->option_text("given, proposed");
  const std::map<std::string, bool> answers{{"yes", true}, {"no", false}};
  plan->add_option("--keep", options.keep,
                   "Keep this plan beside the job for tonight and the next plan (yes), or not (no)")
      ->transform(CLI::CheckedTransformer(answers).description("{yes,no}"))
      ->type_name("")
      ->option_text("yes, no");
  return plan;
}

CLI::App* drying_command(CLI::App& app, Options& options) {
  CLI::App* drying = app.add_subcommand(
      "drying", "Predict how a coat put on at one hour would dry, and what speaks against it");
  add_job(drying, options);
  drying->add_option("--coating", options.coating, "Name of a coating of the job")
      ->required()
      ->option_text("NAME");
  drying->add_option("--at", options.at, "When it is put on, written as for --now; without it, now")
      ->option_text("TIME");
  add_file(drying, "--json", options.json_file, "Write the answer as JSON to this file");
  return drying;
}

/// The library's own numbers may be hexadecimal, infinite or none at all.
CLI::Validator within(const OptionRange& range) {
  return {[range](const std::string& text) { return number_fault(text, range); },
          fmt::format("{} to {}", range.least, range.most)};
}

/// A number in this range, which the help shows.
template <class Number>
CLI::Option* add_number(CLI::App* command, const char* name, Number& number,
                        const OptionRange& range, const char* what) {
  return command->add_option(name, number, what)
      ->check(within(range))
      ->option_text(fmt::format("{} to {}", range.least, range.most));
}

constexpr OptionRange log_numbers{1, 1'000'000'000, true};

void add_reading(CLI::App* command, LogOptions& log) {
  add_number(command, "--air-temp-c", log.temp_c, {-40, 60}, "Air in the room, in C");
  add_number(command, "--air-temp-f", log.temp_f, {-40, 140},
             "Air in the room, in F, in place of --air-temp-c")
      ->excludes("--air-temp-c");
  add_number(command, "--humidity-pct", log.humidity_pct, {1, 100},
             "Relative humidity in the room, in %");
}

/// The options of everything that is done to a batch.
void add_place(CLI::App* command, LogOptions& log) {
  command->add_option("--batch", log.batch, "Batch of the job; without it, the only one")
      ->option_text("NAME");
  add_number(command, "--coat", log.coat, {1, 1000, true},
             "Number of the coat; without it, the next or last one");
  command->add_option("--side", log.side, "back, show, both, top or bottom")->option_text("SIDE");
}

/// The words of an enumeration, for options.
template <class Enum, std::size_t N>
std::map<std::string, Enum> choices(const std::array<std::string_view, N>& words) {
  std::map<std::string, Enum> map;
  for (std::size_t i = 0; i < N; ++i) map[std::string(words[i])] = static_cast<Enum>(i);
  return map;
}

/// One way of logging: what it takes besides the job.
CLI::App* log_kind(CLI::App* log, Options& options, const char* name, const char* what) {
  CLI::App* kind = log->add_subcommand(name, what);
  add_job(kind, options);
  return kind;
}

void add_work_kinds(CLI::App* log, Options& options) {
  LogOptions& told = options.log;
  CLI::App* coat = log_kind(log, options, "coat", "A coat was put on");
  CLI::App* done = log_kind(log, options, "done", "Other work was done: sanding, turning over");
  CLI::App* skip = log_kind(log, options, "skip", "A step is left out on purpose");
  CLI::App* test = log_kind(log, options, "test", "A coat was tried");
  CLI::App* fault = log_kind(log, options, "fault", "A coat went wrong");
  test->add_option("test", told.test, "touch, or thumb: pressed and turned")
      ->required()
      ->transform(CLI::CheckedTransformer(choices<DryTest>(dry_test_words)).description(""));
  const std::map<std::string, bool> outcomes{{"passed", true}, {"failed", false}};
  test->add_option("outcome", told.passed, "passed or failed")
      ->required()
      ->transform(CLI::CheckedTransformer(outcomes).description(""));
  fault->add_option("fault", told.fault, "runs, wrinkling, fisheyes, blush, tacky, sand_through")
      ->required()
      ->transform(CLI::CheckedTransformer(choices<Fault>(fault_words)).description(""));
  for (CLI::App* command : {coat, done, skip, test, fault}) add_place(command, told);
  for (CLI::App* command : {coat, done})
    command->add_option("--from", told.from, "When it was begun; without it, by the usual pace")
        ->option_text("TIME");
  for (CLI::App* command : {done, skip})
    command
        ->add_option("--step", told.step,
                     "Which work, as in sand-p240 or turn-over; without it, the next")
        ->option_text("STEP");
  add_number(coat, "--litres", told.litres, {0.001, 1000}, "Taken from the tins, thinner and all");
  coat->add_option("--used", told.used,
                   "The same as a measure, in place of --litres: 350 ml, 11 fl oz")
      ->excludes("--litres")
      ->option_text("AMOUNT");
  add_reading(coat, told);
}

void add_hours_kinds(CLI::App* log, Options& options) {
  CLI::App* away = log_kind(log, options, "away", "Say that you are away for a day or some hours");
  CLI::App* free =
      log_kind(log, options, "free", "Say that you have more time than your calendar says");
  for (CLI::App* command : {away, free}) {
    LogOptions& told = options.log;
    command
        ->add_option("--on", told.on,
                     "Which day: today, tomorrow, thursday, 2027-04-15; without it, today")
        ->option_text("DAY");
    command->add_option("--person", told.person, "Whose hours; without it, everybody's")
        ->option_text("NAME");
  }
  away->add_option("--from", options.log.from, "Clock time; without it, the start of the day")
      ->option_text("TIME");
  away->add_option("--until", options.log.until, "Clock time; without it, the end of the day")
      ->option_text("TIME");
  free->add_option("--from", options.log.from, "Clock time; without it, from now, today")
      ->option_text("TIME");
  free->add_option("--until", options.log.until, "Clock time")->required()->option_text("TIME");
}

CLI::App* log_command(CLI::App& app, Options& options) {
  LogOptions& told = options.log;
  CLI::App* log = app.add_subcommand("log", "Write down what happened, or show the log");
  log->require_subcommand(1);
  add_work_kinds(log, options);
  CLI::App* tin = log_kind(log, options, "tin", "A tin was opened or bought");
  tin->add_option("event", told.tin, "opened or bought")
      ->required()
      ->transform(CLI::CheckedTransformer(choices<TinEvent>(tin_event_words)).description(""));
  tin->add_option("size", told.used, "What is in it: 1 qt, 750 ml")->required();
  CLI::App* waste = log_kind(log, options, "waste", "Coating was thrown away: a pot past its life");
  waste->add_option("amount", told.used, "How much: 200 ml")->required();
  for (CLI::App* command : {tin, waste})
    command->add_option("--coating", told.coating, "Coating of the job; without it, the only one")
        ->option_text("NAME");
  tin->add_option("--thinner", told.thinner, "What the coatings are thinned or cleaned with")
      ->option_text("NAME")
      ->excludes("--coating");
  log_kind(log, options, "bought-all", "All tins that the plan says to buy are bought");
  add_hours_kinds(log, options);
  CLI::App* air = log_kind(log, options, "air", "Thermometer and hygrometer were read");
  add_reading(air, told);
  log_kind(log, options, "rags", "Oily rags, pads and sanding dust are dealt with");
  CLI::App* note = log_kind(log, options, "note", "Anything else");
  note->add_option("text", told.note, "What is to be noted")->required();
  CLI::App* withdraw =
      log_kind(log, options, "withdraw", "An earlier line was wrong and is taken back");
  withdraw->add_option("number", told.corrects, "Number of that line")->check(within(log_numbers));
  withdraw
      ->add_option("--line", told.corrects_line,
                   "Its place in the file, counted from 1, where its number cannot be read")
      ->check(within(log_numbers))
      ->excludes("number")
      ->option_text("LINE");
  CLI::App* show = log_kind(log, options, "show", "Print the log");
  for (CLI::App* command : log->get_subcommands({})) {
    if (command == show) continue;
    if (command != note) command->add_option("--note", told.note, "A remark")->option_text("TEXT");
    command->add_flag("--only-show", told.only_show, "Say what is understood; write nothing");
    if (command == withdraw) continue;
    command
        ->add_option("--at", told.at,
                     "When: 20:10, yesterday 20:10, 2027-04-05T17:45; without it, now")
        ->option_text("TIME");
    command
        ->add_option("--corrects", told.corrects,
                     "Number of an earlier line that this one stands in place of")
        ->check(within(log_numbers))
        ->option_text("NUMBER");
  }
  for (const char* name : {"coat", "done", "test"})
    log->get_subcommand(name)->add_flag("--insist", told.insist,
                                        "It was so, although a rule or a figure speaks against it");
  return log;
}

LogKind logged_kind(const CLI::App& log) {
  const std::string name = log.get_subcommands().front()->get_name();
  if (name == "skip") return LogKind::skipped;
  if (name == "withdraw") return LogKind::withdrawn;
  if (name == "bought-all") return LogKind::bought;
  return choices<LogKind>(log_kind_words)[name];
}

/// The commands of the program, each with its options bound to one Options.
struct Commands {
  CLI::App *plan, *choices, *buy, *area, *check, *drying, *tonight, *log, *shelf, *start;

  Commands(CLI::App& app, Options& options)
      : plan(plan_command(app, options)),
        choices(
            app.add_subcommand("choices", "Show what fewer coating sessions would cost in days")),
        buy(app.add_subcommand("buy", "Plan a job and print only what to buy")),
        area(app.add_subcommand("area", "Print a job's areas by part, grain and side")),
        check(app.add_subcommand("check", "Read a job's files and report every mistake in them")),
        drying(drying_command(app, options)),
        tonight(app.add_subcommand("tonight", "Tell what to do now or next, on one screen")),
        log(log_command(app, options)),
        shelf(app.add_subcommand("shelf", "Tell what is in the tins now, and until when it keeps")),
        start(app.add_subcommand("start", "Write a small job to begin with into a new folder")) {
    for (CLI::App* command : {choices, buy, area, check, tonight, shelf}) add_job(command, options);
    add_file(choices, "--json", options.json_file, "Write the choices as JSON to this file");
    add_file(buy, "--json", options.json_file, "Write the shopping list as JSON to this file");
    add_file(area, "--json", options.json_file, "Write the areas as JSON to this file");
    add_reading(tonight, options.log);
    shelf->add_flag("--write", options.write_shelf,
                    "Bring the file of the shelf that your jobs share up to date");
    start->add_option("folder", options.folder, "Folder to make")->required();
    for (CLI::App* command : {plan, tonight})
      add_file(command, "--last-plan", options.last_plan,
               "Plan JSON written before, in place of the kept plan: stay near it, and tell what "
               "moved");
    shared(options);
  }

  /// What several commands have in common: the time, the width, the data.
  void shared(Options& options) const {
    std::vector<CLI::App*> dated{plan, choices, tonight, buy, drying, shelf};
    for (CLI::App* command : log->get_subcommands({})) dated.push_back(command);
    for (CLI::App* command : dated)
      command
          ->add_option(
              "--now", options.now,
              "Plan as of this time: 2027-04-05T17:45 in the job's zone, or with Z or an offset")
          ->option_text("TIME");
    check
        ->add_option("--now", options.now,
                     "Judge the log as of this time, written as for plan; without it, now")
        ->option_text("TIME");
    dated.push_back(area);
    for (CLI::App* command : dated)
      add_number(command, "--width", options.width, {40, 200, true},
                 "Columns of what is printed; without it, those of the terminal, up to 120, or 80");
    dated.push_back(check);
    for (CLI::App* command : dated)
      command
          ->add_option("--data", options.data_dir,
                       "Folder with finishing data, in place of the built-in data")
          ->option_text("FOLDER");
  }

  void choose(Options& options) const {
    if (*choices) options.command = Command::choices;
    if (*area) options.command = Command::area;
    if (*buy) options.command = Command::buy;
    if (*check) options.command = Command::check;
    if (*start) options.command = Command::start;
    if (*shelf) options.command = Command::shelf;
    if (*drying) options.command = Command::drying;
    if (*tonight) options.command = Command::tonight;
    if (!*log) return;
    options.command = Command::log;
    options.log.show = log->get_subcommands().front()->get_name() == "show";
    if (!options.log.show) options.log.kind = logged_kind(*log);
  }
};

}  // namespace

ReadOptions read_options(const std::vector<std::string>& arguments) {
  CLI::App app(description, "tackfree");
  app.require_subcommand(1);
  app.set_version_flag("--version", "tackfree " TACKFREE_VERSION);
  app.footer(exit_codes);
  app.formatter(std::make_shared<HelpPage>());
  // What it says of a mistake holds the arguments as they came.
  app.failure_message([](const CLI::App* /*app*/, const CLI::Error& fault) {
    return clean(fault.what()) + "\nRun with --help for more information.\n";
  });
  Options options;
  const Commands commands(app, options);
  if (auto mistake = unknown_command(arguments)) return std::move(*mistake);
  if (auto mistake = gone_option(arguments)) return {std::nullopt, std::move(*mistake), true};
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  try {
    app.parse(reversed);
  } catch (const CLI::ParseError& fault) {
    std::ostringstream out, err;
    const int code = app.exit(fault, out, err);
    return {std::nullopt, out.str() + err.str(), code != 0};
  }
  commands.choose(options);
  return {options, {}, false};
}

}  // namespace tackfree
