// Output files: where a run writes, refused before planning where it reads or writes that file too.
#pragma once

#include "tackfree/base/file_identity.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/cli/options.hpp"
#include "tackfree/model/job.hpp"

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string_view>

namespace tackfree {

/// The name that stands for standard output where a file is to be written.
inline constexpr const char* standard_output = "-";

/// Is one of the files that were asked for printed? Then nothing else is.
bool prints_a_file(const Options& options);

/// Writes a file that was asked for, or prints what it would hold.
void write_or_print(const std::filesystem::path& path, std::string_view text, std::ostream& out,
                    Problems& problems);

/// A Problem for each output that is a file read for the job, the plan kept beside it, another
/// output of this run, or the file `printed_to` that standard output goes to. Files are told apart
/// by what they are, not by their names. Only --json may replace the file of --last-plan, which was
/// read whole before.
void check_outputs(const Options& options, const Job& job,
                   const std::optional<FileIdentity>& printed_to, Problems& problems);

}  // namespace tackfree
