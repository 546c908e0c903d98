#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <set>
#include <string_view>

#include "structure/structure_rules.hpp"
#include <doctest/doctest.h>

// Only `words` makes sentences for people, rounds and knows units of display; the folders of
// outputs arrange what it says. Everything else returns data.

namespace tackfree::testing {

namespace {

/// Folders that may hold sentences: those of outputs, and the readers with their Problems.
const std::set<std::string> speaking{"words", "document", "cli", "syntax", "input", "base"};

const std::map<std::string, std::string> excepted{
    {"src/html/style.cpp", "a style sheet"},
    {"src/html/svg.cpp", "coordinates"},
    {"src/export/figures_json.cpp", "which tins are sold where the job's units are in use"},
    {"src/export/shelf_json.cpp", "amounts in a file, in the units that a person then reads there"},
    {"src/air/joined_air.cpp", "Problems, through its own add and report"},
    {"src/operations/operation.cpp", "names of steps, which are keys of how.json and of the plan"},
    {"src/plan/remedies.cpp", "whole degrees of the thermometer that the job's units go with"},
    {"src/shopping/shopping_list.cpp", "which tins are sold where the job's units are in use"},
    {"src/shopping/thinners.cpp", "the same, of thinner"},
    {"src/air/coating_limits.cpp", "word_for(Gate), quoted by a Problem"},
    {"src/logged/left_out.cpp", "the hint of a Problem, with the command that withdraws the line"},
    {"src/evening/log_entry.cpp", "words_for(TooSoon), quoted by a Problem"},
    {"src/logged/log_facts.cpp", "Problems, through its own functions"},
    {"src/schedule/plan_size.cpp", "Problems"}};

/// The code up to a semicolon, without comments, and the texts in it.
struct Statement {
  std::string code;
  std::vector<std::string> texts;
};

std::size_t end_of_quoted(const std::string& text, std::size_t quote) {
  std::size_t at = quote + 1;
  while (at < text.size() && text[at] != text[quote]) at += text[at] == '\\' ? 2U : 1U;
  return at;
}

std::vector<Statement> statements(const std::string& text) {
  std::vector<Statement> found(1);
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    const bool in_number = at > 0 && std::isalnum(static_cast<unsigned char>(text[at - 1])) != 0;
    if (c == '/' && text.compare(at, 2, "//") == 0) {
      at = std::min(text.find('\n', at), text.size());
    } else if (c == '"' || (c == '\'' && !in_number)) {
      const std::size_t end = end_of_quoted(text, at);
      if (c == '"') found.back().texts.push_back(text.substr(at + 1, end - at - 1));
      at = end;
    } else if (c == ';') {
      found.emplace_back();
    } else {
      found.back().code += c;
    }
  }
  return found;
}

/// Three words in a row, whatever is put in between them.
bool is_sentence(const std::string& text) {
  int in_a_row = 0;
  std::size_t letters = 0;
  bool word = true, in_braces = false, had_braces = false;
  for (const char c : text + " ") {
    if (c == '{') in_braces = had_braces = true;
    if (c == ' ') {
      if (letters > 0 && word) ++in_a_row;
      if (!word || (letters == 0 && !had_braces)) in_a_row = 0;
      if (in_a_row == 3) return true;
      letters = 0;
      word = true;
      had_braces = false;
    } else if (!in_braces) {
      if (std::isalpha(static_cast<unsigned char>(c)) != 0) ++letters;
      word = word && std::string_view("0123456789_/=<>").find(c) == std::string_view::npos;
    }
    if (c == '}') in_braces = false;
  }
  return false;
}

/// `{:.1f}`, `{:g}`.
bool is_rounding(const std::string& text) {
  for (std::size_t at = text.find("{:"); at != std::string::npos; at = text.find("{:", at + 1)) {
    const std::size_t end = text.find('}', at);
    if (end != std::string::npos && (text[end - 1] == 'f' || text[end - 1] == 'g')) return true;
  }
  return false;
}

/// A mistake of a reader's, a bug, or where a figure comes from.
bool is_no_output(const std::string& code) {
  constexpr std::array<std::string_view, 5> marks{"throw ",
                                                  ".wanted =", ".found =", ".hint =", "Origin::"};
  return std::ranges::any_of(
      marks, [&](std::string_view mark) { return code.find(mark) != std::string::npos; });
}

bool is_checked(const std::string& path) {
  const bool source = path.starts_with("src/");
  if (!source && !path.starts_with("include/tackfree/")) return false;
  const std::size_t folder = source ? 4 : 17;
  const std::size_t name = path.rfind('/') + 1;
  return !speaking.contains(path.substr(folder, name - 1 - folder)) &&
         !path.substr(name).starts_with("check");  // checkers name bugs
}

std::vector<std::string> faults_of(const std::string& path, const std::string& text) {
  std::vector<std::string> faults;
  for (const Statement& statement : statements(text)) {
    if (path.starts_with("src/") && statement.code.find("UnitSystem::") != std::string::npos)
      faults.push_back(path + " knows units of display");
    if (is_no_output(statement.code)) continue;
    for (const std::string& said : statement.texts) {
      if (is_sentence(said)) faults.push_back(path + " holds a sentence: " + said);
      if (is_rounding(said)) faults.push_back(path + " rounds: " + said);
    }
  }
  return faults;
}

std::vector<std::string> sentence_faults(const Tree& tree) {
  std::vector<std::string> faults;
  for (const auto& [path, text] : tree) {
    if (!is_checked(path)) continue;
    const auto found = faults_of(path, text);
    if (!excepted.contains(path))
      faults.insert(faults.end(), found.begin(), found.end());
    else if (found.empty())
      faults.push_back(path + " no longer needs to be excepted");
  }
  for (const auto& [path, reason] : excepted)
    if (!tree.contains(path)) faults.push_back(path + " is excepted and not there");
  return faults;
}

TEST_CASE("only words makes sentences, rounds and knows units of display") {
  for (const std::string& fault : sentence_faults(read_tree(TACKFREE_ROOT))) FAIL_CHECK(fault);
}

TEST_CASE("each planted sentence is found, and what is none is not") {
  const Tree tree = read_tree(TACKFREE_ROOT);
  const std::string path = "src/fumes/emission.cpp";
  const auto found = [&](const std::string& planted) {
    Tree spoilt = tree;
    spoilt[path] += planted;
    const auto faults = sentence_faults(spoilt);
    return std::ranges::any_of(faults,
                               [&](const std::string& fault) { return fault.starts_with(path); });
  };
  CHECK_FALSE(found(""));
  CHECK(found("return \"The vapour can burn.\";"));
  CHECK(found("text += fmt::format(\" with {} in it\", names);"));
  CHECK(found("throw Bug(\"a, b, c\"); text = \"one face only\";"));
  CHECK(found("fmt::format(\"{:.0f}\", amount);"));
  CHECK(found("fmt::format(\"{:g} h\", amount);"));
  CHECK(found("if (job.units == UnitSystem::us) amount *= 2;"));
  CHECK_FALSE(found("throw std::logic_error(\"a coat of a system that is not there\");"));
  CHECK_FALSE(found("Problem{.wanted = \"wanted a coating of the job\"};"));
  CHECK_FALSE(found("return {factor, Origin::published, \"a book on drying\"};"));
  CHECK_FALSE(found("// \"The vapour can burn.\"\n"));
  CHECK_FALSE(found("fmt::format(\"{}/{}/{}/{}\", batch, step, coat, side);"));
  CHECK_FALSE(found("const int most = 32'000'000; const char quote = '\"';"));
}

TEST_CASE("an exception that nothing needs is found") {
  Tree tree = read_tree(TACKFREE_ROOT);
  tree["src/air/joined_air.cpp"].clear();
  const auto faults = sentence_faults(tree);
  CHECK(std::ranges::count(faults, "src/air/joined_air.cpp no longer needs to be excepted") == 1);
}

}  // namespace
}  // namespace tackfree::testing
