#include <algorithm>
#include <cctype>
#include <regex>
#include <set>
#include <utility>

#include "structure/structure_rules.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

namespace {

std::vector<std::string> matches(const std::string& text, const char* pattern) {
  const std::regex wanted(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator match(text.begin(), text.end(), wanted), end; match != end; ++match)
    found.push_back(match->str(match->size() - 1));
  return found;
}

/// Is it a file, a folder with files, or a component by its folder and name?
bool is_place(const Tree& tree, std::string path) {
  if (tree.contains(path) || tree.contains("include/tackfree/" + path + ".hpp")) return true;
  if (!path.ends_with("/")) path += "/";
  const auto begins_so = [&](const std::string& start) {
    const auto next = tree.lower_bound(start);
    return next != tree.end() && next->first.starts_with(start);
  };
  return begins_so(path) || begins_so("src/" + path) || begins_so("include/tackfree/" + path);
}

/// Every word of the code, the build and its presets.
std::set<std::string> names_in_use(const Tree& tree) {
  std::set<std::string> names;
  for (const auto& [path, text] : tree) {
    const bool code = path.ends_with("pp") || path.ends_with(".txt") || path.ends_with(".json");
    if ((!code && path != ".ci/run") || path.starts_with("tests/structure/")) continue;
    std::string word;
    for (const char c : text + " ")
      if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_')
        word += c;
      else if (!word.empty())
        names.insert(std::exchange(word, {}));
  }
  return names;
}

/// Is it a name in use, or how some begin or end?
bool is_name(const std::set<std::string>& names, const std::string& word) {
  if (names.contains(word)) return true;
  return std::ranges::any_of(names, [&](const std::string& name) {
    return (word.starts_with("_") && name.ends_with(word)) ||
           (word.ends_with("_") && name.starts_with(word));
  });
}

/// What the page puts in backticks and the tree does not have. In a command each path below a
/// folder of ours, each preset and each target is looked up; words in capitals stand for something
/// else.
std::vector<std::string> not_found(const Tree& tree, const std::set<std::string>& names) {
  std::vector<std::string> missing;
  for (const std::string& said : matches(tree.at("DEVELOPERS.md"), "`([^`\n]+)`")) {
    const bool command = said.find(' ') != std::string::npos && !said.starts_with("[");
    if (said.find("/D/") != std::string::npos || said.find('*') != std::string::npos) continue;
    std::vector<std::string> wanted;
    if (command) {
      wanted = matches(said, "--preset (\\w+)");
      for (std::string target : matches(said, "--target (\\w+)_tests")) wanted.push_back(target);
    } else if (said.find('/') == std::string::npos && said.find('.') != 0) {
      wanted = matches(said, "[A-Za-z_]\\w{2,}");
    }
    const bool all_known = std::ranges::all_of(wanted, [&](const std::string& name) {
      return is_name(names, name) || is_place(tree, name);
    });
    bool all_there = true;
    for (const std::string& path :
         matches(said, "(?:^|[ =])((?:src|include|tests|data|docs|\\.ci)/[\\w./]+)"))
      all_there = all_there && is_place(tree, path);
    if (!command && said.find('/') != std::string::npos) all_there = is_place(tree, said);
    if (!all_known || !all_there) missing.push_back(said);
  }
  return missing;
}

TEST_CASE("everything that the contributor's page names exists") {
  const Tree tree = read_tree(TACKFREE_ROOT);
  for (const std::string& name : not_found(tree, names_in_use(tree)))
    FAIL_CHECK("DEVELOPERS.md names `" << name << "`");
  CHECK(std::count(tree.at("DEVELOPERS.md").begin(), tree.at("DEVELOPERS.md").end(), '\n') <= 200);
}

TEST_CASE("a path, a component, a name, a preset and a target that are gone are found") {
  const Tree tree = read_tree(TACKFREE_ROOT);
  const std::set<std::string> names = names_in_use(tree);
  for (const char* gone :
       {"src/air/rain.cpp", "air/rain", "rain_dances", "cmake --preset rain",
        "cmake --build --preset dev --target rain_tests", "tests/rain/run.py 20"}) {
    Tree spoilt = tree;
    spoilt["DEVELOPERS.md"] = "see `" + std::string(gone) + "`";
    CHECK_MESSAGE(not_found(spoilt, names).size() == 1, gone);
  }
}

}  // namespace
}  // namespace tackfree::testing
