// Named files: the files that a job names, beside it in its folder, and the list of those read.
#pragma once

#include "tackfree/base/files.hpp"
#include "tackfree/model/job.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tackfree {

/// Readers ask it for the path and the text of each file that they read.
class NamedFiles {
 public:
  NamedFiles(const Files& files, std::filesystem::path folder)
      : files_(files), folder_(std::move(folder)) {}

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
  std::optional<std::string> text(const std::filesystem::path& path, Problems& problems) const {
    return files_.text(path, problems);
  }
  std::optional<AppendedText> appended(const std::filesystem::path& path,
                                       Problems& problems) const {
    return files_.appended(path, problems);
  }
  const std::vector<FileRead>& read() const { return read_; }

 private:
  const Files& files_;
  std::filesystem::path folder_;
  std::vector<FileRead> read_;
};

}  // namespace tackfree
