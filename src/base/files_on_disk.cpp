#include "tackfree/base/files_on_disk.hpp"

#include "tackfree/base/text_file.hpp"

namespace tackfree {

std::optional<std::string> FilesOnDisk::text(const std::filesystem::path& path,
                                             Problems& problems) const {
  return read_text_file(path, problems);
}

std::optional<AppendedText> FilesOnDisk::appended(const std::filesystem::path& path,
                                                  Problems& problems) const {
  return read_appended(path, problems, patience_);
}

}  // namespace tackfree
