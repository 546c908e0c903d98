// Check shop rules: people, space and set dates tested again from job and dated steps.
#pragma once

#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"

#include <string>
#include <vector>

namespace tackfree {

/// Does anybody work at this minute, by the local calendars and the people's own?
class WorkingPeople {
 public:
  WorkingPeople(const Job& job, Interval span);
  bool anybody(Instant minute) const;
  bool is_there(std::size_t person, Instant minute) const;
  /// Are the same people, and at least one, there all the time?
  bool same_all_through(Interval stretch) const;

 private:
  const Job& job_;
  std::vector<std::vector<Interval>> busy_;  ///< by person
};

/// The rules on people, space, pins and dates that the schedule breaks, one sentence each.
std::vector<std::string> broken_shop_rules(const Job& job, const OperationList& list,
                                           const Schedule& schedule);

/// Are these two batches in rooms of their own?
bool in_other_rooms(const Job& job, std::size_t one, std::size_t other);

}  // namespace tackfree
