// Shelf: the tins that several jobs share, with what each job took of them.
#pragma once

#include "tackfree/base/name.hpp"
#include "tackfree/model/coating.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tackfree {

/// An amount and the words for it in the file, which stay as they were written; empty for a new
/// one.
struct WrittenVolume {
  Volume volume;
  std::string text;
};

/// What is left of a two-part coating's two tins, and how they are mixed, as the file says it.
struct TwoParts {
  std::string part_a, part_b, a_to_b;
};

/// What one job took of a shared tin.
struct TinTaking {
  std::string job;  ///< its id
  WrittenVolume amount;
  std::optional<Date> opened_on;  ///< where this job opened it
};

/// One tin. All but `takings` is as the person, or the job that left it, put it there.
struct SharedTin {
  std::string product;    ///< a coating's name, or what coats are thinned or tools cleaned with
  std::string class_key;  ///< empty for a thinner
  WrittenVolume volume;   ///< before anything was taken; of two parts what they mix to
  std::optional<TwoParts> two_parts;
  std::optional<Date> opened_on;
  std::string left_by;  ///< id of the job that it is from; empty: a person put it there
  int number = 0;       ///< among the tins of this product that this job left, from 1
  std::string note;
  std::vector<TinTaking> takings;
  int line = 0;
};

struct Shelf {
  std::string file;
  std::string schema = {};  ///< where an editor finds it; stays as it is
  std::vector<SharedTin> tins;
};

/// What jobs other than `job` took of it.
inline Volume taken_by_others(const SharedTin& tin, const std::string& job) {
  Volume sum;
  for (const TinTaking& taking : tin.takings)
    if (taking.job != job) sum += taking.amount.volume;
  return sum;
}

/// The day on which the first job other than `job` opened it.
inline std::optional<Date> opened_by_others(const SharedTin& tin, const std::string& job) {
  std::optional<Date> first;
  for (const TinTaking& taking : tin.takings)
    if (taking.job != job && taking.opened_on && (!first || *taking.opened_on < *first))
      first = taking.opened_on;
  return first;
}

/// The day of opening as `job` finds it.
inline std::optional<Date> opened_before(const SharedTin& tin, const std::string& job) {
  return tin.opened_on ? tin.opened_on : opened_by_others(tin, job);
}

/// Is it a tin of that coating, or, without a class, of that thinner? Small differences of writing
/// do not count.
inline bool is_of(const SharedTin& tin, const std::string& product, const std::string& class_key) {
  return tin.class_key == class_key && slug(tin.product) == slug(product);
}

/// The tins that `job` finds there of a product, but those that it left itself.
inline std::vector<ShelfTin> tins_for(const Shelf& shelf, const std::string& job,
                                      const std::string& product, const std::string& class_key) {
  std::vector<ShelfTin> tins;
  for (std::size_t i = 0; i < shelf.tins.size(); ++i) {
    const SharedTin& tin = shelf.tins[i];
    if (tin.left_by == job || !is_of(tin, product, class_key)) continue;
    const Volume left = tin.volume.volume - taken_by_others(tin, job);
    if (left > Volume()) tins.push_back({left, opened_before(tin, job), i});
  }
  return tins;
}

}  // namespace tackfree
