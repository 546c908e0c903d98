#include "tackfree/input/parts_reader.hpp"

#include "effort.hpp"
#include "input/text_checks.hpp"
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
Problem only_parts_problem(const std::string& rows) {
  Problems problems;
  parse_parts(head + rows, "p.csv", problems);
  INFO(all_text(problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].file == "p.csv");
  return problems[0];
}

const std::string top = "board,top,,4 ft,1 ft,3/4,,,,all,a,,,,,\n";

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

TEST_CASE("all means every side that the kind has") {
  CHECK(read_good(top)[0].coated ==
        FaceSet{Face::top, Face::bottom, Face::front, Face::back, Face::left, Face::right});
  CHECK(read_good("round,leg,,1 ft,,,1 in,,,all,a,,,,,\n")[0].coated ==
        FaceSet{Face::side, Face::left, Face::right});
}

TEST_CASE("sides to coat are asked for, never guessed") {
  const Problem problem = only_parts_problem("board,top,,4 ft,1 ft,3/4,,,,,a,,,,,\n");
  CHECK(problem.key == "coat");
  CHECK(holds(problem.wanted, "is empty; wanted the sides to coat: all, faces"));
  CHECK(problem.hint == "undersides and insides are not guessed");
}

TEST_CASE("cut-outs and grooves join their part wherever they stand in the list") {
  const auto parts = read_good("cut-out,top,2,4 in,1 in,,,,,,,,,,no,\n" + top +
                               "groove,top,,,1/2 in,,,1/4 in,,,,yes,bottom,width,,\n"
                               "groove,top,3,2 in,1/2 in,,,1/4 in,,,,,,,,\n");
  REQUIRE(parts.size() == 1);
  REQUIRE(parts[0].features.size() == 3);
  const auto& hole = std::get<CutOut>(parts[0].features[0]);
  CHECK(hole.length == inches(4));
  CHECK(hole.count == 2);
  CHECK_FALSE(hole.rim_coated);
  const auto& full = std::get<Groove>(parts[0].features[1]);
  CHECK(full.face == Face::bottom);
  CHECK(full.run == Groove::Run::with_width);
  CHECK(full.length == feet(1));
  CHECK(full.depth == inches(0.25));
  CHECK(full.masked);
  const auto& stopped = std::get<Groove>(parts[0].features[2]);
  CHECK(stopped.face == Face::top);
  CHECK(stopped.run == Groove::Run::with_length);
  CHECK(stopped.length == inches(2));
  CHECK(stopped.count == 3);
  CHECK_FALSE(stopped.masked);
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
      {"bord,x,,1 ft,1 ft,1,,,,all,a,,,,,", "kind", "bord", "one of board, sheet, round",
       "\"board\""},
      {",x,,1 ft,1 ft,1,,,,all,a,,,,,", "kind", "", "is empty", ""},
      {"board,,,1 ft,1 ft,1,,,,all,a,,,,,", "part", "", "is empty; wanted the part's name", ""},
      {"board,top,,1 ft,1 ft,1,,,,all,a,,,,,", "part", "top", "line 2 has it too", ""},
      {"board,x,0,1 ft,1 ft,1,,,,all,a,,,,,", "quantity", "0", "from 1 to 100000", ""},
      {"board,x,-2,1 ft,1 ft,1,,,,all,a,,,,,", "quantity", "-2", "from 1 to 100000", ""},
      {"board,x,1.5,1 ft,1 ft,1,,,,all,a,,,,,", "quantity", "1.5", "from 1 to 100000", ""},
      {"board,x,,-1 ft,1 ft,1,,,,all,a,,,,,", "length", "-1 ft", "without a minus sign", ""},
      {"board,x,,0 ft,1 ft,1,,,,all,a,,,,,", "length", "0 ft", "over 0", ""},
      {"board,x,,12,1 ft,1,,,,all,a,,,,,", "length", "12", "a length with its unit", ""},
      {"board,x,,,1 ft,1,,,,all,a,,,,,", "length", "", "is empty; wanted a length", ""},
      {"board,x,,1 ft,1 ft,nan,,,,all,a,,,,,", "thickness_in", "nan", "a length with its unit", ""},
      {"board,x,,1 ft,1 ft,1,2 in,,,all,a,,,,,", "diameter", "2 in", "a board has no diameter", ""},
      {"board,x,,1 ft,1 ft,1,,,oak,all,a,,,,,", "material", "oak",
       "one of solid, plywood, fibreboard", ""},
      {"board,x,,1 ft,1 ft,1,,,,tops,a,,,,,", "coat", "tops", "sides of a board", "\"top\""},
      {"board,x,,1 ft,1 ft,1,,,,side,a,,,,,", "coat", "side", "sides of a board", ""},
      {"round,x,,1 ft,,,1 in,,,top,a,,,,,", "coat", "top", "sides of a round", ""},
      {"board,x,,1 ft,1 ft,1,,,,all,,,,,,", "batch", "", "is empty", ""},
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
    const Problem problem = only_parts_problem(top + row.row + "\n");
    CHECK(problem.line == 3);
    CHECK(problem.key == row.key);
    CHECK(problem.found == row.found);
    CHECK(holds(problem.wanted, row.wanted));
    CHECK(holds(problem.hint, row.hint));
  }
}

TEST_CASE("a feature in a round is refused") {
  const Problem problem = only_parts_problem(
      "round,leg,,1 ft,,,1 in,,,all,a,,,,,\ngroove,leg,,,1/4 in,,,1/4 in,,,,,,,,\n");
  CHECK(problem.line == 3);
  CHECK(holds(problem.wanted, "a groove in another kind of part is not known here"));
}

TEST_CASE("features together may not take more than the side they are in") {
  // The top has 576 in2; 4 x 140 in2 of cut-outs leave 16, the groove on the bottom takes 24.
  const std::string cut_outs = top + "cut-out,top,4,14 in,10 in,,,,,,,,,,,\n";
  read_good(cut_outs);
  const Problem problem =
      only_parts_problem(cut_outs + "groove,top,,,1/2 in,,,1/4 in,,,,,bottom,length,,\n");
  CHECK(problem.line == 2);
  CHECK(problem.key == "top");
  CHECK(holds(problem.wanted, "no more than its bottom"));
}

TEST_CASE("all mistakes of a list come out in one run, and one fault is not told twice") {
  Problems problems;
  parse_parts(head +
                  "board,a,,1 ft,1 ft,-1,,,,all,x,,,,,\n"
                  "groove,a,,,1 in,,,1/4 in,,,,,,,,\n"
                  "round,b,,1 ft,,,x,,,all,x,,,,,\n"
                  "board,c,0,,1 ft,1,,,,all,x,,,,,\n",
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
  CHECK(problems[2].key == "coat");
  CHECK(problems[2].wanted == "is missing; this column is needed");
}

TEST_CASE("a list without parts and a list full of rubbish are refused shortly") {
  CHECK(only_parts_problem("").wanted == "has no parts; wanted at least one row");
  std::string rubbish;
  for (int i = 0; i < testing::cases(100'000); ++i) rubbish += "x,y,z,,,,,,,,,,,,,\n";
  Problems problems;
  parse_parts(head + rubbish, "p.csv", problems);
  CHECK(problems.size() < 60);
  CHECK(problems.back().wanted == "has too many mistakes; mend these first");
  // Features of parts that are not there are looked up among all names.
  std::string lost = top;
  for (int i = 0; i < 20'000; ++i) lost += "cut-out,lost,,1 in,1 in,,,,,,,,,,,\n";
  problems.clear();
  parse_parts(head + lost, "p.csv", problems);
  CHECK(problems.size() < 60);
  CHECK(problems.back().wanted == "has too many mistakes; mend these first");
}

TEST_CASE("a list has 100,000 rows at most, and alike parts may share one") {
  std::string rows;
  for (int i = 0; i < 100'000; ++i) rows += "x,y,z,,,,,,,,,,,,,\n";
  Problems problems;
  parse_parts(head + rows, "p.csv", problems);
  CHECK(problems.front().line == 2);  // read, and refused for what stands in it
  const Problem one_more = only_parts_problem(rows + top);
  CHECK(one_more.line == 100'002);
  CHECK(one_more.wanted == "wanted at most 100000 rows");
  CHECK(one_more.hint == "give parts that are alike one row, with their \"quantity\"");
}

TEST_CASE("a list as a spreadsheet with decimal commas writes it is read whole") {
  Problems problems;
  const auto parts = parse_parts(
      "\xEF\xBB\xBF"
      "Kind;Part;Length (mm);Width [mm];Thickness;Batch;Coat;Quantity;;\r\n"
      "Board;\"top; oak\";1226,5;400;1,9 cm;a;All;2;;\r\n"
      ";;;;;;;;;\r\n"
      "Cut-out;\"top; oak\";100,25;50;;;;;;\r\n",
      "p.csv", problems);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  REQUIRE(parts.size() == 1);
  CHECK(parts[0].name == "top; oak");
  CHECK(std::get<Board>(parts[0].shape).length.in(millimetres) == doctest::Approx(1226.5));
  CHECK(std::get<Board>(parts[0].shape).thickness.in(millimetres) == doctest::Approx(19));
  CHECK(std::get<CutOut>(parts[0].features.at(0)).length.in(millimetres) ==
        doctest::Approx(100.25));
}

TEST_CASE("a tab parts columns too, and a comma is a decimal comma with semicolons alone") {
  Problems problems;
  CHECK(parse_parts("kind\tpart\tlength_mm\twidth_mm\tthickness_mm\tbatch\tcoat\n"
                    "board\tx\t100\t50\t9\ta\tall\n",
                    "p.csv", problems)
            .size() == 1);
  CHECK_MESSAGE(problems.empty(), all_text(problems));
  parse_parts(
      "kind\tpart\tlength_mm\twidth_mm\tthickness_mm\tbatch\tcoat\n"
      "board\tx\t100,5\t50\t9\ta\tall\n",
      "p.csv", problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].key == "length_mm");
}

TEST_CASE("a point that could part thousands is refused in a list with decimal commas") {
  Problems problems;
  parse_parts(
      "kind;part;length_mm;width_mm;thickness_mm;batch;coat\n"
      "board;x;1.226;50;9;a;all\n",
      "p.csv", problems);
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].found == "1.226");
  CHECK(holds(problems[0].wanted, "can be read in two ways"));
}
