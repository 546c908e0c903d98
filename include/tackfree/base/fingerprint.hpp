// Fingerprint: sixteen digits that tell one text from another, by FNV-1a.
#pragma once

#include <string>
#include <string_view>

namespace tackfree {

/// FNV-1a in 64 bits, as hexadecimal digits: equal for equal texts. It guards against nobody who
/// means to deceive. Source: RFC 9923.
std::string fingerprint(std::string_view text);

}  // namespace tackfree
