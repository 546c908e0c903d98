#include "tackfree/base/file_identity.hpp"

#include <utility>

#include <sys/stat.h>

namespace tackfree {

namespace {

std::optional<FileIdentity> identity_in(const struct stat& facts, std::string rest) {
  if (S_ISCHR(facts.st_mode)) return std::nullopt;
  return FileIdentity{facts.st_dev, facts.st_ino, std::move(rest)};
}

}  // namespace

std::filesystem::path link_target(std::filesystem::path path) {
  constexpr int longest_chain = 40;  // as the system's own limit; a ring of links never ends
  std::error_code fault;
  for (int i = 0; i < longest_chain && std::filesystem::is_symlink(path, fault); ++i) {
    const std::filesystem::path target = std::filesystem::read_symlink(path, fault);
    if (fault) break;
    path = path.parent_path() / target;  // an absolute target replaces what is before it
  }
  return path;
}

std::optional<FileIdentity> identity_of(const std::filesystem::path& path) {
  struct stat facts {};
  if (::stat(path.c_str(), &facts) == 0) return identity_in(facts, {});
  std::error_code fault;
  std::filesystem::path folder = std::filesystem::absolute(link_target(path), fault);
  if (fault) return std::nullopt;
  std::filesystem::path rest;
  while (folder.has_relative_path()) {
    rest = rest.empty() ? folder.filename() : folder.filename() / rest;
    folder = folder.parent_path();
    if (::stat(folder.c_str(), &facts) == 0)
      return identity_in(facts, rest.lexically_normal().string());
  }
  return std::nullopt;
}

std::optional<FileIdentity> identity_of(int descriptor) {
  struct stat facts {};
  if (::fstat(descriptor, &facts) != 0) return std::nullopt;
  return identity_in(facts, {});
}

}  // namespace tackfree
