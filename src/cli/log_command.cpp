#include "tackfree/cli/log_command.hpp"

#include "tackfree/cli/given_time.hpp"
#include "tackfree/input/log_lines.hpp"
#include "tackfree/input/measure.hpp"
#include "tackfree/plan/log_entry.hpp"
#include "tackfree/report/display_text.hpp"
#include "tackfree/report/text_log.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

/// The amount under whichever option has it.
std::optional<Volume> amount(const LogOptions& told, Problems& problems) {
  if (told.litres) return litres(*told.litres);
  if (told.used.empty()) return std::nullopt;
  const Reading<Volume> read = read_volume(told.used);
  if (!read.value) {
    std::string key = "--used";
    if (told.kind == LogKind::tin) key = "size";
    if (told.kind == LogKind::waste) key = "amount";
    problems.push_back({.key = key, .found = told.used, .wanted = read.wanted});
  }
  return read.value;
}

std::optional<Temperature> temperature(const LogOptions& told) {
  if (told.temp_c) return celsius(*told.temp_c);
  if (told.temp_f) return fahrenheit(*told.temp_f);
  return std::nullopt;
}

Report report_of(const LogOptions& told, const Job& job, Instant now, Problems& problems) {
  Report report{.kind = told.kind, .at = now};
  if (const auto at = moment_given("--at", told.at, job, now, problems)) report.at = *at;
  if (!told.from.empty()) report.began_at = moment_given("--from", told.from, job, now, problems);
  report.batch = told.batch;
  report.step = told.step;
  report.coat = told.coat;
  report.side = told.side;
  report.coating = told.coating;
  report.amount = amount(told, problems);
  report.temperature = temperature(told);
  if (told.humidity_pct) report.humidity = humidity_percent(*told.humidity_pct);
  if (told.kind == LogKind::test) report.test = told.test;
  report.passed = told.passed;
  if (told.kind == LogKind::fault) report.fault = told.fault;
  if (told.kind == LogKind::tin) report.tin = told.tin;
  report.insists = told.insist;
  report.corrects = told.corrects;
  report.note = told.note;
  if (told.kind == LogKind::air && !report.temperature)
    problems.push_back({.key = "--air-temp-c", .wanted = "wanted the temperature that was read"});
  return report;
}

/// Adds the line under the lock, with the number after the last one that stands there then.
std::optional<int> written(LogEntry entry, const Job& job, Problems& problems) {
  const std::string& file = job.history.file;
  const auto line_for = [&](std::string_view lines) -> std::optional<std::string> {
    const std::size_t before = problems.size();
    const History history = read_log({std::string(lines), {}}, file, problems);
    if (problems.size() > before) return std::nullopt;
    entry.id = history.last_id + 1;
    return log_line(entry, job.calendar.zone);
  };
  if (!append_line(file, {line_for, is_whole_log_line}, problems)) return std::nullopt;
  return entry.id;
}

}  // namespace

std::string logged(const Options& options, const Job& job, Instant now, int columns,
                   Problems& problems) {
  if (options.log.show) return log_text(job, columns);
  const Report report = report_of(options.log, job, now, problems);
  if (!problems.empty()) return {};
  const auto told = understood(job, report, now, problems);
  if (!told || !problems.empty()) return {};
  std::string text = understood_text(*told, columns);
  if (options.log.only_show) return text + "Nothing was written.\n";
  const auto number = written(told->entry, job, problems);
  if (!number) return {};
  return text + fmt::format("Written as number {} in {}\n", *number, clean(job.history.file));
}

}  // namespace tackfree
