// Files on disk: the program's own way to the files of a job.
#pragma once

#include "tackfree/base/appended_file.hpp"
#include "tackfree/base/files.hpp"

#include <utility>

namespace tackfree {

/// Paths that are not absolute lie in the working folder.
class FilesOnDisk final : public Files {
 public:
  /// How long a log that another program has locked is waited for.
  explicit FilesOnDisk(LockPatience patience = {}) : patience_(std::move(patience)) {}

  std::optional<std::string> text(const std::filesystem::path& path,
                                  Problems& problems) const override;
  std::optional<AppendedText> appended(const std::filesystem::path& path,
                                       Problems& problems) const override;

 private:
  LockPatience patience_;
};

}  // namespace tackfree
