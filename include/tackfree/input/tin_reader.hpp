// Tin reader: tins to buy and on the shelf, of coatings and of what thins and cleans.
#pragma once

#include "tackfree/model/coating.hpp"
#include "tackfree/model/tin.hpp"
#include "tackfree/syntax/json_cursor.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace tackfree {

/// `tins` of `object`. A tin's name is its volume unless the volume stands beside it.
std::vector<TinSize> read_tins(JsonCursor& object);

/// `on_shelf` of a coating: each a volume, or an object with the volume and the day of opening.
std::vector<ShelfTin> read_shelf(JsonCursor& object);

/// The volume under a key that must be there.
std::optional<Volume> volume_under(JsonCursor& object, std::string_view key);

/// `opened_on`, where it is there and a date.
std::optional<Date> opened_on_in(JsonCursor& object);

/// `thinners` of the job; each must thin or clean one of `coatings`, and stand there once.
std::vector<Thinner> read_thinners(JsonCursor& job, const std::vector<Coating>& coatings);

}  // namespace tackfree
