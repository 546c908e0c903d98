// Starter job: files of a small invented job that plans as it stands, for a person to change.
#pragma once

#include <string>
#include <vector>

namespace tackfree {

struct StarterFile {
  std::string name;
  std::string text;
};

/// The job file first, then what it names.
std::vector<StarterFile> starter_job();

}  // namespace tackfree
