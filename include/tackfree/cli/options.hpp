// Options: the command line, read into plain values.
#pragma once

#include "tackfree/model/history.hpp"
#include "tackfree/text/plan_text.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace tackfree {

enum class Command { plan, choices, area, buy, check, start, drying, tonight, log, shelf };

/// The airing to plan with: the job's own, or what the plan with that one proposes.
enum class AiringChoice { given, proposed };

/// What `log` was told, as it was written.
struct LogOptions {
  LogKind kind = LogKind::note;
  bool show = false;       ///< print the log, write nothing
  bool only_show = false;  ///< say what is understood, write nothing
  std::string batch, step, side, coating, thinner, at = "now", from, used, note;
  std::string on, until, person;  ///< away, free
  std::optional<int> coat, corrects, corrects_line;
  std::optional<double> litres, temp_c, temp_f, humidity_pct;
  DryTest test = DryTest::thumb;
  bool passed = false;
  Fault fault = Fault::runs;
  TinEvent tin = TinEvent::opened;
  bool insist = false;
};

struct Options {
  Command command = Command::plan;
  std::filesystem::path job_file;                      ///< all but start
  std::filesystem::path folder;                        ///< start
  std::optional<std::filesystem::path> data_dir;       ///< in place of the built-in data
  std::optional<std::filesystem::path> json_file;      ///< plan, choices, area, buy, drying
  std::optional<std::filesystem::path> calendar_file;  ///< plan
  std::optional<std::string> calendar_of;              ///< plan: a person of the job
  std::optional<std::filesystem::path> page_file;      ///< plan
  std::optional<std::filesystem::path> csv_folder;     ///< plan
  std::optional<int> width;                            ///< columns of what is printed
  std::string coating;                                 ///< drying: its name in the job
  std::optional<std::string> at;                       ///< drying: like now, which it is without
  std::optional<std::string> now;  ///< all dated, and check: local time in the job's zone, or UTC
  LogOptions log;                  ///< log; tonight: the reading
  std::optional<std::filesystem::path> last_plan;  ///< plan, tonight: plan JSON written before
  AiringChoice airing = AiringChoice::given;       ///< plan
  bool write_shelf = false;                        ///< shelf: bring the shared one up to date
  bool full = false;                               ///< plan: print all of it
  std::optional<PlanPart> only;                    ///< plan: print one part of it
  bool keep = true;                                ///< plan: beside the job, for the next one
};

/// What reading the command line came to: options, or a text to print (help, version, a mistake).
struct ReadOptions {
  std::optional<Options> options;
  std::string text;
  bool mistaken = false;
};

ReadOptions read_options(const std::vector<std::string>& arguments);

}  // namespace tackfree
