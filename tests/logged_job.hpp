// Logged job: the sample job with lines of a log, for tests.
#pragma once

#include <utility>

#include "sample_job.hpp"

namespace tackfree::testing {

inline LogEntry entry(int id, LogKind kind, const std::string& step, const char* at) {
  LogEntry line{.id = id, .kind = kind, .written_at = instant(at), .at = instant(at), .step = step};
  line.line = id;
  return line;
}

inline LogEntry coat(int id, const std::string& step, const char* at, double litres_used = 0) {
  LogEntry line = entry(id, LogKind::coat, step, at);
  if (litres_used > 0) line.amount = litres(litres_used);
  return line;
}

inline LogEntry thumb(int id, const std::string& step, const char* at, bool passed) {
  LogEntry line = entry(id, LogKind::test, step, at);
  line.test = DryTest::thumb;
  line.passed = passed;
  return line;
}

inline LogEntry fault(int id, const std::string& step, const char* at, Fault what) {
  LogEntry line = entry(id, LogKind::fault, step, at);
  line.fault = what;
  return line;
}

inline Job logged_job(std::vector<LogEntry> entries) {
  Job job = sample_job();
  job.history.file = "sample.log.jsonl";
  job.history.entries = std::move(entries);
  return job;
}

inline const std::string back_1 = "top/finish/coat-1/back/coat";
inline const std::string show_1 = "top/finish/coat-1/show/coat";
inline const std::string back_2 = "top/finish/coat-2/back/coat";

}  // namespace tackfree::testing
