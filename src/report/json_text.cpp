#include "tackfree/report/json_text.hpp"

#include "tackfree/report/display_text.hpp"

#include <nlohmann/json.hpp>

namespace tackfree {

std::string json_text(const nlohmann::ordered_json& document) {
  const std::string text =
      document.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  return unseen_escaped(text) + "\n";
}

}  // namespace tackfree
