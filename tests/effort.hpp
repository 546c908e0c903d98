// Effort: how many random cases a test tries. Sanitizers slow each of them down many times and see
// the same code in all, so they get a fifth, unless TACKFREE_ALL_CASES is defined; the full number
// runs in the ordinary build.
#pragma once

namespace tackfree::testing {

#if defined(TACKFREE_ALL_CASES)
inline constexpr bool sanitized = false;
#elif defined(__SANITIZE_ADDRESS__)
inline constexpr bool sanitized = true;
#elif defined(__has_feature)
inline constexpr bool sanitized = __has_feature(address_sanitizer);
#else
inline constexpr bool sanitized = false;
#endif

/// `full` random cases, or a fifth of them under sanitizers; for what they must reach as well.
template <class Number>
constexpr Number cases(Number full) {
  return sanitized ? full / 5 : full;
}

}  // namespace tackfree::testing
