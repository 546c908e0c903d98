// Shop rules reader: people, drying rooms, and the dates that are set for a batch or for all.
#pragma once

#include "tackfree/input/named_files.hpp"
#include "tackfree/model/finish_system.hpp"
#include "tackfree/model/shop_rules.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <string_view>
#include <vector>

namespace tackfree {

/// What holds for every batch that says nothing else.
struct SharedRules {
  Zone zone = Zone::utc();
  std::vector<DryingRoom> rooms;
  std::vector<Date> no_coating_on;
  std::optional<Instant> ready_by;
};

/// The job's `rooms`, `no_coating_on` and `ready_by`.
SharedRules read_shared_rules(JsonCursor& job, const Zone& zone);

/// The rules in a batch's object; `system` (or nothing, when its name is wrong) has the steps that
/// pins name.
BatchRules read_batch_rules(JsonCursor& batch, const SharedRules& shared,
                            const FinishSystem* system);

/// The list `people`: each has the hours of `shared` unless he or she has others, and what the
/// shop's calendar adds or takes from all. Calendar files are found through `files`.
std::vector<Person> read_people(JsonCursor& job, const WorkCalendar& shared, NamedFiles& files);

}  // namespace tackfree
