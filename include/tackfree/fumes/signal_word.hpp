// Signal word: how grave the vapour of a plan is, in the four words of ANSI Z535.4.
#pragma once

#include "tackfree/fumes/room_judgement.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

namespace tackfree {

/// 0 for DANGER, then WARNING, CAUTION, NOTICE; 4 for anything else.
std::ptrdiff_t gravity(std::string_view word);

/// The word that the judgement calls for; nothing when half of no limit is reached. Source: the
/// choice is this project's, by the meaning of the words in ANSI Z535.4.
std::optional<std::string_view> signal_word(const RoomJudgement& room);

}  // namespace tackfree
