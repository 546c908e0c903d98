// HTML report: the whole plan as one file for a browser, a phone or paper, with nothing fetched.
#pragma once

#include "tackfree/plan/plan.hpp"

#include <string>

namespace tackfree {

/// A page without scripts. It begins with what to do next and when it is ready. Charts are images
/// inside the page, each with its words. Same plan, same bytes.
std::string html_report(const Plan& plan);

}  // namespace tackfree
