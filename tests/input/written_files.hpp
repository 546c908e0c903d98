// Written files: a folder that a test fills with input files and that goes with it.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/base/text_file.hpp"

#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

namespace tackfree {

class WrittenFiles {
 public:
  WrittenFiles() {
    std::string name = (std::filesystem::temp_directory_path() / "tackfree_XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    folder_ = name;
  }
  WrittenFiles(const WrittenFiles&) = delete;
  WrittenFiles& operator=(const WrittenFiles&) = delete;
  ~WrittenFiles() { std::filesystem::remove_all(folder_); }

  const std::filesystem::path& folder() const { return folder_; }
  std::filesystem::path write(const std::string& name, std::string_view text) const {
    Problems problems;
    REQUIRE(write_text_file(folder_ / name, text, problems));
    return folder_ / name;
  }

 private:
  std::filesystem::path folder_;
};

/// `text` with its one `from` replaced.
inline std::string replaced(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, std::string(from));
  REQUIRE_MESSAGE(text.find(from, at + 1) == std::string::npos, std::string(from));
  return text.replace(at, from.size(), to);
}

/// The line, from 1, on which `piece` stands in `text`.
inline int line_of(std::string_view text, std::string_view piece) {
  const std::size_t at = text.find(piece);
  REQUIRE(at != std::string_view::npos);
  int line = 1;
  for (const char c : text.substr(0, at)) line += c == '\n' ? 1 : 0;
  return line;
}

inline bool holds(std::string_view text, std::string_view piece) {
  return text.find(piece) != std::string_view::npos;
}

/// The problems as lines of text, for messages of failed checks.
inline std::string all_text(const Problems& problems) {
  std::string text;
  for (const Problem& problem : problems) text += to_text(problem) + "\n";
  return text;
}

}  // namespace tackfree
