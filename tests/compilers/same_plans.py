"""The demos' plans by two programs, built by two compilers: every file the same bytes, plan.json's numbers within 1e-9.

Called with both programs and the folder of the profiles.
"""
import json
import pathlib
import subprocess
import sys
import tempfile


def differences(a, b, where=""):
    """Where two values of JSON are not the same, numbers to a part in 1e9."""
    if isinstance(a, dict) and isinstance(b, dict) and a.keys() == b.keys():
        return [line for key in a for line in differences(a[key], b[key], f"{where}/{key}")]
    if isinstance(a, list) and isinstance(b, list) and len(a) == len(b):
        return [line for k, pair in enumerate(zip(a, b)) for line in differences(*pair, f"{where}/{k}")]
    if isinstance(a, float) and isinstance(b, (float, int)) or isinstance(b, float) and isinstance(a, int):
        return [] if abs(a - b) <= 1e-9 * max(1, abs(a)) else [f"{where}: {a}, {b}"]
    return [] if a == b else [f"{where}: {str(a)[:80]}, {str(b)[:80]}"]


def plan(program, job, folder):
    subprocess.run([program, "plan", job, "--quiet", "-o", folder], check=True, cwd=folder.parent)
    return {file.relative_to(folder): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def main():
    first, second, profiles = (pathlib.Path(argument).resolve() for argument in sys.argv[1:4])
    jobs = sorted(profiles.glob("*/*.json"))
    if not jobs:
        sys.exit(f"no job in {profiles}")
    unlike = []
    for job in jobs:
        with tempfile.TemporaryDirectory() as folder:
            a, b = (plan(program, job, pathlib.Path(folder) / name) for program, name in ((first, "a"), (second, "b")))
        if a.keys() != b.keys():
            sys.exit(f"{job.name}: other files: {sorted(map(str, a.keys() ^ b.keys()))}")
        for file in a:
            if file.name == "plan.json":
                unlike += [f"{job.name}: plan.json{line}" for line in differences(json.loads(a[file]), json.loads(b[file]))]
            elif a[file] != b[file]:
                unlike.append(f"{job.name}: {file}")
        print(f"{job.name}: {len(a)} files by both programs")
    if unlike:
        sys.exit("not the same: " + "; ".join(unlike[:20]))


main()
