// Shelf: any text as a shelf, and what a job finds on it.

#include "tackfree/input/finishing_data_reader.hpp"
#include "tackfree/input/shelf_reader.hpp"

#include "fuzz/fuzzed.hpp"

void tackfree::fuzz::read(std::string_view text) {
  static const FinishingData trade = built_in_finishing_data();
  Problems problems;
  const auto shelf = parse_shelf(text, "shelf.json", trade, problems);
  must(shelf.has_value() == problems.empty(), "there is a shelf unless there are problems");
  must_help(problems, "shelf.json");
  if (!shelf) return;
  for (const SharedTin& tin : shelf->tins) {
    must(!tin.product.empty(), "a tin is of something");
    must(tin.volume.volume > Volume(), "a tin has something in it");
    must(taken_by_others(tin, "a") >= Volume(), "nothing is put back by taking");
  }
  for (const ShelfTin& tin : tins_for(*shelf, "a", "satin", "shellac"))
    must(tin.volume > Volume(), "an empty tin is none");
}
