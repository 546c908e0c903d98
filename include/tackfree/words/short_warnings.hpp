// Short warnings: every danger and warning of a plan in a line each, the gravest first.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace tackfree {

/// The danger and what to do about it. The long texts are those of caution_words.
struct ShortWarning {
  std::string key;        ///< of the caution; `explosion` and `heater` have none
  std::string_view word;  ///< DANGER or WARNING
  std::string text;       ///< may hold words as the person wrote them
};

/// The key of the vapour that reaches a quarter of what explodes, and of a heater that may light
/// it.
inline constexpr std::string_view explosion_key = "explosion", heater_key = "heater";

/// Of every caution that says DANGER or WARNING, of vapour that may explode and of a heater of the
/// job that may light it. `explosion` stands for the caution on vapour, which says the same.
std::vector<ShortWarning> short_warnings(const Plan& plan);

/// What must be off, by name, before the tin is opened, and until when; what would light spray mist
/// is out of the room.
std::string off_words(const Plan& plan, const FlammableTime& time);

}  // namespace tackfree
