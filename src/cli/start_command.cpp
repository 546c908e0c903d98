#include "tackfree/cli/start_command.hpp"

#include "tackfree/base/text_file.hpp"
#include "tackfree/cli/starter_job.hpp"
#include "tackfree/words/display_text.hpp"

#include <filesystem>
#include <system_error>

#include <fmt/format.h>

namespace tackfree {

ExitCode start_command(const Options& options, const Streams& to, Problems& problems) {
  std::error_code fault;
  if (std::filesystem::exists(options.folder, fault) &&
      !std::filesystem::is_empty(options.folder, fault)) {
    problems.push_back({.file = options.folder.string(),
                        .wanted = "is not empty; name a new folder: nothing is overwritten"});
    return exit_wrong_input;
  }
  std::filesystem::create_directories(options.folder, fault);
  for (const StarterFile& file : starter_job())
    write_text_file(options.folder / file.name, file.text, problems);
  if (!problems.empty()) return exit_wrong_input;
  for (const StarterFile& file : starter_job())
    to.print(fmt::format("wrote {}\n", clean((options.folder / file.name).string())));
  return exit_done;
}

}  // namespace tackfree
