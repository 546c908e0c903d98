// Named files: the files that a job names, beside it in its folder, and the list of those read.
#pragma once

#include "tackfree/model/job.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tackfree {

/// Readers ask it for the path of each file that they read.
class NamedFiles {
 public:
  explicit NamedFiles(std::filesystem::path folder) : folder_(std::move(folder)) {}

  /// The path of the file that the job calls `name`; it is noted as read. `what` it is, as in
  /// "the parts list".
  std::filesystem::path path_of(const std::string& name, std::string_view what) {
    return note(folder_ / name, what);
  }
  /// The same for a path that does not begin in the folder.
  std::filesystem::path note(std::filesystem::path path, std::string_view what) {
    read_.push_back({path.string(), std::string(what)});
    return path;
  }
  const std::vector<FileRead>& read() const { return read_; }

 private:
  std::filesystem::path folder_;
  std::vector<FileRead> read_;
};

}  // namespace tackfree
