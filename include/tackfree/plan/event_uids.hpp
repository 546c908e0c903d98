// Event UIDs: by what a calendar knows an event again, made of keys and the job's id.
#pragma once

#include <set>
#include <string>
#include <string_view>

namespace tackfree {

/// The UIDs of one plan's events. They follow from their keys alone, so that a later plan gives the
/// same event the same UID: RFC 5545, 3.8.4.7.
class EventUids {
 public:
  explicit EventUids(std::string_view job_id);

  /// `KEY.JOB@tackfree.invalid`, the key's parts as slugs joined by dots; one that is too long ends
  /// in a hash of all of it. Names that differ only in signs give the same key: later ones are
  /// numbered.
  std::string uid_of(std::string_view key);

 private:
  std::string job_;
  std::set<std::string> used_;
};

}  // namespace tackfree
