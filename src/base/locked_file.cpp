#include "tackfree/base/locked_file.hpp"

#include "tackfree/base/text_file.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <string>
#include <thread>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>

namespace tackfree {

namespace {

// A writer needs a lock for a few milliseconds; who needs it for longer is asked less often.
constexpr std::chrono::microseconds first_pause{20}, longest_pause{20'000};
constexpr std::chrono::milliseconds worth_telling{100};

}  // namespace

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the flags of open() and of flock()
LockedFile::LockedFile(const std::filesystem::path& path, int flags, int lock,
                       const LockPatience& patience)
    // A pipe would be waited for where it is opened.
    : Descriptor(::open(path.c_str(), flags | O_CLOEXEC | O_NONBLOCK, 0644)) {
  if (!is_open()) return;
  const int fault = fault_in_locking(path, lock, patience);
  if (fault == 0) return;
  close();
  errno = fault;
}

int LockedFile::fault_in_locking(const std::filesystem::path& path, int lock,
                                 const LockPatience& patience) {
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

Problem fault_of_file(const std::filesystem::path& path, std::string_view doing) {
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
  return {.file = path.string(), .wanted = std::move(wanted)};
}

}  // namespace tackfree
