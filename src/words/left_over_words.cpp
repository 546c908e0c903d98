#include "tackfree/words/left_over_words.hpp"

#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tackfree {

namespace {

/// `April 2028`: the day would say more than anybody knows of a tin.
std::string month_text(Date on) {
  return fmt::format("{} {}", month_name(static_cast<unsigned>(on.month())),
                     static_cast<int>(on.year()));
}

/// ` In one tin: ...`, or ` In the tins: ...; 3 of 1.00 L, not opened`.
std::string tins_sentence(const std::vector<TinLeft>& tins, const Figures& figures) {
  if (tins.empty()) return {};
  std::vector<std::pair<std::string, int>> alike;
  for (const TinLeft& tin : tins) {
    std::string text = tin_left_text(tin, figures);
    if (!alike.empty() && alike.back().first == text)
      ++alike.back().second;
    else
      alike.emplace_back(std::move(text), 1);
  }
  std::vector<std::string> each;
  each.reserve(alike.size());
  for (const auto& [text, count] : alike)
    each.push_back(count == 1 ? text : fmt::format("{} of {}", count, text));
  return fmt::format(" {}: {}.", tins.size() == 1 ? "In one tin" : "In the tins",
                     fmt::join(each, "; "));
}

}  // namespace

std::string tin_left_text(const TinLeft& tin, const Figures& figures) {
  std::string text = figures.volume(tin.left).text();
  if (!tin.opened_on) return tin.full ? text + ", not opened" : text;
  text += ", opened in " + month_text(*tin.opened_on);
  if (tin.too_old) return text + ": past its time";
  return tin.keeps_until ? text + ", keeps until about " + month_text(*tin.keeps_until) : text;
}

std::string coating_left_text(const CoatingLeft& left, const Figures& figures) {
  const std::string least = left.nine_in_ten > Volume()
                                ? fmt::format("in nine jobs out of ten at least {}",
                                              figures.volume(left.nine_in_ten).text())
                                : "perhaps nothing";
  return left.expected > Volume()
             ? fmt::format("likely {}; {}.{}", figures.volume(left.expected).text(), least,
                           tins_sentence(left.tins, figures))
             : "likely nothing." + tins_sentence(left.tins, figures);
}

std::string thinner_left_text(const ThinnerLeft& left, const Figures& figures) {
  std::string text = left.expected > Volume() ? fmt::format("likely {}. It does not spoil.",
                                                            figures.volume(left.expected).text())
                                              : std::string("likely nothing.");
  if (left.used > Volume())
    text +=
        fmt::format(" Another {} is dirty from washing tools.", figures.volume(left.used).text());
  return text;
}

}  // namespace tackfree
