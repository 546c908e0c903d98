#include "tackfree/base/text_file.hpp"

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {

namespace {

/// An open file descriptor, closed when it goes.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  int number() const { return number_; }
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

std::string why() { return std::strerror(errno); }

void add(Problems& problems, const std::filesystem::path& path, std::string wanted) {
  problems.push_back({.file = path.string(), .wanted = std::move(wanted)});
}

bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

}  // namespace

std::optional<std::string> read_text_file(const std::filesystem::path& path, Problems& problems) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.number() < 0) {
    add(problems, path, fmt::format("cannot be read ({}); name a file that is there", why()));
    return std::nullopt;
  }
  struct stat facts {};
  if (::fstat(file.number(), &facts) != 0 || S_ISDIR(facts.st_mode)) {
    add(problems, path, "is a folder; name a file");
    return std::nullopt;
  }
  std::string text;
  std::array<char, 65536> piece{};
  while (true) {
    const ssize_t count = ::read(file.number(), piece.data(), piece.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) {
      add(problems, path, fmt::format("cannot be read ({})", why()));
      return std::nullopt;
    }
    if (count == 0) return text;
    text.append(piece.data(), static_cast<std::size_t>(count));
    if (text.size() > longest_text_file) {
      add(problems, path,
          fmt::format("is longer than {} MiB; wanted a shorter file", longest_text_file >> 20U));
      return std::nullopt;
    }
  }
}

bool write_text_file(const std::filesystem::path& path, std::string_view text, Problems& problems) {
  const std::filesystem::path folder = path.has_parent_path() ? path.parent_path() : ".";
  std::string temporary = (folder / ("." + path.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(temporary.data(), O_CLOEXEC));
  if (file.number() < 0) {
    add(problems, path,
        fmt::format("cannot be written ({}); name a folder that can be written to", why()));
    return false;
  }
  // Flushed before the rename: after a power cut the name leads to the whole text or to the old
  // one.
  const bool written = write_all(file.number(), text) && ::fchmod(file.number(), 0644) == 0 &&
                       ::fsync(file.number()) == 0 && file.close() &&
                       ::rename(temporary.c_str(), path.c_str()) == 0;
  if (!written) {
    add(problems, path, fmt::format("cannot be written ({})", why()));
    ::unlink(temporary.c_str());
    return false;
  }
  const Descriptor parent(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (parent.number() >= 0) ::fsync(parent.number());
  return true;
}

}  // namespace tackfree
