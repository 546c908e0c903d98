#include "tackfree/base/shared_file.hpp"

#include "tackfree/base/text_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {

namespace {

/// Does the path still lead to the file that is locked? Who held the lock before may have put
/// another one in its place.
bool leads_to(const std::filesystem::path& path, const LockedFile& file) {
  struct stat named {
  }, locked{};
  return ::stat(path.c_str(), &named) == 0 && ::fstat(file.number(), &locked) == 0 &&
         named.st_dev == locked.st_dev && named.st_ino == locked.st_ino;
}

}  // namespace

bool rewrite_shared(const std::filesystem::path& path, const Rewriting& rewriting,
                    Problems& problems, const LockPatience& patience) {
  std::error_code fault;
  const bool was_there = std::filesystem::exists(path, fault);
  while (true) {
    const LockedFile file(path, O_RDWR | O_CREAT, LOCK_EX, patience);
    if (file.is_open() && !leads_to(path, file)) continue;
    const auto text = file.is_open() ? read_all(file, longest_text_file) : std::nullopt;
    if (!text) {
      problems.push_back(fault_of_file(path, "written"));
      return false;
    }
    const auto rewritten = rewriting(*text);
    const bool is_written =
        rewritten && (*rewritten == *text || write_text_file(path, *rewritten, problems));
    // One that was made only to be locked.
    if (!is_written && !was_there && text->empty()) ::unlink(path.c_str());
    return is_written;
  }
}

}  // namespace tackfree
