// Last plan: what an earlier plan had said, as far as a later one keeps to it.
#pragma once

#include "tackfree/base/time.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// A step as the last plan had it.
struct LastStep {
  std::string key, title;
  Interval time;
  bool done = false;  ///< was done then
};

/// A calendar event at its last revision.
struct EventState {
  std::string uid;
  Interval time;
  std::string summary;
  std::string category;
  std::string content;  ///< a fingerprint of all that it says
  int sequence = 0;     ///< RFC 5545, 3.8.7.4
  bool cancelled = false;
  std::string person;  ///< whose own calendar it is in; empty: everybody's
};

struct LastPlan {
  std::string job_id;
  Instant now;
  std::optional<Instant> ready_at;
  std::vector<LastStep> steps;
  std::vector<EventState> events;
};

}  // namespace tackfree
