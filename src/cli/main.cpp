#include "tackfree/cli/run.hpp"

#include <iostream>
#include <string>
#include <vector>

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  const int code = tackfree::run(arguments, std::cout, std::cerr);
  std::cout.flush();
  return std::cout ? code : tackfree::exit_bug;
}
