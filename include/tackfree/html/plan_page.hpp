// HTML report: the whole plan as one file for a browser, a phone or paper, with nothing fetched.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// What paper gets: warnings, sessions with boxes and room for readings, and the shopping list, on
/// two or three sheets for most jobs; or all that the page holds.
enum class Printed { sheets, whole };

/// A page without scripts. It begins with what is dangerous, what to do now and when it is ready;
/// then the sessions and the shopping list; all else is behind its heading. Charts are images
/// inside the page, each with its words. Same plan, same bytes.
std::string html_report(const Plan& plan, Printed printed = Printed::sheets);

}  // namespace tackfree
