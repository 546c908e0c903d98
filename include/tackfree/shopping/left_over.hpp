// Left over: what is likely still in each tin when the job is done, and until when it keeps.
#pragma once

#include "tackfree/model/job.hpp"
#include "tackfree/operations/operation.hpp"
#include "tackfree/schedule/schedule.hpp"
#include "tackfree/shopping/shopping_list.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// One tin as it stands after the last coat.
struct TinLeft {
  Volume left;                    ///< at the expected use
  std::optional<Date> opened_on;  ///< nothing: not opened, or not known when
  std::optional<Date> keeps_until;
  bool too_old = false;  ///< past its time already when the job first needs it: it was not used
  bool full = false;     ///< bought and not opened
};

/// One coating.
struct CoatingLeft {
  std::size_t coating = 0;  ///< index into Job::coatings
  std::vector<TinLeft> tins;
  Volume expected;     ///< in the tins that count, at the expected use
  Volume nine_in_ten;  ///< no less than this is left in nine jobs of ten
};

/// One liquid that thins or cleans; it does not spoil.
struct ThinnerLeft {
  std::string liquid;
  Volume expected;  ///< clean
  Volume used;      ///< dirty from cleaning tools
};

/// How to get rid of something, and the coatings that it concerns.
struct WasteToShed {
  Disposal text;
  std::vector<std::size_t> coatings;  ///< indices into Job::coatings
};

struct LeftOver {
  std::vector<CoatingLeft> coatings;
  std::vector<ThinnerLeft> thinners;
  std::vector<WasteToShed> waste;  ///< each once, in the order of the coatings
};

/// The last day on which a tin of it counts.
std::optional<Date> keeps_until(const Coating& coating, const std::optional<Date>& opened_on);

/// The tins at hand and those to buy, less what the steps take on their days: out of opened tins
/// first, the oldest before the others, then out of the shelf's, then out of those bought, the
/// largest first (assumed). A coat without a time is taken last, on no day. `on_shelf` is by
/// coating.
LeftOver left_over(const Job& job, const std::vector<std::vector<ShelfTin>>& on_shelf,
                   const OperationList& list, const Schedule& schedule,
                   const ShoppingList& shopping);

}  // namespace tackfree
