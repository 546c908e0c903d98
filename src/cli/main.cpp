#include "tackfree/cli/run.hpp"

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <string>
#include <string_view>
#include <vector>

#include <sys/ioctl.h>
#include <unistd.h>

namespace {

/// Colour is for terminals, and off where NO_COLOR is set and not empty: no-color.org.
tackfree::Terminal terminal_of_output() {
  constexpr int widest = 120;  // longer lines are hard to read
  tackfree::Terminal terminal;
  terminal.printed_to = tackfree::identity_of(STDOUT_FILENO);
  if (isatty(STDERR_FILENO) != 0) terminal.progress = &std::cerr;
  if (isatty(STDOUT_FILENO) == 0) return terminal;
  const auto set = [](const char* name) {
    const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe)
    return std::string_view(value == nullptr ? "" : value);
  };
  terminal.coloured = set("NO_COLOR").empty() && set("TERM") != "dumb";
  winsize size{};
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): the system's own call
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
    terminal.columns = std::clamp(static_cast<int>(size.ws_col), 40, widest);
  return terminal;
}

}  // namespace

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  return tackfree::run(arguments, std::cout, std::cerr, terminal_of_output());
}
