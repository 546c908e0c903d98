#include "bench/instance.hpp"

#include <fstream>
#include <iterator>

namespace tackfree::bench {

solver::LagTable own_end(solver::Slot horizon) {
  solver::LagTable table;
  for (solver::Slot e = 0; e <= horizon; ++e) table.push_back(e);
  return table;
}

Instance read_instance(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw BadInstance(path + ": cannot be read");
  const std::string text(std::istreambuf_iterator<char>(file), {});
  auto ends_in = [&](const std::string& ending) {
    return path.size() > ending.size() &&
           path.compare(path.size() - ending.size(), ending.size(), ending) == 0;
  };
  if (ends_in(".json")) return finishing_instance(path, text);
  if (ends_in(".sm")) return single_mode_instance(path, text);
  if (ends_in(".SCH") || ends_in(".sch")) return maximum_lag_instance(path, text);
  throw BadInstance(path + ": ends in none of .json, .sm, .SCH");
}

}  // namespace tackfree::bench
