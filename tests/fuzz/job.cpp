// Job: any text as a job file, beside the files that the job with every key names.

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/finishing_data_reader.hpp"
#include "tackfree/input/job_reader.hpp"

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  static const FinishingData trade = built_in_finishing_data();
  const std::string folder = TACKFREE_ROOT "/tests/input/every_key/";
  Problems problems;
  const auto job = parse_job(text, FilesOnDisk(), folder + "job.json", trade, problems);
  must(job.has_value() == problems.empty(), "there is a job unless there are problems");
  for (const Problem& problem : problems) must_help({problem}, problem.file);
  for (const Problem& problem : problems)
    must(problem.file.starts_with(folder), "a problem is of the job or a file beside it");
}
