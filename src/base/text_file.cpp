#include "tackfree/base/text_file.hpp"

#include "tackfree/base/descriptor.hpp"

#include <cerrno>
#include <cstring>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {

namespace {

std::string why() { return std::strerror(errno); }

void add(Problems& problems, const std::filesystem::path& path, std::string wanted) {
  problems.push_back({.file = path.string(), .wanted = std::move(wanted)});
}

}  // namespace

std::optional<std::string> read_text_file(const std::filesystem::path& path, Problems& problems) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.is_open()) {
    add(problems, path, fmt::format("cannot be read ({}); name a file that is there", why()));
    return std::nullopt;
  }
  struct stat facts {};
  if (::fstat(file.number(), &facts) != 0 || S_ISDIR(facts.st_mode)) {
    add(problems, path, "is a folder; name a file");
    return std::nullopt;
  }
  auto text = read_all(file, longest_text_file);
  if (!text)
    add(problems, path,
        errno == EFBIG
            ? fmt::format("is longer than {} MiB; wanted a shorter file", longest_text_file >> 20U)
            : fmt::format("cannot be read ({})", why()));
  return text;
}

bool write_text_file(const std::filesystem::path& path, std::string_view text, Problems& problems) {
  const std::filesystem::path folder = path.has_parent_path() ? path.parent_path() : ".";
  std::string temporary = (folder / ("." + path.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(temporary.data(), O_CLOEXEC));
  if (!file.is_open()) {
    add(problems, path,
        fmt::format("cannot be written ({}); name a folder that can be written to", why()));
    return false;
  }
  // Flushed before the rename: after a power cut the name leads to the whole text or to the old
  // one.
  const bool written = write_all(file, text) && ::fchmod(file.number(), 0644) == 0 &&
                       ::fsync(file.number()) == 0 && file.close() &&
                       ::rename(temporary.c_str(), path.c_str()) == 0;
  if (!written) {
    add(problems, path, fmt::format("cannot be written ({})", why()));
    ::unlink(temporary.c_str());
    return false;
  }
  flush_folder_of(path);
  return true;
}

}  // namespace tackfree
