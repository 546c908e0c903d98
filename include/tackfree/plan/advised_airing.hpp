// Advised airing: how far the room is to be open and when, by the job's habit or a better one.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <optional>
#include <vector>

namespace tackfree {

/// By a habit, over all dated coats.
std::vector<AiringSpan> airing_of(const Plan& plan, const AiringHabit& habit);
/// By the job's own, empty where it gives none.
std::vector<AiringSpan> airing_of(const Plan& plan);

/// The habit that the plan proposes where it judged the job's own too little.
std::optional<AiringHabit> better_habit(const Plan& plan);

/// Was the job's own habit judged too little for a stretch of coating with one of these airings?
bool needs_more_air(const Plan& plan, const std::vector<AiringSpan>& spans);

/// At each hour the wider of both: a better habit may open wide for less long.
std::vector<AiringSpan> wider_of(const std::vector<AiringSpan>& a,
                                 const std::vector<AiringSpan>& b);

/// From opening the room until it is closed again, each with how far it is open: by the job's own
/// habit, and the wider of it and the better one where it is too little.
std::vector<std::vector<AiringSpan>> advised_airing(const Plan& plan);

}  // namespace tackfree
