// JSON text: a document as it is written: indented, in UTF-8, with what nobody sees as escapes.
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

namespace tackfree {

/// The document by RFC 8259. Control, invisible and direction characters of its texts are written
/// as
/// `\uXXXX`: a reader gets them back as they were, a terminal or an editor does not obey them.
/// Bytes that are no UTF-8 become U+FFFD.
std::string json_text(const nlohmann::ordered_json& document);

}  // namespace tackfree
