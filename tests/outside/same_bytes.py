#!/usr/bin/env python3
"""The same bytes on every processor: random jobs planned with and without fused multiply-add.

    same_bytes.py PROGRAM COUNT [FIRST_SEED]

The C library has other code for exp, log and pow where the processor has fused multiply-add, and its
results differ in the last digit; the program has its own (base/elementary). Each of COUNT random jobs
is planned twice, once with these instructions hidden from the C library by its tunables (names of
glibc 2.33 and later): exit code, what is printed, JSON, page and calendar must be the same bytes.
So that this shows something, the C library's own results must differ under the tunables on this
machine; 1 if they do not, or if a job differs. A processor without fused multiply-add has nothing to
hide: this is said, and passes.
"""
import hashlib
import multiprocessing
import os
import pathlib
import re
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))

from random_jobs.job_generator import JobGenerator  # noqa: E402

WITHOUT = {**os.environ, "GLIBC_TUNABLES": "glibc.cpu.hwcaps=-AVX2,-FMA,-FMA4"}
WRITTEN = ["plan.json", "plan.html", "plan.ics"]
OWN_RESULTS = """
import ctypes, hashlib, random, struct
libm = ctypes.CDLL("libm.so.6")
for name in ("exp", "pow"):
    getattr(libm, name).restype = ctypes.c_double
    getattr(libm, name).argtypes = [ctypes.c_double] * (1 if name == "exp" else 2)
chance = random.Random(1)
results = hashlib.sha256()
for _ in range(100_000):
    x, y = chance.uniform(0, 20), chance.uniform(-3, 3)
    results.update(struct.pack("dd", libm.exp(-x), libm.pow(x, y)))
print(results.hexdigest())
"""


def libm_results(environment):
    return subprocess.run([sys.executable, "-c", OWN_RESULTS], env=environment, capture_output=True, text=True,
                          check=True).stdout


def planned(program, folder, environment):
    """What comes of the job in `folder`: a name and a hash for each thing that comes."""
    run = subprocess.run([program, "plan", "job.json", "--keep", "no", "--json", "plan.json", "--page", "plan.html",
                          "--calendar", "plan.ics"], cwd=folder, env=environment, capture_output=True, check=False)
    came = {"exit code": str(run.returncode).encode(), "print": run.stdout + run.stderr}
    for name in WRITTEN:
        file = pathlib.Path(folder) / name
        came[name] = file.read_bytes() if file.exists() else b""
        file.unlink(missing_ok=True)
    return {name: hashlib.sha256(what).hexdigest() for name, what in came.items()}, run.returncode


def differences(task):
    program, seed = task
    with tempfile.TemporaryDirectory() as folder:
        JobGenerator(seed, pathlib.Path(folder)).write()
        (with_it, code), (without, _) = planned(program, folder, os.environ), planned(program, folder, WITHOUT)
    return seed, code, [name for name in with_it if with_it[name] != without[name]]


def main():
    program, count = str(pathlib.Path(sys.argv[1]).resolve()), int(sys.argv[2])
    first = int(sys.argv[3]) if len(sys.argv) > 3 else 300_001
    if not re.search(r"^flags\s*:.*\bfma\b", pathlib.Path("/proc/cpuinfo").read_text(), re.MULTILINE):
        print("this processor has no fused multiply-add: nothing to hide, nothing compared")
        return 0
    if libm_results(os.environ) == libm_results(WITHOUT):
        print("the C library gives the same results under these tunables: they show nothing")
        return 1
    print("the C library's exp and pow differ under the tunables")
    differing, codes = 0, {}
    with multiprocessing.Pool(2) as pool:
        tasks = [(program, seed) for seed in range(first, first + count)]
        for seed, code, found in pool.imap(differences, tasks):
            codes[code] = codes.get(code, 0) + 1
            if found:
                differing += 1
                print(f"seed {seed}: differs in {', '.join(found)}")
    print(f"{count} jobs, {differing} differ; exit codes {dict(sorted(codes.items()))}")
    return 1 if differing or not set(codes) <= {0, 3} else 0


if __name__ == "__main__":
    sys.exit(main())
