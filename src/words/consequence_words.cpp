#include "tackfree/words/consequence_words.hpp"

#include <cctype>

#include <fmt/format.h>

namespace tackfree {

namespace {

struct Told {
  const WorkAtHand& standing;

  std::string operator()(TooSoon too_soon) const {
    std::string text(words_for(too_soon));
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    return text + ".";
  }

  std::string operator()(const DustInCoat& dust) const {
    const Operation& coat = standing.list.operations.at(dust.coat);
    return fmt::format(
        "Coat {} ({}) of {} was still wet beside it: look for dust in it before the next coat.",
        coat.coat, word_for(coat.side), standing.job.batches.at(coat.batch).name);
  }

  std::string operator()(const FarFromExpected& amount) const {
    return fmt::format(
        "That is {:.2g} times what was expected of this coat. It counts for your rate only with "
        "--insist.",
        amount.times);
  }

  std::string operator()(const RepairAdvice& advice) const { return advice_words(advice.line); }

  std::string operator()(const CoatedInUnfitAir& air) const {
    return fmt::format(
        "The air was {}: look whether it dries clear and even, and try it longer before the next "
        "coat.",
        word_for(air.gate));
  }
};

}  // namespace

std::string advice_words(const std::string& line) {
  return line.empty() ? "No advice on this fault is known here for such a coating. Ask its maker "
                        "before the next coat."
                      : line;
}

std::string consequence_words(const Consequence& consequence, const WorkAtHand& standing) {
  return std::visit(Told{standing}, consequence);
}

}  // namespace tackfree
