#include "tackfree/cli/starter_job.hpp"

#include "tackfree/base/files.hpp"
#include "tackfree/input/job_reader.hpp"

#include <doctest/doctest.h>

namespace tackfree {

TEST_CASE("the starter job that is written out is read without a problem") {
  FilesInMemory files;
  for (const StarterFile& file : starter_job()) files.put(file.name, file.text);
  Problems problems;
  const auto job = read_job(files, starter_job()[0].name, std::nullopt, problems);
  for (const Problem& problem : problems) FAIL_CHECK(to_text(problem));
  REQUIRE(job);
  CHECK(job->note.find("invented") != std::string::npos);
  CHECK(std::holds_alternative<ConstantAir>(job->air));
  CHECK(job->data.labour.fit_hardware.value == minutes(20));
  CHECK(job->data.labour.fit_hardware.origin == Origin::measured);
  CHECK(job->systems.at(1).steps.at(0).coats == 2);
}

}  // namespace tackfree
