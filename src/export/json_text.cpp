#include "tackfree/export/json_text.hpp"

#include "tackfree/words/display_text.hpp"

#include <nlohmann/json.hpp>

namespace tackfree {

std::string json_text(const nlohmann::ordered_json& document) {
  const std::string text =
      document.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  return unseen_escaped(text) + "\n";
}

}  // namespace tackfree
