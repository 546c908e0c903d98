// History: what has happened already, as the person's log says it.
#pragma once

#include "tackfree/base/problem.hpp"
#include "tackfree/base/temperature.hpp"
#include "tackfree/base/time.hpp"
#include "tackfree/base/units.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// What one line of the log tells of. `rags`: all oily rags are dealt with. `withdrawn` takes an
/// earlier line back. `bought`: a whole shopping list. `away`, `free`: hours that the calendar does
/// not know of.
enum class LogKind {
  coat,
  done,
  skipped,
  test,
  fault,
  tin,
  waste,
  air,
  rags,
  note,
  withdrawn,
  bought,
  away,
  free
};
inline constexpr std::array<std::string_view, 14> log_kind_words{
    "coat", "done", "skipped", "test",      "fault",  "tin",  "waste",
    "air",  "rags", "note",    "withdrawn", "bought", "away", "free"};

/// How a coat was tried: touched, or pressed and turned under the thumb (ASTM D1640).
enum class DryTest { touch, thumb };
inline constexpr std::array<std::string_view, 2> dry_test_words{"touch", "thumb"};

/// What went wrong with a coat.
enum class Fault { runs, wrinkling, fisheyes, blush, tacky, sand_through };
inline constexpr std::array<std::string_view, 6> fault_words{"runs",  "wrinkling", "fisheyes",
                                                             "blush", "tacky",     "sand_through"};

enum class TinEvent { opened, bought };
inline constexpr std::array<std::string_view, 2> tin_event_words{"opened", "bought"};

/// Tins of one size, bought together.
struct BoughtTins {
  std::string product;  ///< a coating of the job, or what one is thinned or cleaned with
  std::string size;     ///< as it is called, `1 qt`
  Volume each;
  int count = 1;
  bool thinner = false;
};

/// One line of the log: a fact with its own number and time. Which members are there depends on the
/// kind; the reader sees to it.
struct LogEntry {
  int id = 0;
  LogKind kind = LogKind::note;
  Instant written_at;
  Instant at;                       ///< when it was so; of work, when it ended
  std::optional<Instant> began_at;  ///< of work
  std::string step;                 ///< key of an operation: coat, done, skipped, test, fault
  std::string coating;              ///< its name: tin, waste
  std::string thinner;              ///< its name, in place of a coating: tin
  std::vector<BoughtTins> bought;   ///< bought
  std::string person;               ///< away, free: whose hours; empty: everybody's
  std::optional<Interval> hours;    ///< away, free
  std::optional<Volume> amount;     ///< coat: taken, thinner and all; tin: in it; waste
  std::optional<Temperature> temperature;
  std::optional<Humidity> humidity;
  std::optional<DryTest> test;
  bool passed = false;  ///< test
  std::optional<Fault> fault;
  std::optional<TinEvent> tin;
  bool insisted = false;             ///< recorded although a rule spoke against it
  std::optional<int> corrects;       ///< the line that this one stands in place of, or takes back
  std::optional<int> corrects_line;  ///< withdrawn: the place in the file of one without a number
  std::string note;
  int line = 0;  ///< in the file
};

/// A line that does not count, because it cannot be read or does not fit the job.
struct LeftOutLine {
  int line = 0;  ///< in the file, from 1; lines are only ever added, so it stays
  int id = 0;    ///< its number; 0 where it has none that can be read and no other line has
  Problems why;
};

/// Facts in the order they were written. They never move.
struct History {
  std::string file;                   ///< where they stand
  std::vector<LogEntry> entries;      ///< those that count: neither corrected nor withdrawn since
  std::vector<LeftOutLine> left_out;  ///< in the order of lines
  int next_id = 1;                    ///< that no line has
  std::string torn;                   ///< what is left of a last line that was cut off in writing
};

}  // namespace tackfree
