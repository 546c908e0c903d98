// Finish reader: a job's coatings, systems and batches, and whether their names fit together.
#pragma once

#include "tackfree/input/shop_rules_reader.hpp"
#include "tackfree/model/job.hpp"
#include "tackfree/syntax/json_cursor.hpp"

namespace tackfree {

/// The list `coatings`: the figures of a class, with those of the person's own tin over them. A
/// coating with a fault is a Problem but stays in the list, so that its name is known.
std::vector<Coating> read_coatings(JsonCursor& job, const FinishingData& data);

/// The list `systems`; its steps name coatings of the job and methods of the finishing data, and
/// what comes after the last coat one of its finishing touches.
std::vector<FinishSystem> read_systems(JsonCursor& job, const std::vector<Coating>& coatings,
                                       const FinishingData& data);

/// The list `batches`, each with one of `systems`, and with what holds for all of them.
std::vector<Batch> read_batches(JsonCursor& job, const std::vector<FinishSystem>& systems,
                                const SharedRules& shared);

/// Reports parts whose batch is unknown, and batches without parts.
void check_parts_have_batches(const Job& job, const std::string& parts_file, Problems& problems);

}  // namespace tackfree
