// Locked file: a file that no other program of ours writes until it is closed.
#pragma once

#include "tackfree/base/descriptor.hpp"
#include "tackfree/base/problem.hpp"

#include <chrono>
#include <filesystem>
#include <functional>
#include <string_view>

namespace tackfree {

/// How long a file that another program has locked is waited for, and who is told that it is.
struct LockPatience {
  std::function<void(const std::filesystem::path&)> told = {};  ///< once, after a tenth of a second
  std::chrono::milliseconds most = std::chrono::seconds(10);
};

/// Opened with `flags` and locked until it is closed. Not open when either fails, with `errno`:
/// EWOULDBLOCK where another program kept its lock, ENODEV where it is no regular file.
class LockedFile : public Descriptor {
 public:
  /// `flags` are those of open(), `lock` is that of flock().
  LockedFile(const std::filesystem::path& path, int flags, int lock, const LockPatience& patience);

 private:
  /// 0 once it is locked.
  int fault_in_locking(const std::filesystem::path& path, int lock, const LockPatience& patience);
};

/// What `errno` says of a file that cannot be opened, locked, `read` or `written`.
Problem fault_of_file(const std::filesystem::path& path, std::string_view doing);

}  // namespace tackfree
