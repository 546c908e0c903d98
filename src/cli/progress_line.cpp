#include "tackfree/cli/progress_line.hpp"

#include <ostream>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Back to the first column, and the line emptied. Source: ECMA-48, EL (8.3.41).
constexpr const char* empty_line = "\r\x1b[K";

}  // namespace

ProgressLine::ProgressLine(std::ostream* terminal, std::chrono::milliseconds patience)
    : terminal_(terminal), begin_(std::chrono::steady_clock::now()) {
  if (terminal != nullptr) writer_ = std::thread([this, patience] { write_each_second(patience); });
}

ProgressLine::~ProgressLine() {
  {
    const std::lock_guard lock(mutex_);
    over_ = true;
  }
  changed_.notify_all();
  if (writer_.joinable()) writer_.join();
}

void ProgressLine::at(std::string stage) {
  const std::lock_guard lock(mutex_);
  stage_ = std::move(stage);
}

void ProgressLine::write_each_second(std::chrono::milliseconds patience) {
  using namespace std::chrono;
  std::unique_lock lock(mutex_);
  bool written = false;
  auto next = begin_ + patience;
  while (!changed_.wait_until(lock, next, [this] { return over_; })) {
    const auto passed = duration_cast<seconds>(steady_clock::now() - begin_);
    *terminal_ << empty_line << fmt::format("{} ... {} s", stage_, passed.count()) << std::flush;
    written = true;
    next += seconds(1);
  }
  if (written) *terminal_ << empty_line << std::flush;
}

}  // namespace tackfree
