"""The schema of the job file against the profiles, the refused jobs and the reader itself.

Called with the folder of the tests, the folder of the profiles and the program read_jobs.
"""
import copy
import json
import math
import os
import re
import subprocess
import sys
import tempfile
import unittest

import jsonschema

TESTS, PROFILES, READ_JOBS = (os.path.abspath(path) for path in sys.argv[1:4])
SCHEMA_FILE = os.path.join(PROFILES, "job.schema.json")


def without_comments(text):
    token = re.compile(r'"(?:\\.|[^"\\])*"|//[^\n]*')
    return token.sub(lambda m: m.group() if m.group()[0] == '"' else "", text)


def parse(text):
    """As the reader takes JSON: no NaN, no key twice, no number beyond a double."""

    def no_constant(word):
        raise ValueError(word)

    def number(digits):
        if math.isinf(float(digits)):
            raise ValueError(digits)
        return float(digits)

    def once(pairs):
        if len({key for key, _ in pairs}) < len(pairs):
            raise ValueError("a key stands twice")
        return dict(pairs)

    return json.loads(without_comments(text), parse_constant=no_constant, parse_float=number, object_pairs_hook=once)


def load(*path):
    with open(os.path.join(*path), encoding="utf-8-sig") as file:
        return parse(file.read())


SCHEMA = load(SCHEMA_FILE)
VALIDATOR = jsonschema.Draft7Validator(SCHEMA)


def takes(job):
    return VALIDATOR.is_valid(job)


def faults_of(jobs):
    """What the reader says of each: a list of lists of lines."""
    with tempfile.TemporaryDirectory() as folder:
        names = []
        for job in jobs:
            names.append(os.path.join(folder, "%d.json" % len(names)))
            with open(names[-1], "w", encoding="utf-8") as file:
                json.dump(job, file)
        lines = subprocess.run([READ_JOBS], input="\n".join(names) + "\n", capture_output=True, text=True, check=True).stdout
    lines = iter(lines.splitlines())
    return [[next(lines) for _ in range(int(next(lines)))] for _ in jobs]


def resolved(schema):
    while "$ref" in schema:
        at = SCHEMA
        for part in schema["$ref"].lstrip("#/").split("/"):
            at = at[part]
        schema = at
    return schema


def branches(schema):
    """The schemas that a value may follow."""
    schema = resolved(schema)
    yield schema
    for part in schema.get("anyOf", []) + [one for one in schema.get("allOf", []) if "$ref" in one]:
        yield from branches(part)


def child(schema, key):
    """The schema of a key or an item, or None."""
    for one in branches(schema):
        if isinstance(key, str) and key in one.get("properties", {}):
            return one["properties"][key]
        if isinstance(key, int) and "items" in one:
            items = one["items"]
            if isinstance(items, list):
                return items[key] if key < len(items) else one["additionalItems"]
            return items
    return None


def walk(value, schema, path=()):
    """Every value with its schema and its path."""
    yield path, value, schema
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, part in parts:
        yield from walk(part, child(schema, key), path + (key,))


def at(job, path):
    for key in path:
        job = job[key]
    return job


# What a schema cannot judge among the spoilt jobs: the size of a length that is told as a text, what order two values
# stand in, whether there is such a station, and where x ends up when its origin is gone.
BEYOND = {
    ("chord", "3mm"), ("thickness", "3mm"), ("width", "3mm"), ("overlap", "3mm"), ("gauge_spacing", "3mm"), ("ruler_reads", "3mm"),
    ("keep", "3mm"), ("keep", "70%"), ("down", "3mm"),
    ("centre_station", "qqqqqqqq"), ("centre_station", "70%"), ("centre_station", "3mm"),
    ("ahead", "3mm"), ("x_from", "left out"),
}

COMPLETE = load(TESTS, "schema", "complete.json")
SMALL = {"job": "Knot", "units": "mm", "stations": [
    {"name": "A", "down": 0, "ahead": 50, "chord": 400, "readings": [[0, 0, 0], [120, 24, 24], [400, 0.5, 0.5]]}]}


def parts_of_complete():
    """Small jobs that make up the complete one: quicker to judge, and one part's faults never hide another's."""
    for key, value in COMPLETE.items():
        if key == "stations":
            for station in value:
                yield {**SMALL, "stations": [station]}
        elif key != "centre_station":
            yield {**SMALL, key: value}
    yield {**SMALL, "centre_station": "A"}


def spoilt():
    """Jobs with one value left out, of another kind, too small or too large, and where."""
    for job in parts_of_complete():
        for path, value, _ in walk(job, SCHEMA):
            if not path:
                continue
            if job["stations"] == SMALL["stations"] and path[0] == "stations":
                continue
            others = [None, True, 1e9, -1e9, "qqqqqqqq", "", [], {}, [1], "70%", "3mm"]
            for other in others:
                if other == value and type(other) is type(value):
                    continue
                out = copy.deepcopy(job)
                at(out, path[:-1])[path[-1]] = other
                yield path, other, out
            if isinstance(path[-1], str):
                out = copy.deepcopy(job)
                del at(out, path[:-1])[path[-1]]
                yield path, "left out", out


class Schema(unittest.TestCase):
    maxDiff = None

    def test_is_a_schema(self):
        jsonschema.Draft7Validator.check_schema(SCHEMA)

    def test_everything_is_described(self):
        def look(schema, path):
            for key, one in schema.get("properties", {}).items():
                if "$ref" in one:
                    one = resolved(one)
                self.assertTrue(one.get("description") or one is True or path.startswith("if"), path + "." + key)
                look(one, path + "." + key)

        look(SCHEMA, "job")
        for name in ("target", "station", "coat", "filler", "cloth"):
            look(SCHEMA["definitions"][name], name)

    def test_takes_the_profiles(self):
        for name in ("whimbrel", "turnstone", "dunlin"):
            job = load(PROFILES, name, name + ".json")
            self.assertEqual([error.message for error in VALIDATOR.iter_errors(job)], [], name)
            named = os.path.join(PROFILES, name, job["$schema"])
            self.assertTrue(os.path.samefile(named, SCHEMA_FILE), name)

    def test_takes_a_file_of_write_job(self):
        for name in ("whimbrel", "turnstone", "dunlin"):
            text = subprocess.run([READ_JOBS, "--write", os.path.join(PROFILES, name, name + ".json")], capture_output=True, text=True, check=True).stdout
            for one in (text, re.sub(r"(?m)^( +)// ", r"\1", text)):  # as written, and with every default told
                self.assertEqual([error.message for error in VALIDATOR.iter_errors(parse(one))], [], name)

    def test_refused_jobs(self):
        """Rejected, or in the list of those that a schema cannot reject, with the reason."""
        beyond = {}
        with open(os.path.join(TESTS, "schema", "beyond.tsv"), encoding="utf-8") as file:
            for line in file:
                if not line.startswith("#"):
                    name, kind, why = line.rstrip("\n").split("\t")
                    self.assertTrue(why)
                    beyond[name] = kind
        found = {}
        for name in sorted(os.listdir(os.path.join(TESTS, "refused"))):
            if not name.endswith(".json"):
                continue
            try:
                job = load(TESTS, "refused", name)
            except (ValueError, RecursionError):
                found[name] = "syntax"
            else:
                if takes(job):
                    found[name] = "between values"
        self.assertEqual(found, beyond)

    def test_knows_the_readers_keys(self):
        """A key that nobody has: the reader then names all it knows there."""
        jobs, known = [], []
        for job in parts_of_complete():
            for path, value, schema in walk(job, SCHEMA):
                if isinstance(value, dict):
                    out = copy.deepcopy(job)
                    at(out, path)["qqqqqqqqqqqqqqqqqqqqqqqqqqqqqqqq"] = 1
                    jobs.append(out)
                    properties = [set(one["properties"]) for one in branches(schema) if "properties" in one]
                    known.append((path, properties[0]))
        self.assertGreater(len(jobs), 40)
        for (path, expected), faults in zip(known, faults_of(jobs)):
            told = [fault for fault in faults if "is not a key of" in fault]
            self.assertEqual(len(told), 1, (path, faults))
            names = set(re.findall(r'"([^"]+)"', told[0].split(": use ")[1]))
            self.assertEqual(names, expected, path)

    def test_mistyped_keys(self):
        """A key with a letter left out is answered with the key."""
        jobs, keys = [], []
        for job in parts_of_complete():
            for path, _, _ in walk(job, SCHEMA):
                if path and isinstance(path[-1], str) and len(path[-1]) > 5:
                    slip = path[-1][:len(path[-1]) // 2] + path[-1][len(path[-1]) // 2 + 1:]
                    out = copy.deepcopy(job)
                    at(out, path[:-1])[slip] = at(out, path[:-1]).pop(path[-1])
                    jobs.append(out)
                    keys.append((slip, path[-1]))
        self.assertGreater(len(jobs), 100)
        for (slip, key), faults in zip(keys, faults_of(jobs)):
            told = [fault for fault in faults if '"%s" is not a key of' % slip in fault]
            self.assertEqual(len(told), 1, (slip, faults))
            self.assertIn('did you mean "%s"' % key, told[0])

    def test_complete_job_has_every_key(self):
        used = {}
        for path, value, schema in walk(COMPLETE, SCHEMA):
            if isinstance(value, dict):
                for one in branches(schema):
                    if "properties" in one:
                        used.setdefault(id(one), [one, set()])[1].update(value)
        for one, keys in used.values():
            self.assertEqual(set(one["properties"]) - keys - {"readings_file"}, set())
        self.assertTrue(takes(COMPLETE))
        self.assertEqual(faults_of([COMPLETE]), [[]])

    def test_judges_as_the_reader_does(self):
        cases = list(spoilt())
        self.assertGreater(len(cases), 2000)
        wrong, between = [], set()
        for (path, other, job), faults in zip(cases, faults_of([job for _, _, job in cases])):
            if takes(job) and faults:
                key = path[-1] if isinstance(path[-1], str) else [part for part in path if isinstance(part, str)][-1]
                between.add((key, other))
            elif takes(job) != (not faults):
                wrong.append((path, other, faults))
        self.assertEqual(wrong, [])
        self.assertEqual(between, BEYOND)

    def test_ranges(self):
        """A number far out: the reader then names the range."""
        jobs, ranges = [], []
        for job in parts_of_complete():
            for path, value, schema in walk(job, SCHEMA):
                limits = [one for one in branches(schema) if "maximum" in one]
                if isinstance(value, bool) or isinstance(value, (dict, list)) or len(limits) != 1:
                    continue
                out = copy.deepcopy(job)
                at(out, path[:-1])[path[-1]] = 1e9
                jobs.append(out)
                ranges.append((path, limits[0]["minimum"], limits[0]["maximum"]))
        seen = 0
        for (path, low, high), faults in zip(ranges, faults_of(jobs)):
            for fault in faults:
                told = re.search(r"give a (number|length|whole number) from (\S+) to (\S+)( mm)?", fault)
                if not told or path[-1] in ("ahead", "trailing_edge_off_centre"):  # by the chord
                    continue
                if '"caliper"' in fault and path[-1] == 1:  # by "measured_by"
                    continue
                seen += 1
                least, most = float(told.group(2)), float(told.group(3))
                if told.group(1) == "length" and least > 0:
                    least /= 25.4  # a job in inches
                self.assertAlmostEqual(low, least, delta=0.01 * abs(least), msg=path)
                self.assertEqual(high, most, path)
        self.assertGreater(seen, 80)

    def test_words(self):
        """A word that nobody knows: the reader then names all it knows."""
        jobs, words = [], []
        for job in parts_of_complete():
            for path, _, schema in walk(job, SCHEMA):
                one = resolved(schema)
                if "enum" in one:
                    out = copy.deepcopy(job)
                    at(out, path[:-1])[path[-1]] = "qqqqqqqqqqqqqqqqqqqqqqqqqqqqqqqq"
                    jobs.append(out)
                    words.append((path, set(one["enum"])))
        self.assertGreater(len(jobs), 10)
        for (path, expected), faults in zip(words, faults_of(jobs)):
            self.assertEqual(set(re.findall(r'"([^"]+)"', faults[0].split(": use ")[1])), expected, path)

    def test_defaults(self):
        """A job that tells nothing, written with every default: the same as the schema has."""
        with tempfile.TemporaryDirectory() as folder:
            name = os.path.join(folder, "small.json")
            with open(name, "w", encoding="utf-8") as file:
                small = copy.deepcopy(SMALL)
                del small["units"]
                small["coats"] = [{"name": "cloth", "cloth": {"g_per_m2": 160}}, {"name": "paint", "dry_film_um": 60, "working_time": {"minutes": 9}}]
                small["nose_glass"] = {"cloth": {"g_per_m2": 160}}
                json.dump(small, file)
            text = subprocess.run([READ_JOBS, "--write", name], capture_output=True, text=True, check=True).stdout
        told = parse(re.sub(r"(?m)^( +)// ", r"\1", text))
        # Told elsewhere, or no one value: the top station; by the zone, the cloth, or what is stripped; no default at all.
        apart = {"centre_station", "powder_density", "powder_per_100_epoxy", "stage", "bare_percent", "end_plate", "coats"}
        seen = 0
        for path, value, schema in walk(told, SCHEMA):
            default = resolved(schema).get("default", None)
            if path and path[-1] in apart or default is None:
                original = small
                for key in path:
                    original = original[key] if isinstance(original, (dict, list)) and (isinstance(key, int) or key in original) else None
                if path and isinstance(path[-1], str) and path[-1] not in apart and not isinstance(value, (dict, list)):
                    self.assertEqual(original, value, path)  # a default that the schema does not have
                continue
            seen += 1
            self.assertEqual(value, default, path)
        self.assertGreater(seen, 45)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[4:])
