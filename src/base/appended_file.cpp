#include "tackfree/base/appended_file.hpp"

#include "tackfree/base/descriptor.hpp"
#include "tackfree/base/text_file.hpp"

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <thread>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {

namespace {

// A writer needs a lock for a few milliseconds; who needs it for longer is asked less often.
constexpr std::chrono::microseconds first_pause{20}, longest_pause{20'000};
constexpr std::chrono::milliseconds worth_telling{100};

/// Opened with `flags` and locked until it is closed. Not open when either fails, with `errno`:
/// EWOULDBLOCK where another program kept its lock, ENODEV where lines cannot be added.
class LockedFile : public Descriptor {
 public:
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the flags of open() and of flock()
  LockedFile(const std::filesystem::path& path, int flags, int lock, const LockPatience& patience)
      // A pipe would be waited for where it is opened.
      : Descriptor(::open(path.c_str(), flags | O_CLOEXEC | O_NONBLOCK, 0644)) {
    if (!is_open()) return;
    const int fault = fault_in_locking(path, lock, patience);
    if (fault == 0) return;
    close();
    errno = fault;
  }

 private:
  /// 0 once it is locked.
  int fault_in_locking(const std::filesystem::path& path, int lock, const LockPatience& patience) {
    struct stat facts {};
    if (::fstat(number(), &facts) != 0) return errno;
    if (!S_ISREG(facts.st_mode)) return ENODEV;
    std::chrono::microseconds waited{}, pause = first_pause;
    bool told = false;
    while (::flock(number(), lock | LOCK_NB) != 0) {
      if (errno == EINTR) continue;
      if (errno != EWOULDBLOCK || waited >= patience.most) return errno;
      if (!told && waited >= worth_telling && patience.told) {
        told = true;
        patience.told(path);
      }
      std::this_thread::sleep_for(pause);
      waited += pause;
      pause = std::min(pause * 2, longest_pause);
    }
    return 0;
  }
};

void report(Problems& problems, const std::filesystem::path& path, std::string_view doing) {
  const int why = errno;
  std::string wanted =
      fmt::format("cannot be {} ({}); name a file that can", doing, std::strerror(why));
  if (why == EWOULDBLOCK)
    wanted = fmt::format(
        "cannot be {}: another program keeps it locked; try again once that "
        "program has ended",
        doing);
  if (why == ENODEV) wanted = "is a folder, a device or a pipe; name a file";
  if (why == EFBIG)
    wanted = fmt::format("cannot be {}: a file may have {} MiB; begin a new one", doing,
                         longest_text_file >> 20U);
  problems.push_back({.file = path.string(), .wanted = std::move(wanted)});
}

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
    report(problems, path, "read");
    return std::nullopt;
  }
  return appended_text(std::move(*text));
}

bool append_line(const std::filesystem::path& path, const LineMaker& maker, Problems& problems,
                 const LockPatience& patience) {
  const LockedFile file(path, O_RDWR | O_CREAT | O_APPEND, LOCK_EX, patience);
  auto text = file.is_open() ? read_all(file, longest_text_file) : std::nullopt;
  if (!text) {
    report(problems, path, "written");
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
    report(problems, path, "written");
    return false;
  }
  const auto before = static_cast<off_t>(there.lines.size() - (unended ? 1 : 0));
  if (!there.torn.empty() &&
      (!set_aside(path, there.torn, patience) || ::ftruncate(file.number(), before) != 0)) {
    report(problems, path, "written");
    return false;
  }
  const std::string addition = (unended ? "\n" : "") + *line + "\n";
  if (!write_all(file, addition) || ::fsync(file.number()) != 0) {
    report(problems, path, "written");
    // What did reach the file of the line is not confirmed: it goes.
    if (::ftruncate(file.number(), before) != 0)
      problems.back().hint = "part of the new line may stand at its end";
    return false;
  }
  if (is_new) flush_folder_of(path);
  return true;
}

}  // namespace tackfree
