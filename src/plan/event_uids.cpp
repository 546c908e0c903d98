#include "tackfree/plan/event_uids.hpp"

#include "tackfree/base/fingerprint.hpp"
#include "tackfree/base/name.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::size_t longest_uid_part = 80;

std::string uid_part(std::string_view key) {
  std::string text;
  std::string_view rest = key;
  while (true) {
    const std::size_t slash = std::min(rest.find('/'), rest.size());
    text += slug(rest.substr(0, slash));
    if (slash == rest.size()) break;
    text += '.';
    rest.remove_prefix(slash + 1);
  }
  if (text.size() <= longest_uid_part) return text;
  return fmt::format("{}-{}", text.substr(0, longest_uid_part - 17), fingerprint(key));
}

}  // namespace

EventUids::EventUids(std::string_view job_id) : job_(uid_part(job_id)) {}

std::string EventUids::uid_of(std::string_view key) {
  std::string part = uid_part(key);
  for (int number = 2; !used_.insert(part).second; ++number)
    part = fmt::format("{}-again-{}", uid_part(key), number);
  return fmt::format("{}.{}@tackfree.invalid", part, job_);
}

}  // namespace tackfree
