#include "tackfree/base/appended_file.hpp"

#include "tackfree/base/descriptor.hpp"
#include "tackfree/base/text_file.hpp"

#include <cerrno>
#include <cstring>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {

namespace {

/// Opened with `flags` and locked until it is closed; not open when either fails.
class LockedFile : public Descriptor {
 public:
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the flags of open() and of flock()
  LockedFile(const std::filesystem::path& path, int flags, int lock)
      : Descriptor(::open(path.c_str(), flags | O_CLOEXEC, 0644)) {
    while (is_open() && ::flock(number(), lock) != 0)
      if (errno != EINTR) {
        close();
        return;
      }
  }
};

void report(Problems& problems, const std::filesystem::path& path, std::string_view doing) {
  problems.push_back({.file = path.string(),
                      .wanted = fmt::format("cannot be {} ({}); name a file that can", doing,
                                            std::strerror(errno))});
}

AppendedText split(std::string text) {
  const std::size_t end = text.rfind('\n');
  const std::size_t whole = end == std::string::npos ? 0 : end + 1;
  AppendedText result{{}, text.substr(whole)};
  text.resize(whole);
  result.lines = std::move(text);
  return result;
}

/// Keeps a torn line beside the file before it is cut off there, so that no byte is ever lost.
bool set_aside(const std::filesystem::path& path, const std::string& torn) {
  std::filesystem::path beside = path;
  beside += ".torn";
  const LockedFile file(beside, O_WRONLY | O_CREAT | O_APPEND, LOCK_EX);
  if (!file.is_open()) return false;
  const bool kept = write_all(file, torn + "\n") && ::fsync(file.number()) == 0;
  flush_folder_of(beside);
  return kept;
}

}  // namespace

std::optional<AppendedText> read_appended(const std::filesystem::path& path, Problems& problems) {
  const LockedFile file(path, O_RDONLY, LOCK_SH);
  if (!file.is_open() && errno == ENOENT) return AppendedText{};
  auto text = file.is_open() ? read_all(file, longest_text_file) : std::nullopt;
  if (!text) {
    report(problems, path, "read");
    return std::nullopt;
  }
  return split(std::move(*text));
}

bool append_line(const std::filesystem::path& path, const LineMaker& maker, Problems& problems) {
  const LockedFile file(path, O_RDWR | O_CREAT | O_APPEND, LOCK_EX);
  auto text = file.is_open() ? read_all(file, longest_text_file) : std::nullopt;
  if (!text) {
    report(problems, path, "written");
    return false;
  }
  const bool is_new = text->empty();
  AppendedText there = split(std::move(*text));
  const bool unended = !there.torn.empty() && maker.is_whole(there.torn);
  if (unended) there = {there.lines + there.torn + "\n", {}};
  const auto line = maker.line_for(there.lines);
  if (!line) return false;
  const auto before = static_cast<off_t>(there.lines.size() - (unended ? 1 : 0));
  if (!there.torn.empty() &&
      (!set_aside(path, there.torn) || ::ftruncate(file.number(), before) != 0)) {
    report(problems, path, "written");
    return false;
  }
  const std::string addition = (unended ? "\n" : "") + *line + "\n";
  if (!write_all(file, addition) || ::fsync(file.number()) != 0) {
    report(problems, path, "written");
    // What did reach the file of the line is not confirmed: it goes.
    if (::ftruncate(file.number(), before) != 0) report(problems, path, "written");
    return false;
  }
  if (is_new) flush_folder_of(path);
  return true;
}

}  // namespace tackfree
