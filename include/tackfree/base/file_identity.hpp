// File identity: which file a path leads to, so that two names of one file are known for one.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include <sys/types.h>

namespace tackfree {

/// A file by its device and inode. One that is not there yet: its nearest folder that is, and the
/// rest of its path.
struct FileIdentity {
  dev_t device = 0;
  ino_t node = 0;
  std::string rest;
  friend bool operator==(const FileIdentity&, const FileIdentity&) = default;
};

/// The file that `path` leads to, through links of either kind. Nothing for what holds nothing that
/// could be lost (a terminal, `/dev/null`) and for what cannot be told.
std::optional<FileIdentity> identity_of(const std::filesystem::path& path);
/// The same of a file that is open under this number.
std::optional<FileIdentity> identity_of(int descriptor);

/// Where a chain of symbolic links ends, be anything there or not; `path` itself where it is none.
std::filesystem::path link_target(std::filesystem::path path);

}  // namespace tackfree
