#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <regex>
#include <set>
#include <sstream>
#include <string_view>

#include "structure/structure_rules.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

namespace fs = std::filesystem;

Tree read_tree(const std::string& root) {
  Tree tree;
  auto add = [&](const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    tree[fs::relative(path, root).generic_string()] =
        std::string(std::istreambuf_iterator<char>(file), {});
  };
  for (const char* folder : {"src", "include", "tests", "docs"})
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(root) / folder))
      if (entry.is_regular_file()) add(entry.path());
  for (const auto& entry : fs::directory_iterator(fs::path(root) / "data"))
    if (entry.is_regular_file()) add(entry.path());
  add(fs::path(root) / ".ci/run");
  for (const auto& entry : fs::directory_iterator(root))
    if (entry.is_regular_file())
      add(entry.path());
    else
      tree[entry.path().filename().string() + "/"] = "";
  return tree;
}

namespace {

using Uses = std::map<std::string, std::set<std::string>>;

std::vector<std::string> words(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), {}};
}

/// The include table as CMakeLists.txt has it: folder, and the folders it may include.
Uses include_table(const std::string& cmake) {
  Uses table;
  const std::regex line(R"(\ntackfree_folder\((\w+)(?: USES ([\w ]+?))?(?: LIBRARIES [^)]*)?\))");
  for (std::sregex_iterator match(cmake.begin(), cmake.end(), line), end; match != end; ++match)
    for (const std::string& used : words((*match)[2].str() + " " + (*match)[1].str()))
      table[(*match)[1]].insert(used);
  return table;
}

/// `src/air/drying.cpp` and `include/tackfree/air/drying.hpp` are both of folder `air`.
std::string folder_of(const std::string& path) {
  static const std::regex place(R"((?:src|include/tackfree)/(\w+)/\w+\.[ch]pp)");
  std::smatch match;
  return std::regex_match(path, match, place) ? match[1].str() : std::string();
}

std::vector<std::string> includes(const std::string& text) {
  static const std::regex line(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
  std::vector<std::string> found;
  std::istringstream in(text);
  for (std::string row; std::getline(in, row);) {
    std::smatch match;
    if (row.find('#') != std::string::npos && std::regex_search(row, match, line))
      found.push_back(match[1]);
  }
  return found;
}

struct Fence {
  const char* include_prefix;
  std::set<std::string> folders;
};

/// Libraries, and the ways to the disk, which a browser does not have.
const std::array<Fence, 9> fences{{{"nlohmann/", {"syntax", "input", "export"}},
                                   {"tackfree/base/text_file.hpp", {"base", "cli"}},
                                   {"tackfree/base/files_on_disk.hpp", {"base", "cli"}},
                                   {"tackfree/base/appended_file.hpp", {"base", "cli"}},
                                   {"tackfree/base/descriptor.hpp", {"base"}},
                                   {"CLI/", {"cli"}},
                                   {"doctest/", {}},
                                   {"date/", {"base"}},
                                   {"libical/", {"input"}}}};

void check_includes(const Tree& tree, const Uses& table, std::vector<std::string>& faults) {
  for (const auto& [path, text] : tree) {
    const std::string folder = folder_of(path);
    if (folder.empty()) continue;
    if (!table.contains(folder))
      faults.push_back(path + " is in a folder that CMakeLists.txt does not list");
    for (const std::string& include : includes(text)) {
      for (const Fence& fence : fences)
        if (include.starts_with(fence.include_prefix) && !fence.folders.contains(folder))
          faults.push_back(path + " includes " + include + ", which is fenced off from " + folder);
      if (!include.starts_with("tackfree/")) continue;
      const std::string used = include.substr(9, include.find('/', 9) - 9);
      const auto allowed = table.find(folder);
      if (allowed != table.end() && !allowed->second.contains(used))
        faults.push_back(path + " includes " + include + ", but " + folder + " may not use " +
                         used);
    }
  }
}

/// The shortest way from `start` back to itself, as `a -> b -> a`; empty where there is none.
std::string ring_through(const std::string& start, const Uses& uses) {
  std::map<std::string, std::string> reached_from;
  std::vector<std::string> wave{start};
  while (!wave.empty() && !reached_from.contains(start)) {
    std::vector<std::string> next_wave;
    for (const std::string& from : wave) {
      const auto found = uses.find(from);
      if (found == uses.end()) continue;
      for (const std::string& next : found->second)
        if (next != from && reached_from.emplace(next, from).second) next_wave.push_back(next);
    }
    wave = std::move(next_wave);
  }
  if (!reached_from.contains(start)) return {};
  std::string ring = start;
  std::string at = start;
  do {
    at = reached_from.at(at);
    ring.insert(0, at + " -> ");
  } while (at != start);
  return ring;
}

void check_rings(const std::string& kind, const Uses& uses, std::vector<std::string>& faults) {
  for (const auto& [start, direct] : uses)
    if (const std::string ring = ring_through(start, uses); !ring.empty())
      faults.push_back(kind + " " + start + " reaches itself: " + ring);
}

/// What each component includes: a component is a header with its source, named `folder/name`.
Uses component_uses(const Tree& tree) {
  static const std::regex place(R"((?:src|include/tackfree)/(\w+/\w+)\.[ch]pp)");
  static const std::regex header(R"(tackfree/(\w+/\w+)\.hpp)");
  Uses uses;
  for (const auto& [path, text] : tree) {
    std::smatch component, used;
    if (!std::regex_match(path, component, place)) continue;
    for (const std::string& include : includes(text))
      if (std::regex_match(include, used, header)) uses[component[1]].insert(used[1]);
  }
  return uses;
}

/// The same three places for every component.
void check_places(const Tree& tree, std::vector<std::string>& faults) {
  static const std::regex source(R"(src/(\w+)/(\w+)\.cpp)");
  static const std::regex any_source(R"((?:src|include)/.*)");
  static const std::regex header(R"(include/tackfree/\w+/\w+\.hpp)");
  for (const auto& [path, text] : tree) {
    std::smatch match;
    if (std::regex_match(path, match, source)) {
      if (path == "src/cli/main.cpp") continue;
      const std::string part = match[1].str() + "/" + match[2].str();
      for (const std::string& place :
           {"include/tackfree/" + part + ".hpp", "tests/" + part + "_test.cpp"})
        if (!tree.contains(place)) faults.push_back(path + " has no " + place);
    } else if (std::regex_match(path, any_source) && !std::regex_match(path, header)) {
      if (!path.ends_with("/")) faults.push_back(path + " is not in a component's place");
    }
  }
}

void check_headers(const Tree& tree, std::vector<std::string>& faults) {
  static const std::regex sentence(R"(// [A-Z][^:]*: .+[.?])");
  for (const auto& [path, text] : tree)
    if (path.starts_with("include/tackfree/") &&
        !std::regex_match(text.substr(0, text.find('\n')), sentence))
      faults.push_back(path + " does not begin with one sentence");
}

bool is_word_character(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

/// Does one of `words` stand in the text, and not inside a longer word? (Regular expressions take
/// seconds over the whole tree.)
template <std::size_t N>
bool holds_any(const std::string& text, const std::array<std::string_view, N>& words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
      const std::size_t end = at + word.size();
      const bool goes_on =
          end < text.size() && is_word_character(word.back()) && is_word_character(text[end]);
      if (!goes_on && (at == 0 || !is_word_character(text[at - 1]))) return true;
    }
    return false;
  });
}

void check_files(const Tree& tree, std::vector<std::string>& faults) {
  constexpr std::array<std::string_view, 10> outside_world{
      "system_clock::now", "steady_clock", "getenv",    "std::rand", "random_device",
      "setlocale",         "std::locale",  "ifstream>", "ofstream>", "fstream>"};
  // In pieces, so that this file does not hold the marks itself.
  constexpr std::array<std::string_view, 4> unfinished{
      "TO"
      "DO",
      "FIX"
      "ME",
      "XX"
      "X",
      "not imple"
      "mented"};
  // Their last digit depends on the processor: base/elementary has them.
  constexpr std::array<std::string_view, 14> last_digits{
      "std::exp", "std::exp2", "std::expm1", "std::log", "std::log2", "std::log10", "std::log1p",
      "std::pow", "std::cbrt", "std::hypot", "std::sin", "std::cos",  "std::tanh",  "std::erf"};
  for (const auto& [path, text] : tree) {
    const bool code = path.ends_with(".cpp") || path.ends_with(".hpp");
    if (!code) continue;
    if (!folder_of(path).empty() && holds_any(text, last_digits))
      faults.push_back(path + " has a function whose last digit depends on the processor");
    if (std::count(text.begin(), text.end(), '\n') > 400)
      faults.push_back(path + " is over 400 lines");
    if (holds_any(text, unfinished)) faults.push_back(path + " holds an unfinished mark");
    const std::string folder = folder_of(path);
    const bool may = folder.empty() || folder == "cli" || path == "src/base/text_file.cpp";
    if (!may && holds_any(text, outside_world))
      faults.push_back(path + " reads the clock, environment, chance, locale or file system");
  }
}

void check_top_level(const Tree& tree, std::vector<std::string>& faults) {
  static const std::set<std::string> wanted{
      "CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md",
      "src/",           "include/",          "data/",     "tests/",
      "docs/"};
  for (const auto& [path, text] : tree) {
    const std::string top =
        path.find('/') == std::string::npos ? path : path.substr(0, path.find('/') + 1);
    if (!wanted.contains(top) && !top.starts_with(".") && top != "build/")
      faults.push_back("the top level holds " + top);
  }
}

/// What a class is, its data says: no code asks for one by name.
void check_class_names(const Tree& tree, std::vector<std::string>& faults) {
  static const std::regex key(R"re(\n  "(\w+)": \{)re");
  const std::string classes = tree.at("data/coatings.json");
  std::set<std::string> keys;
  for (std::sregex_iterator match(classes.begin(), classes.end(), key), end; match != end; ++match)
    keys.insert((*match)[1]);
  if (keys.empty()) faults.emplace_back("the classes of data/coatings.json could not be read");
  for (const auto& [path, text] : tree) {
    if (folder_of(path).empty()) continue;
    for (const std::string& name : keys)
      if (text.find('"' + name + '"') != std::string::npos)
        faults.push_back(path + " knows the class " + name + " by name");
  }
}

}  // namespace

std::vector<std::string> structure_faults(const Tree& tree) {
  std::vector<std::string> faults;
  const Uses table =
      include_table(tree.contains("CMakeLists.txt") ? tree.at("CMakeLists.txt") : "");
  if (table.size() < 15) faults.push_back("the include table of CMakeLists.txt could not be read");
  check_includes(tree, table, faults);
  check_rings("folder", table, faults);
  check_rings("component", component_uses(tree), faults);
  check_places(tree, faults);
  check_headers(tree, faults);
  check_files(tree, faults);
  check_top_level(tree, faults);
  check_class_names(tree, faults);
  return faults;
}

namespace {

TEST_CASE("the tree keeps the rules of its structure") {
  const auto faults = structure_faults(read_tree(TACKFREE_ROOT));
  for (const std::string& fault : faults) FAIL_CHECK(fault);
}

TEST_CASE("each planted breach of the structure is found") {
  struct Planted {
    const char* said;
    std::function<void(Tree&)> plant;
  };
  const Planted breaches[] = {
      {"but air may not use schedule",
       [](Tree& t) { t["src/air/drying.cpp"] += "#include \"tackfree/schedule/schedule.hpp\"\n"; }},
      {"fenced off from plan",
       [](Tree& t) { t["src/plan/notes.cpp"] += "#include <nlohmann/json.hpp>\n"; }},
      {"fenced off from input",
       [](Tree& t) {
         t["src/input/air_reader.cpp"] += "#include \"tackfree/base/text_file.hpp\"\n";
       }},
      {"fenced off from air",
       [](Tree& t) { t["include/tackfree/air/drying.hpp"] += "#include <date/tz.h>\n"; }},
      {"fenced off from text",
       [](Tree& t) { t["src/text/plan_text.cpp"] += "#include <CLI/CLI.hpp>\n"; }},
      {"component air/psychrometrics reaches itself: "
       "air/psychrometrics -> air/wood_moisture -> air/psychrometrics",
       [](Tree& t) {
         t["src/air/wood_moisture.cpp"] += "#include \"tackfree/air/psychrometrics.hpp\"\n";
         t["include/tackfree/air/psychrometrics.hpp"] +=
             "#include \"tackfree/air/wood_moisture.hpp\"\n";
       }},
      {"folder model reaches itself",
       [](Tree& t) {
         auto& cmake = t["CMakeLists.txt"];
         const std::string line = "tackfree_folder(model USES base)";
         cmake.replace(cmake.find(line), line.size(), "tackfree_folder(model USES base plan)");
       }},
      {"has no tests/air/rain_test.cpp", [](Tree& t) { t["src/air/rain.cpp"] = ""; }},
      {"has no include/tackfree/air/rain.hpp", [](Tree& t) { t["src/air/rain.cpp"] = ""; }},
      {"not in a component's place", [](Tree& t) { t["src/air/deep/rain.cpp"] = ""; }},
      {"does not begin with one sentence",
       [](Tree& t) { t["include/tackfree/air/drying.hpp"].insert(0, "\n"); }},
      {"is over 400 lines", [](Tree& t) { t["src/air/drying.cpp"] += std::string(401, '\n'); }},
      {"reads the clock",
       [](Tree& t) { t["src/air/drying.cpp"] += "std::chrono::system_clock::now()"; }},
      {"whose last digit depends",
       [](Tree& t) { t["src/air/drying.cpp"] += "double x = std::exp(1.0);"; }},
      {"unfinished mark",
       [](Tree& t) {
         t["src/air/drying.cpp"] +=
             "// TO"
             "DO";
       }},
      {"knows the class shellac by name",
       [](Tree& t) { t["src/air/drying.cpp"] += "if (key == \"shellac\")"; }},
      {"the top level holds scripts/", [](Tree& t) { t["scripts/"] = ""; }},
      {"could not be read", [](Tree& t) { t["CMakeLists.txt"].clear(); }},
  };
  const Tree tree = read_tree(TACKFREE_ROOT);
  for (const Planted& breach : breaches) {
    CAPTURE(breach.said);
    Tree spoilt = tree;
    breach.plant(spoilt);
    const auto faults = structure_faults(spoilt);
    CHECK(std::any_of(faults.begin(), faults.end(), [&](const std::string& fault) {
      return fault.find(breach.said) != std::string::npos;
    }));
  }
}

}  // namespace
}  // namespace tackfree::testing
