#include "tackfree/operations/how_to.hpp"

#include <algorithm>

namespace tackfree {

std::vector<std::string> how_to(const TradeTexts& texts, const Operation& operation,
                                const Coating& coating) {
  std::string kind(word_for(operation.kind));
  std::replace(kind.begin(), kind.end(), ' ', '_');
  if (operation.scuffed) kind = "scuff";
  std::string place;
  if (operation.kind == OperationKind::coat) {
    if (operation.coat == operation.coats) place = kind + "_last";
    if (operation.coat == 1 && operation.step == 0) place = kind + "_first";
  }
  std::vector<std::string> keys;
  for (const std::string* each : {&coating.class_key, &coating.words.how_as}) {
    if (each->empty()) continue;
    if (!place.empty()) keys.push_back(place + "/" + *each);
    keys.push_back(kind + "/" + *each);
  }
  if (!place.empty()) keys.push_back(place);
  keys.push_back(kind);
  for (const std::string& key : keys)
    for (const Advice& advice : texts.how)
      if (advice.key == key) return advice.lines;
  return {};
}

}  // namespace tackfree
