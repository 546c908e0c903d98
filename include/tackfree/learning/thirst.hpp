// Thirst: how much more or less than expected this job takes from the tins, by the log.
#pragma once

#include "tackfree/learning/lessons.hpp"
#include "tackfree/learning/posterior.hpp"
#include "tackfree/model/job.hpp"

#include <vector>

namespace tackfree {

/// What the coats of one coating have taught.
struct Learnt {
  double factor = 1.0;  ///< on the expected need, or on the drying that the label asks for
  int readings = 0;     ///< that count, those of earlier jobs with them
  int here = 0;         ///< of these the ones in this job's log
  std::vector<int>
      asked_of;  ///< lines of the log so far off that they do not count unless insisted
};

/// The logarithm of a ratio that the log has of one coat.
struct RatioReading {
  double value = 0;
  bool insisted = false;  ///< counts however far off it is
  int entry = 0;
};

/// Of the logarithms: from person to person, and from coat to coat of one person.
struct Spreads {
  double prior = 0, reading = 0;
};

/// What earlier jobs left of the prior, moved by the readings of this one. What is far off what was
/// known before is asked about.
Learnt learnt_from(const Taught& before, Spreads spreads,
                   const std::vector<RatioReading>& readings);

/// On the expected need of each of Job::coatings: 1 with no coats logged, and for a coating that no
/// system uses. `expected` of a coat is the need before anything was learnt. The logarithm of used
/// / expected is taken as normal with known reading spread; its mean has a normal prior of mean 0.
/// Prior width is the spread of the method (the widest, where a coating has several); reading
/// spread 0.30: how far one coat may lie from the person's own mean, and the tin's level read by
/// eye (assumed). So one coat moves the factor by a fifth of the way, ten by most of it.
std::vector<Learnt> learnt_thirst(const Job& job, const std::vector<CoatPutOn>& coats);

/// The factors alone.
std::vector<double> factors_of(const std::vector<Learnt>& learnt);

}  // namespace tackfree
