#include "tackfree/base/files.hpp"

#include <utility>

namespace tackfree {

AppendedText appended_text(std::string text) {
  const std::size_t end = text.rfind('\n');
  const std::size_t whole = end == std::string::npos ? 0 : end + 1;
  AppendedText result{{}, text.substr(whole)};
  text.resize(whole);
  result.lines = std::move(text);
  return result;
}

void FilesInMemory::put(const std::filesystem::path& path, std::string text) {
  texts_[path.lexically_normal()] = std::move(text);
}

std::optional<std::string> FilesInMemory::text(const std::filesystem::path& path,
                                               Problems& problems) const {
  const auto found = texts_.find(path.lexically_normal());
  if (found != texts_.end()) return found->second;
  problems.push_back(
      {.file = path.string(), .wanted = "cannot be read; name a file that is there"});
  return std::nullopt;
}

std::optional<AppendedText> FilesInMemory::appended(const std::filesystem::path& path,
                                                    Problems& /*problems*/) const {
  const auto found = texts_.find(path.lexically_normal());
  return found == texts_.end() ? AppendedText{} : appended_text(found->second);
}

}  // namespace tackfree
