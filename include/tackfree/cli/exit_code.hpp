// Exit code: what the program tells a script of how a run went.
#pragma once

namespace tackfree {

/// Done; a bug; wrong input, with every mistake on `err`, or an output that cannot be written; a
/// job that cannot be planned whole, with the rest on `out`.
enum ExitCode { exit_done = 0, exit_bug = 1, exit_wrong_input = 2, exit_not_plannable = 3 };

struct DatedWork;

/// Of a command that prints this work: not plannable where a step found no time.
ExitCode exit_code(const DatedWork& work);

}  // namespace tackfree
