#include "tackfree/cli/help_page.hpp"

#include "tackfree/words/display_text.hpp"

#include <sstream>
#include <string>

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

class HelpPage : public CLI::Formatter {
 public:
  HelpPage() { column_width(name_columns); }

  std::string make_option_opts(const CLI::Option* option) const override {
    const std::string& taken = option->get_option_text();
    return (taken.empty() ? "" : " " + taken) +
           (option->get_required() && option->nonpositional() ? " (required)" : "");
  }
  std::string make_option_desc(const CLI::Option* option) const override {
    return in_lines(option->get_description());
  }
  std::string make_subcommand(const CLI::App* command) const override {
    std::ostringstream out;
    CLI::detail::format_help(out, command->get_display_name(true),
                             in_lines(command->get_description()), name_columns);
    return out.str();
  }

 private:
  static constexpr std::size_t name_columns = 28, all_columns = 80;

  static std::string in_lines(const std::string& text) {
    return fmt::format("{}", fmt::join(wrapped(all_columns - name_columns, text), "\n"));
  }
};

}  // namespace

std::shared_ptr<CLI::FormatterBase> help_page() { return std::make_shared<HelpPage>(); }

}  // namespace tackfree
