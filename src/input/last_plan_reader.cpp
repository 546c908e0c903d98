#include "tackfree/input/last_plan_reader.hpp"

#include "tackfree/syntax/json_document.hpp"

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
                           PlanReading::flag(event, "cancelled"),
                           event.member("person") != nullptr ? reading.text(event, "person") : ""});
  return plan;
}

/// The key that says what a file is, with the number of its format.
struct Mark {
  std::string_view key;
  std::string wanted;
};

/// The object in `text` if its mark says that it is what is wanted.
std::optional<JsonNode> marked(std::string_view text, const std::string& file, const Mark& mark,
                               Problems& problems) {
  auto tree = parse_json(text, file, problems, longest_written_json);
  if (!tree) return std::nullopt;
  const JsonNode* version = tree->member(mark.key);
  if (version != nullptr && version->kind == JsonNode::Kind::number && version->number == 1)
    return tree;
  PlanReading(file, problems).report(*tree, mark.key, mark.wanted);
  return std::nullopt;
}

void check_job(const JsonNode& tree, const LastPlan& plan, const std::string& job_id,
               PlanReading& reading) {
  if (plan.job_id != job_id)
    reading.report(
        tree, "job.id",
        fmt::format(R"(wanted a plan of the job "{}", not of "{}")", job_id, plan.job_id));
}

}  // namespace

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the readers' order, text and its name first
std::optional<LastPlan> parse_last_plan(std::string_view text, const std::string& file,
                                        const std::string& job_id, Problems& problems) {
  const std::size_t before = problems.size();
  const auto tree = marked(
      text, file, {"tackfree_plan", "wanted a plan that `tackfree plan --json` wrote"}, problems);
  if (!tree) return std::nullopt;
  PlanReading reading(file, problems);
  LastPlan plan = plan_in(*tree, reading);
  if (problems.size() == before) check_job(*tree, plan, job_id, reading);
  if (problems.size() > before) return std::nullopt;
  return plan;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the readers' order, text and its name first
std::optional<KeptPlan> parse_kept_plan(std::string_view text, const std::string& file,
                                        const std::string& job_id, Problems& problems) {
  const std::size_t before = problems.size();
  const auto tree = marked(
      text, file, {"tackfree_kept_plan", "wanted a plan that `tackfree plan` keeps"}, problems);
  if (!tree) return std::nullopt;
  PlanReading reading(file, problems);
  KeptPlan kept;
  kept.digest = reading.text(*tree, "digest");
  const JsonNode* plan = tree->member("plan");
  const JsonNode* earlier = tree->member("before");
  if (plan == nullptr || plan->kind != JsonNode::Kind::object)
    reading.report(*tree, "plan", "wanted an object, as tackfree writes it");
  else
    kept.plan = plan_in(*plan, reading);
  if (earlier != nullptr && earlier->kind == JsonNode::Kind::object)
    kept.before = plan_in(*earlier, reading);
  if (problems.size() == before) check_job(*tree, kept.plan, job_id, reading);
  if (problems.size() > before) return std::nullopt;
  return kept;
}

}  // namespace tackfree
