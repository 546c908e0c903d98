#include "tackfree/plan/part_notes.hpp"

#include "sample_job.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

std::vector<std::string> abouts(const Job& job) {
  std::vector<std::string> found;
  for (const Note& note : part_notes(job)) found.push_back(note.about);
  return found;
}

TEST_CASE("a wide solid board coated on one face is said to cup (rule 9)") {
  Job job = testing::sample_job();
  CHECK(abouts(job).empty());
  job.parts[0].coated = {Face::top, Face::front, Face::back};
  CHECK(abouts(job) == std::vector<std::string>{"one face only"});
  job.parts[0].coated = {Face::bottom};
  CHECK(abouts(job) == std::vector<std::string>{"one face only"});
  job.parts[0].coated = {Face::front};
  CHECK(abouts(job).empty());
}

TEST_CASE("narrow boards, plywood and fibreboard do not cup") {
  Job job = testing::sample_job();
  job.parts[0].coated = {Face::top};
  job.parts[0].material = Material::plywood;
  CHECK(abouts(job).empty());
  job.parts[0].material = Material::fibreboard;
  CHECK(abouts(job).empty());
  job.parts[0].material = Material::solid_wood;
  std::get<Board>(job.parts[0].shape).width = millimetres(199);
  CHECK(abouts(job).empty());
  std::get<Board>(job.parts[0].shape).width = millimetres(200);
  CHECK(abouts(job).size() == 1);
}

TEST_CASE("an estimated frame is said to be an allowance, with its figure and source") {
  Job job = testing::sample_job();
  job.parts[0].shape = EstimatedFrame{metres(2), metres(0.8), millimetres(40), true};
  const auto notes = part_notes(job);
  REQUIRE(notes.size() == 1);
  CHECK(notes[0].about == "estimating allowance");
  CHECK(notes[0].text.find("1.8 times its flat face") != std::string::npos);
  CHECK(notes[0].text.find("IS 1200 Part 15") != std::string::npos);
  CHECK(notes[0].text.find("not geometry") != std::string::npos);
}

}  // namespace
}  // namespace tackfree
