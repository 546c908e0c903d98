#include "tackfree/input/last_plan_reader.hpp"

#include "tackfree/base/text_file.hpp"
#include "tackfree/input/json_document.hpp"

#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Takes members out of a plan; whatever is missing is one Problem each.
class PlanReading {
 public:
  PlanReading(std::string file, Problems& problems) : file_(std::move(file)), problems_(problems) {}

  std::string text(const JsonNode& object, std::string_view key) {
    const JsonNode* node = object.member(key);
    if (node != nullptr && node->kind == JsonNode::Kind::string) return node->text;
    report(node != nullptr ? *node : object, key, "wanted a text, as tackfree writes it");
    return {};
  }

  Instant instant(const JsonNode& object, std::string_view key) {
    const auto at = parse_instant(text(object, key));
    if (!at) report(object, key, "wanted a time in UTC, as tackfree writes it");
    return at.value_or(Instant());
  }

  Interval interval(const JsonNode& object) {
    return {instant(object, "begin_at"), instant(object, "end_at")};
  }

  const std::vector<JsonNode>& list(const JsonNode& object, std::string_view key) {
    static const std::vector<JsonNode> none;
    const JsonNode* node = object.member(key);
    if (node != nullptr && node->kind == JsonNode::Kind::array) return node->items;
    report(node != nullptr ? *node : object, key, "wanted a list, as tackfree writes it");
    return none;
  }

  int whole(const JsonNode& object, std::string_view key) {
    const JsonNode* node = object.member(key);
    if (node != nullptr && node->kind == JsonNode::Kind::number && node->number >= 0 &&
        node->number < 1e9)
      return static_cast<int>(node->number);
    report(node != nullptr ? *node : object, key, "wanted a number, as tackfree writes it");
    return 0;
  }

  static bool flag(const JsonNode& object, std::string_view key) {
    const JsonNode* node = object.member(key);
    return node != nullptr && node->kind == JsonNode::Kind::boolean && node->boolean;
  }

  void report(const JsonNode& at, std::string_view key, std::string wanted) {
    problems_.push_back({.file = file_,
                         .line = at.line,
                         .key = std::string(key),
                         .found = at.kind == JsonNode::Kind::object ? "" : shown_value(at),
                         .wanted = std::move(wanted)});
  }

 private:
  std::string file_;
  Problems& problems_;
};

LastPlan plan_in(const JsonNode& tree, PlanReading& reading) {
  LastPlan plan;
  if (const JsonNode* job = tree.member("job")) plan.job_id = reading.text(*job, "id");
  plan.now = reading.instant(tree, "now_at");
  if (const JsonNode* ready = tree.member("ready_at");
      ready != nullptr && ready->kind == JsonNode::Kind::string)
    plan.ready_at = reading.instant(tree, "ready_at");
  for (const JsonNode& step : reading.list(tree, "steps"))
    plan.steps.push_back({reading.text(step, "key"), reading.text(step, "title"),
                          reading.interval(step), PlanReading::flag(step, "done")});
  for (const JsonNode& event : reading.list(tree, "calendar"))
    plan.events.push_back({reading.text(event, "uid"), reading.interval(event),
                           reading.text(event, "summary"), reading.text(event, "category"),
                           reading.text(event, "content"), reading.whole(event, "sequence"),
                           PlanReading::flag(event, "cancelled")});
  return plan;
}

}  // namespace

std::optional<LastPlan> read_last_plan(const std::filesystem::path& file, const std::string& job_id,
                                       Problems& problems) {
  const auto text = read_text_file(file, problems);
  return text ? parse_last_plan(*text, file.string(), job_id, problems) : std::nullopt;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the readers' order, text and its name first
std::optional<LastPlan> parse_last_plan(std::string_view text, const std::string& file,
                                        const std::string& job_id, Problems& problems) {
  const std::size_t before = problems.size();
  const auto tree = parse_json(text, file, problems);
  if (!tree) return std::nullopt;
  PlanReading reading(file, problems);
  if (tree->member("tackfree_plan") == nullptr) {
    reading.report(*tree, "tackfree_plan", "wanted a plan that `tackfree plan --json` wrote");
    return std::nullopt;
  }
  LastPlan plan = plan_in(*tree, reading);
  if (problems.size() == before && plan.job_id != job_id)
    reading.report(
        *tree, "job.id",
        fmt::format(R"(wanted a plan of the job "{}", not of "{}")", job_id, plan.job_id));
  if (problems.size() > before) return std::nullopt;
  return plan;
}

}  // namespace tackfree
