// Respirator words: which respirator to wear while coating, and when.
#pragma once

#include "tackfree/fumes/respirator.hpp"

#include <string>
#include <string_view>

namespace tackfree {

/// `supplied-air respirator`, `organic-vapour respirator with a particle filter`, ...
std::string_view name_of(const Respirator& respirator);

/// When it is worn: `whenever you spray`, `only where you cannot air enough`.
std::string_view when_worn(const Respirator& respirator);

/// One or two sentences that begin with a blank: `Wear a ... whenever you spray.`, and why a
/// cartridge does not do.
std::string respirator_sentences(const Respirator& respirator, const Job& job);

/// What a coat that puts mist of isocyanates into the air is bound to; empty for another.
std::string_view spraying_condition(const Coating& coating, const Method& method);

}  // namespace tackfree
