#include "tackfree/cli/gone_options.hpp"

#include "tackfree/base/problem.hpp"

namespace tackfree {

std::optional<std::string> gone_option(const std::vector<std::string>& arguments) {
  for (const std::string& argument : arguments) {
    const std::string name = argument.substr(0, argument.find('='));
    if (name != "--work-calendar" && name != "--waits-calendar") continue;
    const Problem problem{
        .found = name,
        .wanted =
            "wanted --calendar FILE: it has one event for each session of work, with waits "
            "and airing in its notes; --calendar-of NAME makes it one person's"};
    return to_text(problem) + "\n";
  }
  return std::nullopt;
}

}  // namespace tackfree
