// Progress line: what a slow command is at, on a terminal, once it has taken a while.
#pragma once

#include <chrono>
#include <condition_variable>
#include <iosfwd>
#include <mutex>
#include <string>
#include <thread>

namespace tackfree {

/// One line on a terminal, written over once a second and taken away at the end. Nothing else may
/// write to the stream in between.
class ProgressLine {
 public:
  /// Nothing is written before `patience` is over, and nothing at all without a stream.
  explicit ProgressLine(std::ostream* terminal,
                        std::chrono::milliseconds patience = std::chrono::seconds(1));
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  ~ProgressLine();

  /// What is being done from now on, in plain ASCII.
  void at(std::string stage);

 private:
  void write_each_second(std::chrono::milliseconds patience);

  std::ostream* terminal_;
  std::chrono::steady_clock::time_point begin_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::string stage_;
  bool over_ = false;
  std::thread writer_;
};

}  // namespace tackfree
