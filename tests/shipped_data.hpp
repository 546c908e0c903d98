// Shipped data: the finishing data that comes with the program, for tests that hold it to the
// world.
#pragma once

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/finishing_data_reader.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>

namespace tackfree::testing {

/// Where other data is looked for in place of that built in: tests/outside/mutations.py edits a
/// copy.
inline std::optional<std::filesystem::path> other_data_folder() {
  const char* folder = std::getenv("TACKFREE_DATA");
  if (folder == nullptr) return std::nullopt;
  return folder;
}

/// The data built in, or that of `other_data_folder`.
inline const FinishingData& shipped_data() {
  static const FinishingData data = [] {
    const auto folder = other_data_folder();
    if (!folder) return built_in_finishing_data();
    Problems problems;
    auto found = read_finishing_data(FilesOnDisk(), *folder, problems);
    if (!found) throw std::runtime_error(to_text(problems.front()));
    return *found;
  }();
  return data;
}

inline const Coating& shipped_class(const std::string& key) {
  const auto found = std::ranges::find(shipped_data().classes, key, &Coating::class_key);
  if (found == shipped_data().classes.end()) throw std::invalid_argument(key);
  return *found;
}

/// A law of drying_laws.json, by the class that dries in the coldest air: others stop above that of
/// the law.
inline const DryingLaw& shipped_law(const std::string& name) {
  const DryingLaw* coldest = nullptr;
  for (const Coating& coating : shipped_data().classes)
    if (coating.law.name == name &&
        (coldest == nullptr || coating.law.stops_below.value < coldest->stops_below.value))
      coldest = &coating.law;
  if (coldest == nullptr) throw std::invalid_argument(name);
  return *coldest;
}

}  // namespace tackfree::testing
