#include "tackfree/base/text_file.hpp"

#include "tackfree/base/descriptor.hpp"
#include "tackfree/base/file_identity.hpp"

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

/// Beside `target`, flushed and renamed: after a power cut the name leads to the whole text or to
/// the old one. The rights of a file that was there stay.
void replace(const std::filesystem::path& target, std::string_view text, mode_t rights,
             Problems& problems) {
  const std::filesystem::path folder = target.has_parent_path() ? target.parent_path() : ".";
  std::string temporary = (folder / ("." + target.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(temporary.data(), O_CLOEXEC));
  if (!file.is_open())
    return add(problems, target,
               fmt::format("cannot be written ({}); name a folder that can be written to", why()));
  const bool written = write_all(file, text) && ::fchmod(file.number(), rights) == 0 &&
                       ::fsync(file.number()) == 0 && file.close() &&
                       ::rename(temporary.c_str(), target.c_str()) == 0;
  if (written) return flush_folder_of(target);
  add(problems, target, fmt::format("cannot be written ({})", why()));
  ::unlink(temporary.c_str());
}

/// A pipe or device takes the text as it is. One that nobody reads would be waited for without end.
void pass_on(const std::filesystem::path& path, std::string_view text, Problems& problems) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC));
  if (!file.is_open() && errno == ENXIO)
    return add(problems, path, "is a pipe that nobody reads; start what reads it first");
  if (!file.is_open() || ::fcntl(file.number(), F_SETFL, 0) != 0 || !write_all(file, text) ||
      !file.close())
    add(problems, path, fmt::format("cannot be written ({})", why()));
}

}  // namespace

std::optional<std::string> read_text_file(const std::filesystem::path& path, Problems& problems) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC));
  if (!file.is_open()) {
    add(problems, path,
        path == "-" && errno == ENOENT
            ? "cannot be read: nothing is read from standard input; name a file"
            : fmt::format("cannot be read ({}); name a file that is there", why()));
    return std::nullopt;
  }
  if (const std::string_view kind = kind_of_no_file(file); !kind.empty()) {
    add(problems, path, fmt::format("is {}; name a file", kind));
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
  constexpr mode_t usual_rights = 0644, all_rights = 07777;
  const std::size_t before = problems.size();
  struct stat facts {};
  const bool is_there = ::stat(path.c_str(), &facts) == 0;
  if (is_there && S_ISREG(facts.st_mode))
    replace(link_target(path), text, facts.st_mode & all_rights, problems);
  else if (is_there && (S_ISDIR(facts.st_mode) || S_ISBLK(facts.st_mode)))
    add(problems, path,
        fmt::format("cannot be written: it is a {}; name a file",
                    S_ISDIR(facts.st_mode) ? "folder" : "disk"));
  else if (is_there)
    pass_on(path, text, problems);
  else if (errno == ENOENT)
    replace(link_target(path), text, usual_rights, problems);
  else
    add(problems, path,
        fmt::format("cannot be written ({}); name a folder that can be written to", why()));
  return problems.size() == before;
}

}  // namespace tackfree
