#include "tackfree/cli/problem_list.hpp"

#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <map>
#include <ostream>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

constexpr std::size_t most_of_a_kind = 10;
constexpr std::size_t places_told = 3;

/// The key without the numbers of list entries: `days[].low_c`.
std::string key_of_kind(const std::string& key) {
  std::string kind;
  bool inside = false;
  for (const char c : key) {
    if (c == ']') inside = false;
    if (!inside) kind += c;
    if (c == '[') inside = true;
  }
  return kind;
}

/// Where it stands in its file.
std::string place(const Problem& problem) {
  return problem.line > 0 ? fmt::format("line {}", problem.line) : problem.key;
}

}  // namespace

void print_problems(Problems problems, std::ostream& to) {
  std::map<std::string, std::size_t> files;
  for (const Problem& problem : problems) files.try_emplace(problem.file, files.size());
  std::stable_sort(problems.begin(), problems.end(), [&](const Problem& a, const Problem& b) {
    return std::pair(files[a.file], a.line) < std::pair(files[b.file], b.line);
  });
  using Kind = std::tuple<std::string, std::string, std::string>;
  std::map<Kind, std::vector<const Problem*>> kinds;
  for (const Problem& problem : problems)
    kinds[{problem.file, key_of_kind(problem.key), problem.wanted}].push_back(&problem);
  for (const Problem& problem : problems) {
    const auto& alike = kinds[{problem.file, key_of_kind(problem.key), problem.wanted}];
    const bool many = alike.size() > most_of_a_kind;
    if (many && &problem != alike.front()) continue;
    std::string text = to_text(problem);
    if (many) {
      std::vector<std::string> places;
      for (std::size_t i = 0; i < places_told; ++i) places.push_back(place(*alike[i]));
      text += fmt::format("; {} mistakes of this kind, the first: {}", alike.size(),
                          fmt::join(places, ", "));
    }
    // Keys, names and values of a job may hold anything; a terminal must not obey it.
    to << clean(text) << '\n';
  }
}

void print_left_out(const Problems& problems, std::ostream& to) {
  if (problems.empty()) return;
  print_problems(problems, to);
  to << "What does not count in the log is left out; everything else goes on.\n";
}

}  // namespace tackfree
