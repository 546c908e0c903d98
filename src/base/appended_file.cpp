#include "tackfree/base/appended_file.hpp"

#include "tackfree/base/text_file.hpp"

#include <cerrno>
#include <utility>

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

namespace tackfree {

namespace {

/// Keeps a torn line beside the file before it is cut off there, so that no byte is ever lost.
bool set_aside(const std::filesystem::path& path, const std::string& torn,
               const LockPatience& patience) {
  std::filesystem::path beside = path;
  beside += ".torn";
  const LockedFile file(beside, O_WRONLY | O_CREAT | O_APPEND, LOCK_EX, patience);
  if (!file.is_open()) return false;
  const bool kept = write_all(file, torn + "\n") && ::fsync(file.number()) == 0;
  flush_folder_of(beside);
  return kept;
}

}  // namespace

std::optional<AppendedText> read_appended(const std::filesystem::path& path, Problems& problems,
                                          const LockPatience& patience) {
  const LockedFile file(path, O_RDONLY, LOCK_SH, patience);
  if (!file.is_open() && errno == ENOENT) return AppendedText{};
  auto text = file.is_open() ? read_all(file, longest_text_file) : std::nullopt;
  if (!text) {
    problems.push_back(fault_of_file(path, "read"));
    return std::nullopt;
  }
  return appended_text(std::move(*text));
}

bool append_line(const std::filesystem::path& path, const LineMaker& maker, Problems& problems,
                 const LockPatience& patience) {
  const LockedFile file(path, O_RDWR | O_CREAT | O_APPEND, LOCK_EX, patience);
  auto text = file.is_open() ? read_all(file, longest_text_file) : std::nullopt;
  if (!text) {
    problems.push_back(fault_of_file(path, "written"));
    return false;
  }
  const bool is_new = text->empty();
  AppendedText there = appended_text(std::move(*text));
  const bool unended = !there.torn.empty() && maker.is_whole(there.torn);
  if (unended) there = {there.lines + there.torn + "\n", {}};
  const auto line = maker.line_for(there.lines);
  if (!line) return false;
  if (there.lines.size() + line->size() >= longest_text_file) {
    errno = EFBIG;
    problems.push_back(fault_of_file(path, "written"));
    return false;
  }
  const auto before = static_cast<off_t>(there.lines.size() - (unended ? 1 : 0));
  if (!there.torn.empty() &&
      (!set_aside(path, there.torn, patience) || ::ftruncate(file.number(), before) != 0)) {
    problems.push_back(fault_of_file(path, "written"));
    return false;
  }
  const std::string addition = (unended ? "\n" : "") + *line + "\n";
  if (!write_all(file, addition) || ::fsync(file.number()) != 0) {
    problems.push_back(fault_of_file(path, "written"));
    // What did reach the file of the line is not confirmed: it goes.
    if (::ftruncate(file.number(), before) != 0)
      problems.back().hint = "part of the new line may stand at its end";
    return false;
  }
  if (is_new) flush_folder_of(path);
  return true;
}

}  // namespace tackfree
