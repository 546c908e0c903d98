// Files: the texts that a job is made of, by their paths, wherever they are kept.
#pragma once

#include "tackfree/base/problem.hpp"

#include <filesystem>
#include <map>
#include <optional>
#include <string>

namespace tackfree {

/// What a file that lines are added to holds: whole lines, and what a power cut or a full disk left
/// of the last.
struct AppendedText {
  std::string lines;  ///< each ended by a line feed
  std::string torn;   ///< after the last line feed; empty as a rule
};

AppendedText appended_text(std::string text);

/// Readers ask for texts here alone, so that a job is read the same from a disk, a test or a page.
class Files {
 public:
  Files() = default;
  Files(const Files&) = delete;
  Files& operator=(const Files&) = delete;
  virtual ~Files() = default;

  /// The whole text of a file, or a Problem under its path.
  virtual std::optional<std::string> text(const std::filesystem::path& path,
                                          Problems& problems) const = 0;
  /// The same of a file that lines are added to; nothing in it where there is no such file yet.
  virtual std::optional<AppendedText> appended(const std::filesystem::path& path,
                                               Problems& problems) const = 0;
};

/// Files in memory.
class FilesInMemory final : public Files {
 public:
  /// Replaces what the path held.
  void put(const std::filesystem::path& path, std::string text);

  std::optional<std::string> text(const std::filesystem::path& path,
                                  Problems& problems) const override;
  std::optional<AppendedText> appended(const std::filesystem::path& path,
                                       Problems& problems) const override;

 private:
  std::map<std::filesystem::path, std::string> texts_;
};

}  // namespace tackfree
