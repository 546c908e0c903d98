// Job: everything a person says about one piece of work, with the figures it rests on.
#pragma once

#include "tackfree/base/time.hpp"
#include "tackfree/model/air.hpp"
#include "tackfree/model/coating.hpp"
#include "tackfree/model/finish_system.hpp"
#include "tackfree/model/finishing_data.hpp"
#include "tackfree/model/history.hpp"
#include "tackfree/model/last_plan.hpp"
#include "tackfree/model/part.hpp"
#include "tackfree/model/room.hpp"
#include "tackfree/model/shelf.hpp"
#include "tackfree/model/shop_rules.hpp"
#include "tackfree/model/work_calendar.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// How a batch gets its two sides coated.
enum class Sides {
  turn_over,  ///< back first, turned when dry to handle, then the show side
  on_points   ///< both sides in one go, the parts resting on points
};

/// Parts that are coated together and move together.
struct Batch {
  std::string name;
  std::string system;
  Sides sides = Sides::turn_over;
  bool show_side_is_bottom = false;
  bool hardware = true;  ///< hinges, handles and the like are fitted at the end
  int line = 0;
  /// An earlier batch, such as a test board, that is looked at before this one gets its first coat.
  std::string after;
  BatchRules rules = {};
};

/// Units of what is printed. `both` is metric, with US customary units behind it where a sentence
/// has room.
enum class UnitSystem { metric, us, both };

/// How times of the day are printed: `18:30` or `6:30 pm`.
enum class ClockForm { hours_24, hours_12 };

/// What a plan is good for first, and then for the other.
enum class Aim {
  ready,    ///< ready as soon as may be, then in few sessions
  sessions  ///< in the fewest sessions, then as soon as may be
};

/// How clock times are printed without a wish of the job's own.
constexpr ClockForm usual_clock(UnitSystem units) {
  return units == UnitSystem::us ? ClockForm::hours_12 : ClockForm::hours_24;
}

/// A file that was read for a job, and what it is to the job, as in "the parts list".
struct FileRead {
  std::string path, what;
};

struct Job {
  std::string file;                  ///< as given on the command line
  std::vector<FileRead> files_read;  ///< all of them: no output may replace one
  std::string id;                    ///< part of every calendar UID
  std::string name;
  std::string note;  ///< printed under the name: demos say here that they are invented
  UnitSystem units = UnitSystem::metric;
  std::optional<ClockForm> clock;     ///< without it, as the units go: US has 12 hours
  std::optional<int> week_begins_on;  ///< 0 Monday, 6 Sunday; without it, US has Sunday
  ClockForm clock_form() const { return clock.value_or(usual_clock(units)); }
  std::optional<Instant> now_at;
  Minutes grid{5};
  Duration horizon = days(56);

  std::vector<Part> parts;
  std::vector<Coating> coatings;
  std::vector<Thinner> thinners;  ///< those that the person says something of
  std::optional<Shelf> shelf;     ///< shared with other jobs; `on_shelf` above is this job's own
  std::vector<FinishSystem> systems;
  std::vector<Batch> batches;
  Room room;
  AirRecord air;
  WorkCalendar calendar;
  std::vector<Person> people;     ///< empty: one person, with the hours of `calendar`
  std::vector<DryingRoom> rooms;  ///< empty: one room with space enough
  FinishingData data;             ///< with the person's own labour rates in place
  Aim aim = Aim::ready;
  /// Wanted between a coat that goes on unsanded and the end of the window of the one below, as
  /// long as the plan is ready on the same day.
  Duration recoat_to_spare;
  bool faster_than_label = false;  ///< rule 1: the clock may not shorten the label's waits
  History history;
  std::optional<LastPlan> last_plan;  ///< to stay near to
};

/// The item called `name`, or nothing.
template <class Named>
const Named* find_named(const std::vector<Named>& items, const std::string& name) {
  for (const Named& item : items)
    if (item.name == name) return &item;
  return nullptr;
}

}  // namespace tackfree
