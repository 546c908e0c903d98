#include "tackfree/input/builtin_data.hpp"

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

std::optional<std::string_view> builtin_data(std::string_view name) {
  for (const BuiltinFile& file : builtin_files)
    if (file.name == name) return file.text;
  return std::nullopt;
}

}  // namespace tackfree
