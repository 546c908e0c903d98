#include "tackfree/plan/part_notes.hpp"

#include "sample_job.hpp"
#include "told_notes.hpp"
#include <doctest/doctest.h>

namespace tackfree {
namespace {

using testing::notes_of;

bool cups(const Job& job) {
  const std::vector<Note> notes = part_notes(job);
  CHECK(notes.size() < 2);
  return !notes_of<OneFaceNote>(notes).empty();
}

TEST_CASE("a wide solid board coated on one face is said to cup (rule 9)") {
  Job job = testing::sample_job();
  CHECK_FALSE(cups(job));
  job.parts[0].coated = {Face::top, Face::front, Face::back};
  CHECK(cups(job));
  job.parts[0].coated = {Face::bottom};
  CHECK(cups(job));
  job.parts[0].coated = {Face::front};
  CHECK_FALSE(cups(job));
}

TEST_CASE("narrow boards, plywood and fibreboard do not cup") {
  Job job = testing::sample_job();
  job.parts[0].coated = {Face::top};
  job.parts[0].material = Material::plywood;
  CHECK_FALSE(cups(job));
  job.parts[0].material = Material::fibreboard;
  CHECK_FALSE(cups(job));
  job.parts[0].material = Material::solid_wood;
  std::get<Board>(job.parts[0].shape).width = millimetres(199);
  CHECK_FALSE(cups(job));
  std::get<Board>(job.parts[0].shape).width = millimetres(200);
  CHECK(cups(job));
}

TEST_CASE("an estimated frame is said to be an allowance, with its figure and source") {
  Job job = testing::sample_job();
  job.parts[0].shape = EstimatedFrame{metres(2), metres(0.8), millimetres(40), true};
  const auto notes = notes_of<AllowanceNote>(part_notes(job));
  REQUIRE(notes.size() == 1);
  CHECK(notes[0].part == 0);
  CHECK(notes[0].of_flat_face.value == 1.8);
  CHECK(notes[0].of_flat_face.source.find("IS 1200 Part 15") != std::string::npos);
}

}  // namespace
}  // namespace tackfree
