#include "tackfree/base/appended_file.hpp"

#include <array>
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

/// An open file, locked until it is closed.
class LockedFile {
 public:
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the flags of open() and of flock()
  LockedFile(const std::filesystem::path& path, int flags, int lock)
      : number_(::open(path.c_str(), flags | O_CLOEXEC, 0644)) {
    while (number_ >= 0 && ::flock(number_, lock) != 0)
      if (errno != EINTR) {
        ::close(std::exchange(number_, -1));
        return;
      }
  }
  LockedFile(const LockedFile&) = delete;
  LockedFile& operator=(const LockedFile&) = delete;
  ~LockedFile() {
    if (number_ >= 0) ::close(number_);
  }
  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }

 private:
  int number_;
};

void report(Problems& problems, const std::filesystem::path& path, std::string_view doing) {
  problems.push_back({.file = path.string(),
                      .wanted = fmt::format("cannot be {} ({}); name a file that can", doing,
                                            std::strerror(errno))});
}

std::optional<std::string> whole_text(int file) {
  std::string text;
  std::array<char, 65536> piece{};
  while (true) {
    const ssize_t count = ::read(file, piece.data(), piece.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return std::nullopt;
    if (count == 0) return text;
    text.append(piece.data(), static_cast<std::size_t>(count));
  }
}

AppendedText split(std::string text) {
  const std::size_t end = text.rfind('\n');
  const std::size_t whole = end == std::string::npos ? 0 : end + 1;
  AppendedText result{{}, text.substr(whole)};
  text.resize(whole);
  result.lines = std::move(text);
  return result;
}

bool write_whole(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(file, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

/// The name of a file that has just been made must reach the disk too.
void flush_folder(const std::filesystem::path& path) {
  const std::filesystem::path folder = path.has_parent_path() ? path.parent_path() : ".";
  const int number = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (number < 0) return;
  ::fsync(number);
  ::close(number);
}

/// Keeps a torn line beside the file before it is cut off there, so that no byte is ever lost.
bool set_aside(const std::filesystem::path& path, const std::string& torn) {
  std::filesystem::path beside = path;
  beside += ".torn";
  const LockedFile file(beside, O_WRONLY | O_CREAT | O_APPEND, LOCK_EX);
  if (!file.is_open()) return false;
  const bool kept = write_whole(file.number(), torn + "\n") && ::fsync(file.number()) == 0;
  flush_folder(beside);
  return kept;
}

}  // namespace

std::optional<AppendedText> read_appended(const std::filesystem::path& path, Problems& problems) {
  const LockedFile file(path, O_RDONLY, LOCK_SH);
  if (!file.is_open() && errno == ENOENT) return AppendedText{};
  auto text = file.is_open() ? whole_text(file.number()) : std::nullopt;
  if (!text) {
    report(problems, path, "read");
    return std::nullopt;
  }
  return split(std::move(*text));
}

bool append_line(const std::filesystem::path& path, const LineMaker& maker, Problems& problems) {
  const LockedFile file(path, O_RDWR | O_CREAT | O_APPEND, LOCK_EX);
  auto text = file.is_open() ? whole_text(file.number()) : std::nullopt;
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
  if (!write_whole(file.number(), addition) || ::fsync(file.number()) != 0) {
    report(problems, path, "written");
    // What did reach the file of the line is not confirmed: it goes.
    if (::ftruncate(file.number(), before) != 0) report(problems, path, "written");
    return false;
  }
  if (is_new) flush_folder(path);
  return true;
}

}  // namespace tackfree
