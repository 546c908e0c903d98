// Help page: what --help prints, in 80 columns.
#pragma once

#include <memory>

namespace CLI {
class FormatterBase;
}  // namespace CLI

namespace tackfree {

/// What an option takes stands in the words it was given for that, without the library's names of
/// types.
std::shared_ptr<CLI::FormatterBase> help_page();

}  // namespace tackfree
