"""Program runs: the program under limits, with its exit code, what it wrote, processor time and memory."""
import os
import subprocess

SECONDS = 30


class Run:
    def __init__(self, arguments, code, out, seconds, megabytes):
        self.arguments, self.code, self.out = arguments, code, out
        self.seconds, self.megabytes = seconds, megabytes

    def command(self):
        return " ".join(f"'{a}'" if " " in a else a for a in self.arguments)


class Program:
    """Runs in one folder and keeps the account of that job."""

    def __init__(self, path, folder):
        self.path, self.folder, self.runs = path, folder, []

    def run(self, *arguments):
        arguments = [str(a) for a in arguments]
        out_path = self.folder / "last.out"
        with open(out_path, "wb") as out:
            # Processor time, so that a busy machine makes no findings; twice the wall for what sleeps.
            process = subprocess.Popen(["sh", "-c", f"ulimit -t {SECONDS}; exec \"$@\"", "sh", self.path, *arguments],
                                       cwd=self.folder, stdout=out, stderr=subprocess.STDOUT,
                                       env={"LC_ALL": "C.UTF-8", "PATH": os.environ.get("PATH", "")})
            _, status, usage = os.wait4(process.pid, 0)
            process.returncode = 0
        run = Run(arguments, os.waitstatus_to_exitcode(status), out_path.read_bytes(),
                  usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024)
        self.runs.append(run)
        return run
