#include "tackfree/input/parts_reader.hpp"

#include "input/written_files.hpp"
#include <doctest/doctest.h>

using namespace tackfree;

namespace {

const std::string head =
    "kind,part,quantity,length,width,thickness_in,diameter,depth,material,coat,batch,masked,face,"
    "run,rim,note\n";

std::vector<Part> read_good(const std::string& rows) {
  Problems problems;
  auto parts = parse_parts(head + rows, "p.csv", problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  return parts;
}

/// The problem of the last row of `rows`, the only one.
Problem only_problem(const std::string& rows) {
  Problems problems;
  parse_parts(head + rows, "p.csv", problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "p.csv");
  return problems[0];
}

const std::string top = "board,top,,4 ft,1 ft,3/4,,,,,a,,,,,\n";

}  // namespace

TEST_CASE("boards and rounds are read with their sizes, sides, quantity and batch") {
  const auto parts = read_good(
      "board,seat,2,48 1/4 in,\"14 1/2\"\"\",1 1/8,,,plywood,faces + front left,a,,,,,a remark\n"
      "round,leg,4,450 mm,,,3.5 cm,,,side,b,,,,,\n");
  REQUIRE(parts.size() == 2);
  const Board& seat = std::get<Board>(parts[0].shape);
  CHECK(seat.length == inches(48.25));
  CHECK(seat.width == inches(14.5));
  CHECK(seat.thickness == inches(1.125));
  CHECK(parts[0].quantity == 2);
  CHECK(parts[0].material == Material::plywood);
  CHECK(parts[0].coated == FaceSet{Face::top, Face::bottom, Face::front, Face::left});
  CHECK(parts[0].batch == "a");
  CHECK(parts[0].line == 2);
  CHECK(std::get<Round>(parts[1].shape).diameter == millimetres(35));
  CHECK(parts[1].coated == FaceSet{Face::side});
}

TEST_CASE("an empty coat field means every side") {
  CHECK(read_good(top)[0].coated ==
        FaceSet{Face::top, Face::bottom, Face::front, Face::back, Face::left, Face::right});
  CHECK(read_good("round,leg,,1 ft,,,1 in,,,,a,,,,,\n")[0].coated ==
        FaceSet{Face::side, Face::left, Face::right});
}

TEST_CASE("cut-outs and grooves join their part wherever they stand in the list") {
  const auto parts = read_good("cut-out,top,2,4 in,1 in,,,,,,,,,,no,\n" + top +
                               "groove,top,,,1/2 in,,,1/4 in,,,,yes,bottom,width,,\n"
                               "groove,top,3,2 in,1/2 in,,,1/4 in,,,,,,,,\n");
  REQUIRE(parts.size() == 1);
  REQUIRE(parts[0].cut_outs.size() == 1);
  CHECK(parts[0].cut_outs[0].length == inches(4));
  CHECK(parts[0].cut_outs[0].count == 2);
  CHECK_FALSE(parts[0].cut_outs[0].rim_coated);
  REQUIRE(parts[0].grooves.size() == 2);
  const Groove& full = parts[0].grooves[0];
  CHECK(full.face == Face::bottom);
  CHECK(full.run == Groove::Run::with_width);
  CHECK(full.length == feet(1));
  CHECK(full.depth == inches(0.25));
  CHECK(full.masked);
  CHECK(parts[0].grooves[1].face == Face::top);
  CHECK(parts[0].grooves[1].run == Groove::Run::with_length);
  CHECK(parts[0].grooves[1].length == inches(2));
  CHECK(parts[0].grooves[1].count == 3);
  CHECK_FALSE(parts[0].grooves[1].masked);
}

TEST_CASE("a wrong field is named with its line, column, value and remedy") {
  struct Row {
    const char* row;
    const char* key;
    const char* found;
    const char* wanted;
    const char* hint;
  };
  const Row rows[] = {
      {"bord,x,,1 ft,1 ft,1,,,,,a,,,,,", "kind", "bord", "one of board, round, cut-out, groove",
       "\"board\""},
      {",x,,1 ft,1 ft,1,,,,,a,,,,,", "kind", "", "is empty", ""},
      {"board,,,1 ft,1 ft,1,,,,,a,,,,,", "part", "", "is empty; wanted the part's name", ""},
      {"board,top,,1 ft,1 ft,1,,,,,a,,,,,", "part", "top", "line 2 has it too", ""},
      {"board,x,0,1 ft,1 ft,1,,,,,a,,,,,", "quantity", "0", "from 1 to 100000", ""},
      {"board,x,-2,1 ft,1 ft,1,,,,,a,,,,,", "quantity", "-2", "from 1 to 100000", ""},
      {"board,x,1.5,1 ft,1 ft,1,,,,,a,,,,,", "quantity", "1.5", "from 1 to 100000", ""},
      {"board,x,,-1 ft,1 ft,1,,,,,a,,,,,", "length", "-1 ft", "without a minus sign", ""},
      {"board,x,,0 ft,1 ft,1,,,,,a,,,,,", "length", "0 ft", "over 0", ""},
      {"board,x,,12,1 ft,1,,,,,a,,,,,", "length", "12", "a length with its unit", ""},
      {"board,x,,,1 ft,1,,,,,a,,,,,", "length", "", "is empty; wanted a length", ""},
      {"board,x,,1 ft,1 ft,nan,,,,,a,,,,,", "thickness_in", "nan", "a length with its unit", ""},
      {"board,x,,1 ft,1 ft,1,2 in,,,,a,,,,,", "diameter", "2 in", "a board has no diameter", ""},
      {"board,x,,1 ft,1 ft,1,,,oak,,a,,,,,", "material", "oak", "one of solid, plywood", ""},
      {"board,x,,1 ft,1 ft,1,,,,tops,a,,,,,", "coat", "tops", "sides of a board", "\"top\""},
      {"board,x,,1 ft,1 ft,1,,,,side,a,,,,,", "coat", "side", "sides of a board", ""},
      {"round,x,,1 ft,,,1 in,,,top,a,,,,,", "coat", "top", "sides of a round", ""},
      {"board,x,,1 ft,1 ft,1,,,,,,,,,,", "batch", "", "is empty", ""},
      {"cut-out,tpo,,1 in,1 in,,,,,,,,,,,", "part", "tpo", "a part in this list", "\"top\""},
      {"cut-out,top,,4 ft,1 in,,,,,,,,,,,", "length", "4 ft", "a rim must be left", ""},
      {"cut-out,top,,1 in,2 ft,,,,,,,,,,,", "width", "2 ft", "a rim must be left", ""},
      {"cut-out,top,,1 in,1 in,,,,,,,,,,maybe,", "rim", "maybe", "one of no, yes", ""},
      {"cut-out,top,,1 in,1 in,,,,,,a,,,,,", "batch", "a", "goes with its part", ""},
      {"groove,top,,5 ft,1 in,,,1/4 in,,,,,,,,", "length", "5 ft", "the run of the board", ""},
      {"groove,top,,,13 in,,,1/4 in,,,,,,,,", "width", "13 in", "wide there", ""},
      {"groove,top,,,1 in,,,3/4 in,,,,,,,,", "depth", "3/4 in", "less than the board's thickness",
       ""},
      {"groove,top,,,1 in,,,,,,,,,,,", "depth", "", "is empty", ""},
      {"groove,top,,,1 in,,,1/4 in,,,,,side,,,", "face", "side", "one of top, bottom", ""},
      {"groove,top,,,1 in,,,1/4 in,,,,,,across,,", "run", "across", "one of length, width", ""}};
  for (const Row& row : rows) {
    CAPTURE(row.row);
    const Problem problem = only_problem(top + row.row + "\n");
    CHECK(problem.line == 3);
    CHECK(problem.key == row.key);
    CHECK(problem.found == row.found);
    CHECK(holds(problem.wanted, row.wanted));
    CHECK(holds(problem.hint, row.hint));
  }
}

TEST_CASE("a feature in a round is refused") {
  const Problem problem =
      only_problem("round,leg,,1 ft,,,1 in,,,,a,,,,,\ngroove,leg,,,1/4 in,,,1/4 in,,,,,,,,\n");
  CHECK(problem.line == 3);
  CHECK(holds(problem.wanted, "a groove in a round is not known here"));
}

TEST_CASE("cut-outs and grooves together may not take more than the face") {
  // The top has 576 in2; 4 x 140 in2 of cut-outs leave 16, the groove on the bottom takes 24.
  const std::string cut_outs = top + "cut-out,top,4,14 in,10 in,,,,,,,,,,,\n";
  read_good(cut_outs);
  const Problem problem =
      only_problem(cut_outs + "groove,top,,,1/2 in,,,1/4 in,,,,,bottom,length,,\n");
  CHECK(problem.line == 2);
  CHECK(problem.key == "top");
  CHECK(holds(problem.wanted, "no more than its bottom"));
}

TEST_CASE("all mistakes of a list come out in one run, and one fault is not told twice") {
  Problems problems;
  parse_parts(head +
                  "board,a,,1 ft,1 ft,-1,,,,,x,,,,,\n"
                  "groove,a,,,1 in,,,1/4 in,,,,,,,,\n"
                  "round,b,,1 ft,,,x,,,,x,,,,,\n"
                  "board,c,0,,1 ft,1,,,,,x,,,,,\n",
              "p.csv", problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].line == 2);
  CHECK(problems[1].line == 4);
  CHECK(problems[2].line == 5);
  CHECK(problems[3].line == 5);
}

TEST_CASE("unknown, missing and repeated columns are named") {
  Problems problems;
  parse_parts("kind,part,lenght,width,width_mm,batch\n", "p.csv", problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 3);
  CHECK(problems[0].key == "lenght");
  CHECK(problems[0].hint == "did you mean \"length\"?");
  CHECK(problems[1].key == "width_mm");
  CHECK(problems[1].wanted == "wanted each column once");
  CHECK(problems[2].key == "length");
  CHECK(problems[2].wanted == "is missing; this column is needed");
}

TEST_CASE("a list without parts and a list full of rubbish are refused shortly") {
  CHECK(only_problem("").wanted == "has no parts; wanted at least one row");
  std::string rubbish;
  for (int i = 0; i < 100'000; ++i) rubbish += "x,y,z,,,,,,,,,,,,,\n";
  Problems problems;
  parse_parts(head + rubbish, "p.csv", problems);
  CHECK(problems.size() < 60);
  CHECK(problems.back().wanted == "has too many mistakes; mend these first");
}
