#include "tackfree/cli/shelf_command.hpp"

#include "cli/said.hpp"
#include "holds.hpp"
#include <doctest/doctest.h>

namespace tackfree::testing {

namespace {

constexpr const char* evening = "2027-04-05T20:00Z";

/// The starter job under that name, with the shelf of the folder above.
std::string sharing_job(const Folder& folder, const char* name) {
  const std::string job = starter_in(folder, name);
  std::string text = text_of(job);
  text.replace(text.find("Side table"), 10, name);
  text.insert(text.find("  \"coatings\""), "  \"shelf_file\": \"../shelf.json\",\n");
  std::ofstream(job, std::ios::binary) << text;
  return job;
}

Said shelf(const std::string& job, bool write = true) {
  std::vector<std::string> arguments{"shelf", job, "--now", evening};
  if (write) arguments.emplace_back("--write");
  return said(arguments);
}

void buy(const std::string& job) {
  REQUIRE(said({"log", "tin", job, "bought", "750 ml", "--now", evening}).code == exit_done);
}

}  // namespace

TEST_CASE("the next job buys less by what the first one left on the shelf") {
  const Folder folder;
  const std::string first = sharing_job(folder, "first"), next = sharing_job(folder, "next");
  CHECK(holds(said({"buy", next, "--now", evening}).out, "2 x 250 ml clear coat"));
  buy(first);
  const Said written = shelf(first);
  CHECK(written.code == exit_done);
  CHECK(holds(written.out, "clear coat (waterborne polyurethane)\n  - 750 ml\n"));
  CHECK(holds(written.out, "Written to "));
  CHECK(text_of(folder.in("shelf.json")) ==
        "{\n  \"tackfree_shelf\": 1,\n  \"tins\": [\n    { \"coating\": \"clear coat\", \"class\": "
        "\"waterborne_polyurethane\", \"volume\": \"0.750 L\", \"left_by\": \"first\", \"tin\": 1 "
        "}\n  ]\n}\n");
  const Said bought = said({"buy", next, "--now", evening});
  CHECK(holds(bought.out, "Buy   nothing"));
  CHECK(holds(bought.out, "On the shelf     750 ml"));
}

TEST_CASE("written twice, or by two jobs in turn, nothing counts twice and no tin is lost") {
  const Folder folder;
  const std::string first = sharing_job(folder, "first"), next = sharing_job(folder, "next");
  std::ofstream(folder.in("shelf.json")) << R"({ "tackfree_shelf": 1, "tins": [
  { "coating": "milk white", "class": "shellac", "volume": "1/2 pt", "note": "by hand" } ] })";
  buy(first);
  shelf(first);
  const std::string once = text_of(folder.in("shelf.json"));
  CHECK(holds(once, R"({ "coating": "milk white", "class": "shellac", "volume": "1/2 pt", )"
                    R"("note": "by hand" })"));
  shelf(first);
  CHECK(text_of(folder.in("shelf.json")) == once);
  shelf(next);
  CHECK(text_of(folder.in("shelf.json")) == once);
  REQUIRE(said({"log", "coat", next, "--batch", "frame", "--used", "100 ml", "--insist", "--now",
                evening})
              .code == exit_done);
  CHECK(shelf(next).code == exit_done);
  const std::string both = text_of(folder.in("shelf.json"));
  CHECK(
      holds(both, R"("taken_by": { "next": { "volume": "0.120 L", "opened_on": "2027-04-05" } })"));
  shelf(first);
  shelf(next);
  CHECK(text_of(folder.in("shelf.json")) == both);
}

TEST_CASE("without --write nothing is written, and without a shelf to share --write is refused") {
  const Folder folder;
  const std::string job = sharing_job(folder, "first");
  buy(job);
  CHECK(shelf(job, false).code == exit_done);
  CHECK_FALSE(fs::exists(folder.in("shelf.json")));
  const std::string alone = starter_in(folder, "alone");
  CHECK(shelf(alone, false).code == exit_done);
  const Said refused = shelf(alone);
  CHECK(refused.code == exit_wrong_input);
  CHECK(holds(refused.err, "shelf_file: is missing; --write wanted the file of the shelf"));
}

TEST_CASE("a shelf with a mistake is named by file, line and key, and left as it is") {
  const Folder folder;
  const std::string job = sharing_job(folder, "first");
  const std::string broken = "{ \"tackfree_shelf\": 1,\n  \"tins\": [{ \"thinner\": \"x\" }] }";
  std::ofstream(folder.in("shelf.json")) << broken;
  const Said refused = shelf(job);
  CHECK(refused.code == exit_wrong_input);
  CHECK(holds(refused.err, "shelf.json:2: tins[0].volume: is missing; this key is needed"));
  CHECK(text_of(folder.in("shelf.json")) == broken);
}

TEST_CASE("no output may go where the shelf is") {
  const Folder folder;
  const std::string job = sharing_job(folder, "first");
  buy(job);
  shelf(job);
  const Said refused = said({"plan", job, "--json", folder.in("shelf.json"), "--now", evening});
  CHECK(refused.code == exit_wrong_input);
  CHECK(holds(refused.err, "this is the shelf file, and it would be lost"));
}

}  // namespace tackfree::testing
