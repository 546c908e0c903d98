#include "tackfree/input/starter_job.hpp"

#include "tackfree/input/builtin_data.hpp"

#include <stdexcept>

namespace tackfree {

std::vector<StarterFile> starter_job() {
  std::vector<StarterFile> files;
  for (const char* name : {"job.json", "parts.csv"}) {
    const auto text = builtin_data(std::string("starter/") + name);
    if (!text) throw std::logic_error("the starter job is not built in");
    files.push_back({name, std::string(*text)});
  }
  return files;
}

}  // namespace tackfree
