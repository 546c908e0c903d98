// Early job: a coat on Tuesday evening, and others that were insisted on, for tests.
#pragma once

#include <string>
#include <vector>

#include "plan/planned_log.hpp"

namespace tackfree::testing {

inline const std::string both_1 = "top/finish/coat-1/both/coat";
inline const std::string both_2 = "top/finish/coat-2/both/coat";

/// In one go, with a first coat on Tuesday evening and what else the log says.
inline Job early_job(const std::string& class_key, std::vector<LogEntry> more) {
  Job job = sample_job(class_key);
  job.batches[0].sides = Sides::on_points;
  job.systems[0].steps[0].coats = 2;
  job.history.file = "sample.log.jsonl";
  job.history.entries = {coat(1, both_1, "2027-04-06T19:00Z")};
  for (LogEntry& line : more) job.history.entries.push_back(line);
  return job;
}

inline LogEntry insisted_coat(const std::string& step, Instant at) {
  LogEntry line = coat(2, step, "2027-04-06T19:00Z");
  line.written_at = line.at = at;
  line.began_at = at - Minutes(30);
  line.insisted = true;
  return line;
}

}  // namespace tackfree::testing
