// Descriptor: an open file that closes itself, read and written whole, flushed with its folder.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// A file descriptor of the system, closed when it goes.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close(); }

  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }
  /// False when what was written may not have reached the disk.
  bool close();

 private:
  int number_;
};

/// What is open where it is no file that ends: "a folder", "a pipe", "a device", "a socket".
/// Nothing for a regular file. One that is opened to be read needs O_NONBLOCK: opening a pipe waits
/// else.
std::string_view kind_of_no_file(const Descriptor& open);

/// All from here to the end. Nothing when it cannot be read, or is longer than `most` bytes, with
/// `errno` saying why; EFBIG then.
std::optional<std::string> read_all(const Descriptor& file, std::size_t most);

/// Writes all of `text`; false, with `errno`, when part of it may be missing.
bool write_all(const Descriptor& file, std::string_view text);

/// Flushes the folder of a file, so that a name that is new or was changed reaches the disk too.
void flush_folder_of(const std::filesystem::path& file);

}  // namespace tackfree
