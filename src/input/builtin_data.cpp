#include "tackfree/input/builtin_data.hpp"

#include <memory>
#include <string>
#include <string_view>

namespace tackfree {

namespace {

struct BuiltinFile {
  std::string_view name;
  std::string_view text;
};

// NOLINTNEXTLINE(modernize-avoid-c-arrays): the number of files is not known here
constexpr BuiltinFile builtin_files[] = {
#include "builtin_data_files.inc"
};

}  // namespace

const Files& built_in_files() {
  static const auto files = [] {
    auto all = std::make_unique<FilesInMemory>();
    for (const BuiltinFile& file : builtin_files)
      all->put(std::filesystem::path(built_in_folder) / file.name, std::string(file.text));
    return all;
  }();
  return *files;
}

}  // namespace tackfree
