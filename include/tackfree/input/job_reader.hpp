// Job reader: the job file with the parts list and air rows it names, and every mistake in them.
#pragma once

#include "tackfree/base/files.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/model/job.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace tackfree {

/// The job in `file`. The files it names lie relative to its folder; the finishing data come from
/// `data_dir` or are the built-in ones. Nothing, with all Problems of all files, when anything is
/// wrong; lines of its log that cannot be read are left out of the history instead. Every key is
/// described in docs/file_formats.md.
std::optional<Job> read_job(const Files& files, const std::filesystem::path& file,
                            const std::optional<std::filesystem::path>& data_dir,
                            Problems& problems);

/// The same from the text of a job file, with the finishing data at hand. `file` is its place: the
/// files it names lie beside it.
std::optional<Job> parse_job(std::string_view text, const Files& files,
                             const std::filesystem::path& file, FinishingData data,
                             Problems& problems);

}  // namespace tackfree
