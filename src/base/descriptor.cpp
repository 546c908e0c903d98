#include "tackfree/base/descriptor.hpp"

#include <array>
#include <cerrno>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace tackfree {

bool Descriptor::close() { return number_ < 0 || ::close(std::exchange(number_, -1)) == 0; }

std::string_view kind_of_no_file(const Descriptor& open) {
  struct stat facts {};
  if (::fstat(open.number(), &facts) != 0 || S_ISREG(facts.st_mode)) return {};
  if (S_ISDIR(facts.st_mode)) return "a folder";
  if (S_ISFIFO(facts.st_mode)) return "a pipe";
  return S_ISSOCK(facts.st_mode) ? "a socket" : "a device";
}

std::optional<std::string> read_all(const Descriptor& file, std::size_t most) {
  std::string text;
  std::array<char, 65536> piece{};
  while (true) {
    const ssize_t count = ::read(file.number(), piece.data(), piece.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return std::nullopt;
    if (count == 0) return text;
    text.append(piece.data(), static_cast<std::size_t>(count));
    if (text.size() > most) {
      errno = EFBIG;
      return std::nullopt;
    }
  }
}

bool write_all(const Descriptor& file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(file.number(), text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

void flush_folder_of(const std::filesystem::path& file) {
  const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
  const Descriptor parent(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (parent.is_open()) ::fsync(parent.number());
}

}  // namespace tackfree
