// Finishing data reader: what the trade knows, from the files built in or from a folder.
#pragma once

#include "tackfree/base/files.hpp"
#include "tackfree/base/problem.hpp"
#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/finishing_data.hpp"

#include <array>
#include <filesystem>
#include <optional>
#include <string_view>

namespace tackfree {

inline constexpr std::array<std::string_view, 14> finishing_data_files{
    "sources.json",  "drying_laws.json", "coatings.json", "methods.json",          "labour.json",
    "grain.json",    "how.json",         "advice.json",   "cautions.json",         "follows.json",
    "solvents.json", "air_changes.json", "shop.json",     "finishing_touches.json"};

/// The finishing data in a folder. All of `finishing_data_files` must be there. Nothing, with
/// Problems, when anything in them is wrong.
///
/// The how-to texts of an operation are looked up by its kind and its class; the first key of these
/// that is there wins: `coat_first/CLASS` (of a run's first coat on bare wood) or
/// `coat_last/CLASS`, `coat/CLASS`, `coat_first` or `coat_last`, `coat`. Other kinds have
/// `sand_between/CLASS`, `sand_between` and so on, with an underscore for each space of the kind.
std::optional<FinishingData> read_finishing_data(const Files& files,
                                                 const std::filesystem::path& folder,
                                                 Problems& problems);

/// Those that the program has with it.
FinishingData built_in_finishing_data();

}  // namespace tackfree
