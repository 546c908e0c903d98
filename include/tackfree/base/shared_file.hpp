// Shared file: a whole file that several programs rewrite, one after another.
#pragma once

#include "tackfree/base/locked_file.hpp"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace tackfree {

/// Gives the new text of a file for its old one, which is empty where there is no such file yet;
/// nothing to give up.
using Rewriting = std::function<std::optional<std::string>(const std::string&)>;

/// Rewrites the file while no other program does so here: each sees what the one before it wrote.
/// `path` holds the old or the new text and never a part; a text that stays the same is not
/// written. True when it holds the new text; else false, with a Problem unless `rewriting` gave up.
bool rewrite_shared(const std::filesystem::path& path, const Rewriting& rewriting,
                    Problems& problems, const LockPatience& patience = {});

}  // namespace tackfree
