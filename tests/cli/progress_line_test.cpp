#include "tackfree/cli/progress_line.hpp"

#include <ostream>
#include <sstream>
#include <streambuf>

#include <doctest/doctest.h>

using namespace tackfree;

namespace {

/// A terminal that can be waited for.
class WaitedFor : public std::streambuf {
 public:
  std::string once_it_has(const std::string& piece) {
    std::unique_lock lock(mutex_);
    written_.wait(lock, [&] { return text_.find(piece) != std::string::npos; });
    return text_;
  }
  std::string text() {
    const std::lock_guard lock(mutex_);
    return text_;
  }

 private:
  std::streamsize xsputn(const char* text, std::streamsize size) override {
    const std::lock_guard lock(mutex_);
    text_.append(text, static_cast<std::size_t>(size));
    written_.notify_all();
    return size;
  }
  int overflow(int character) override {
    const char one = static_cast<char>(character);
    xsputn(&one, 1);
    return character;
  }

  std::mutex mutex_;
  std::condition_variable written_;
  std::string text_;
};

}  // namespace

TEST_CASE("a command that is quick says nothing of its progress") {
  std::ostringstream terminal;
  {
    ProgressLine line(&terminal, std::chrono::hours(1));
    line.at("dates");
  }
  CHECK(terminal.str().empty());
  ProgressLine nowhere(nullptr, std::chrono::milliseconds(0));
  nowhere.at("dates");
}

TEST_CASE("a slow command says what it is at, on a line that goes away at the end") {
  WaitedFor sink;
  std::ostream terminal(&sink);
  {
    ProgressLine line(&terminal, std::chrono::milliseconds(0));
    line.at("dating the steps");
    const std::string shown = sink.once_it_has("dating the steps ...");
    CHECK(shown.starts_with("\r\x1b[K"));
    CHECK(shown.find('\n') == std::string::npos);
  }
  CHECK(sink.text().ends_with("\r\x1b[K"));
}
