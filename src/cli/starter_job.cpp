#include "tackfree/cli/starter_job.hpp"

#include "tackfree/input/builtin_data.hpp"

#include <stdexcept>
#include <utility>

namespace tackfree {

std::vector<StarterFile> starter_job() {
  std::vector<StarterFile> files;
  for (const char* name : {"job.json", "parts.csv"}) {
    Problems problems;
    auto text =
        built_in_files().text(std::filesystem::path(built_in_folder) / "starter" / name, problems);
    if (!text) throw std::logic_error("the starter job is not built in");
    files.push_back({name, std::move(*text)});
  }
  return files;
}

}  // namespace tackfree
