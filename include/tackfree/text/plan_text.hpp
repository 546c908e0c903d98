// Plan text: the plan as lines for a terminal: its first screen, one part of it, or all.
#pragma once

#include "tackfree/plan/plan.hpp"
#include "tackfree/text/text_page.hpp"

#include <array>
#include <string>
#include <string_view>

namespace tackfree {

/// What can be asked for by itself.
enum class PlanPart { warnings, progress, day_by_day, buy, areas, coats, air, vapour, sources };
inline constexpr std::array<std::string_view, 9> plan_part_words{
    "warnings", "progress", "days", "buy", "areas", "coats", "air", "vapour", "sources"};

// No line is wider than `columns` (40 to 200), no control character is left but the codes of a
// coloured page.

/// At most 50 lines of 80 columns: dangers, now, ready, what to buy, the next sessions, and how to
/// see the rest.
std::string first_screen_text(const Plan& plan, int columns = 80, Ink ink = Ink::plain);

/// One part. The days stand there without origins and numbers, which are for the whole plan.
std::string part_text(const Plan& plan, PlanPart part, int columns = 80, Ink ink = Ink::plain);

/// The whole plan: the first screen, then all its parts.
std::string text_report(const Plan& plan, int columns = 80, Ink ink = Ink::plain);

/// What to buy alone: the plan's own lines on litres, tins and all else to have at hand.
std::string text_shopping_list(const Plan& plan, int columns = 80, Ink ink = Ink::plain);

}  // namespace tackfree
