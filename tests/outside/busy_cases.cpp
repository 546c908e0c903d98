// The program's side of busy_dateutil.py: the busy stretches of each calendar file in a folder.

#include "tackfree/base/files_on_disk.hpp"
#include "tackfree/input/busy_calendar_reader.hpp"
#include "tackfree/schedule/busy_hours.hpp"

#include <algorithm>
#include <cstdio>

#include <fmt/format.h>

/// busy_cases FOLDER BEGIN END ZONE: a line for each file, its name and the stretches in UTC, or
/// what is wrong with it.
int main(int count, char** arguments) {
  using namespace tackfree;
  if (count != 5) return 2;
  const Interval span{parse_instant(arguments[2]).value(), parse_instant(arguments[3]).value()};
  const Zone home = Zone::named(arguments[4]).value();
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(arguments[1]))
    files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  for (const auto& file : files) {
    Problems problems;
    const auto text = FilesOnDisk().text(file, problems);
    const auto events = busy_events(text.value_or(""), file.string(), home, problems);
    fmt::print("{}", file.filename().string());
    for (const Problem& problem : problems) fmt::print(" ! {}", to_text(problem));
    for (const Interval& stretch : busy_hours(events, span))
      fmt::print(" {}/{}", iso_utc(stretch.begin), iso_utc(stretch.end));
    fmt::print("\n");
  }
}
