// Stage listener: who is told what is being worked out, where that takes a while.
#pragma once

#include <functional>
#include <string>

namespace tackfree {

/// Is told what is being worked out, as it begins: "dating the steps".
using StageListener = std::function<void(const std::string& stage)>;

}  // namespace tackfree
