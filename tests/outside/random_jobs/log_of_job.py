"""Log of a job: what counts of its lines, read as docs/file_formats.md describes them."""
import json

from .local_time import utc


def read_log(path):
    if not path.exists():
        return []
    counted = {}
    for text in path.read_text(encoding="utf-8").splitlines():
        line = json.loads(text)
        line["at_minute"] = utc(line.get("at", line["written_at"]))
        if "corrects" in line:
            counted.pop(line["corrects"], None)
        if line["kind"] != "withdrawn":
            counted[line["id"]] = line
    return list(counted.values())
