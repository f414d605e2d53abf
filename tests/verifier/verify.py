#!/usr/bin/env python3
"""Checks an exported job, or a store's folder, as docs/trail-format.md says. Written from that page alone.

    verify.py FILE-OR-FOLDER

Status 0: it holds. 1: it doesn't; the first thing that is wrong is said. 2: it can't be read.
Needs nothing but Python 3 and the openssl program, which checks the signatures.
"""

import base64
import binascii
import hashlib
import json
import os
import re
import subprocess
import sys
import tempfile

ZERO = "0" * 64
HEX = re.compile(r"[0-9a-f]{64}\Z")
TIME = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z\Z", re.ASCII)
OFFSET = re.compile(r"[+-]\d\d:\d\d\Z", re.ASCII)
JOB = re.compile(r"[a-z2-7]{26}\Z")
MARKS = ("opened", "signed off", "handed over", "closed out")
ENTRY = {"at", "bench", "book", "by", "ev", "n", "of", "off", "prev", "v"}
LONGEST = 8_388_608


class Wrong(Exception):
    """It doesn't hold."""


def require(truth, what):
    if not truth:
        raise Wrong(what)


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def canonical(value):
    """RFC 8785 for what can stand in a trail."""

    def ordered(item):
        if isinstance(item, dict):
            keys = sorted(item, key=lambda key: key.encode("utf-16-be"))
            return {key: ordered(item[key]) for key in keys}
        return [ordered(inner) for inner in item] if isinstance(item, list) else item

    text = json.dumps(ordered(value), ensure_ascii=False, separators=(",", ":"))
    return text.encode("utf-8")


def parse(data, where):
    """Canonical JSON: what is written again is the same bytes, which a key that stands twice isn't."""

    def number(_):
        raise Wrong(f"{where}: a number that isn't whole")

    try:
        value = json.loads(data.decode("utf-8"), parse_float=number, parse_constant=number)
        require(canonical(value) == data, f"{where}: not canonical JSON")
        return value
    except (ValueError, UnicodeError, RecursionError) as error:
        raise Wrong(f"{where}: not JSON ({error})") from None


def lines_of(data, where):
    require(data.endswith(b"\n"), f"{where}: the last line isn't whole")
    return data[:-1].split(b"\n")


def is_text(value):
    return isinstance(value, str)


def is_whole(value, least=0):
    return isinstance(value, int) and not isinstance(value, bool) and least <= value < 2**53


def is_digest(value):
    return is_text(value) and HEX.match(value) is not None


def read_entry(line, where):
    require(len(line) < LONGEST, f"{where}: too long")
    body, tab, digest = line.partition(b"\t")
    require(tab == b"\t" and b"\t" not in digest, f"{where}: not JSON, TAB, digest")
    require(sha256(body).encode() == digest, f"{where}: changed, its digest is another's")
    entry = parse(body, where)
    require(isinstance(entry, dict), f"{where}: not a map")
    keys = set(entry)
    require(ENTRY <= keys and keys <= ENTRY | {"mark", "opens"}, f"{where}: a key is missing or unknown")
    book = entry["book"]
    shaped = (
        entry["v"] == 1
        and is_whole(entry["n"], 1)
        and all(is_text(entry[key]) for key in ("at", "bench", "by", "of", "off", "prev"))
        and TIME.match(entry["at"])
        and OFFSET.match(entry["off"])
        and is_digest(entry["prev"])
        and isinstance(book, dict)
        and set(book) == {"n", "d"}
        and is_whole(book["n"])
        and is_digest(book["d"])
        and isinstance(entry["ev"], list)
        and all(isinstance(event, dict) for event in entry["ev"])
        and entry.get("mark", "opened") in MARKS
        and ("opens" not in entry or entry["n"] == 1)
    )
    require(shaped, f"{where}: a part has the wrong shape")
    entry["digest"] = digest.decode()
    return entry


def read_trail(lines, of, name):
    """A whole trail, from its first entry."""
    entries, previous, closed = [], ZERO, False
    for number, line in enumerate(lines, 1):
        where = f"{name}, entry {number}"
        entry = read_entry(line, where)
        require(not closed, f"{where}: stands after the one that closed the job out")
        require(entry["of"] == of, f"{where}: belongs to another trail")
        require(entry["n"] == number, f"{where}: has number {entry['n']}")
        require(entry["prev"] == previous, f"{where}: doesn't follow from the one before")
        if entries and entry["at"] < entries[-1]["at"]:
            print(f"{where}: dated before the one before; the clock was set back")
        previous, closed = entry["digest"], entry.get("mark") == "closed out"
        entries.append(entry)
    require(entries, f"{name}: empty")
    return entries


class OpenSsl:
    """ECDSA by the openssl program."""

    def __init__(self, folder):
        self.folder = folder
        self.count = 0

    def verify(self, key, signature, data):
        paths = [os.path.join(self.folder, name) for name in ("key.pem", "signature", "data")]
        try:
            der = base64.b64decode(signature, validate=True)
            base64.b64decode(key, validate=True)
        except (binascii.Error, ValueError, TypeError):
            return False
        pem = "-----BEGIN PUBLIC KEY-----\n" + "\n".join(re.findall(".{1,64}", key)) + "\n-----END PUBLIC KEY-----\n"
        for path, content in zip(paths, (pem.encode(), der, data)):
            with open(path, "wb") as file:
                file.write(content)
        call = ["openssl", "dgst", "-sha256", "-verify", paths[0], "-signature", paths[1], paths[2]]
        self.count += 1
        return subprocess.run(call, capture_output=True, check=False).returncode == 0


class People:
    """Who may sign, as the shop book gets on."""

    def __init__(self, openssl, is_excerpt):
        self.openssl = openssl
        self.is_excerpt = is_excerpt
        self.people = {}
        self.roots = []

    def take(self, event, previous, where):
        name = event.get("e")
        if name not in ("person added", "person changed", "pin reset", "first lead anew", "person left"):
            return
        who = event.get("id")
        by = event.get("by")
        require(is_text(who) and is_text(by), f"{where}: names nobody")
        person = dict(self.people.get(who, {}))
        if name in ("person added", "first lead anew"):
            require(who not in self.people, f"{where}: {who} is somebody already")
            person = {key: event.get(key) for key in ("id", "name", "role", "key")}
            person["left"] = False
        else:
            require(person, f"{where}: {who} is nobody")
        if name == "person changed":
            person.update(name=event.get("name"), role=event.get("role"))
        if name == "pin reset":
            person.update(key=event.get("key"))
        if name == "person left":
            person.update(left=True)
        lead = self.certifier(name, who, by, person, where)
        if name != "person left":
            text = canonical({key: person[key] for key in ("id", "key", "name", "role")})
            good = self.openssl.verify(lead["key"], event.get("certificate"), text)
            require(good, f"{where}: the key of {who} isn't certified by {by}")
        # Where the sealed key was left out, what was signed together with it can't be made again.
        if name != "person added" and not (self.is_excerpt and name in ("pin reset", "first lead anew")):
            act = {key: value for key, value in event.items() if key != "signature"}
            good = self.openssl.verify(lead["key"], event.get("signature"), canonical({"act": act, "book": previous}))
            require(good, f"{where}: {name} isn't signed by {by}")
        self.people[who] = person

    def certifier(self, name, who, by, person, where):
        if name == "first lead anew" or (name == "person added" and by == who):
            require(name == "first lead anew" or not self.roots, f"{where}: a second first lead")
            require(person["role"] == "lead" and is_text(person["key"]), f"{where}: the first lead is none")
            self.roots.append(sha256(base64.b64decode(person["key"])))
            return person
        lead = self.people.get(by)
        require(lead and lead["role"] == "lead" and not lead["left"], f"{where}: {by} is no lead")
        return lead


def marks_of(event):
    """Meaning and marks of an event that is signed; none for others."""
    name = event.get("e")
    meanings = {"job released": "released", "conceded": "conceded", "head scrapped": "scrapped"}
    if name == "signed off":
        return event.get("meaning"), [event.get("mark"), event.get("beside")]
    if name in meanings:
        return meanings[name], [event.get("mark"), event.get("beside")]
    return None, []


def check_marks(entry, people, openssl, where):
    for event in entry["ev"]:
        meaning, marks = marks_of(event)
        if meaning is None:
            continue
        name = event["e"]
        covers = event.get("covers")
        require(name != "job released" or covers == entry["prev"], f"{where}: the release covers something else")
        for place, mark in enumerate(marks):
            if mark is None and place == 1:
                continue
            require(isinstance(mark, dict), f"{where}: not signed")
            person = people.people.get(mark.get("person"))
            who = mark.get("person")
            require(person and not person["left"], f"{where}: signed by {who}, who is nobody then")
            require(person["name"] == mark.get("name"), f"{where}: {who} had another name")
            lead = name in ("conceded", "head scrapped") or place == 1
            require(not lead or person["role"] == "lead", f"{where}: {who} is no lead")
            trainee = place == 0 and person["role"] == "trainee"
            require(not trainee or marks[1] is not None, f"{where}: a trainee without a lead beside")
            if covers is None:
                print(f"{where}: an old {name}, which this program can't check")
                continue
            signed = {
                "covers": covers,
                "job": entry["of"],
                "meaning": meaning,
                "name": mark["name"],
                "person": who,
                "position": event.get("at"),
                "step": event.get("step"),
                "time": mark.get("time"),
            }
            require(all(is_text(value) for value in signed.values()), f"{where}: a mark's part is missing")
            good = openssl.verify(person["key"], mark.get("signature"), canonical(signed))
            require(good, f"{where}: the signature of {who} isn't good")


def check_anchors(book_events, job, trail):
    for event in book_events:
        if event.get("job") == job and event.get("e") in ("job anchored", "job closed out"):
            number, digest = event.get("n"), event.get("d")
            require(is_whole(number, 1) and number <= len(trail), f"the trail was cut short before entry {number}")
            require(trail[number - 1]["digest"] == digest, f"entry {number} isn't the one the shop book knows")
            last = event["e"] == "job closed out"
            require(not last or number == len(trail), f"something stands after entry {number}, the last")


def anchors_of(book, job):
    """For each entry of a job that is anchored, the number of the book's entry that does it."""
    anchoring = [(number, event) for number, event in book if event.get("job") == job]
    return {event.get("n"): number for number, event in reversed(anchoring) if is_whole(event.get("n"))}


def signed_trail(trail, book, anchors, people, openssl):
    """Walks the trail and, beside it, the book as far as it had got when each entry was written."""
    at = 0
    for entry in trail:
        seen = max(entry["book"]["n"], anchors.get(entry["n"], 0) - 1)
        while at < len(book) and book[at][0] <= seen:
            people.take(book[at][1], book[at][2], f"shop book, entry {book[at][0]}")
            at += 1
        check_marks(entry, people, openssl, f"entry {entry['n']}")
    for number, event, previous in book[at:]:
        people.take(event, previous, f"shop book, entry {number}")


def check_opening(first, texts):
    opens = first.get("opens")
    require(isinstance(opens, dict) and set(opens) == {"stamp", "texts"}, "entry 1 opens no job")
    for digest in opens["texts"]:
        require(digest in texts, f"the pinned text {digest} is missing or was changed")
    return opens["stamp"]


def person_line(line):
    value = parse(line, "a line about a person")
    require(isinstance(value, dict) and set(value) == {"person"}, "a line about a person has the wrong shape")
    person = value["person"]
    shaped = isinstance(person, dict) and set(person) == {"at", "d", "ev", "n", "prev"}
    shaped = shaped and is_whole(person["n"], 1) and is_digest(person["d"]) and is_digest(person["prev"])
    require(shaped and isinstance(person["ev"], dict), "a line about a person has the wrong shape")
    return person


def check_export(data, openssl):
    lines = lines_of(data, "the file")
    head = parse(lines[0], "the first line")
    keys = {"book", "export", "format", "job", "roots", "shop", "stamp"}
    require(isinstance(head, dict) and set(head) == keys, "the first line isn't an exported job's")
    require(head["export"] == "procrunner job" and head["format"] == 1, "the file is of another kind")
    require(is_text(head["job"]) and JOB.match(head["job"]), "the job has no id")
    require(is_whole(head["book"]), "the first line says no number of the shop book's lines")
    at, texts, persons = 1, set(), []
    while at < len(lines) and lines[at].startswith(b'{"text":'):
        value = parse(lines[at], "a pinned text")
        require(set(value) == {"text"} and is_text(value["text"]), "a pinned text has the wrong shape")
        texts.add(sha256(base64.b64decode(value["text"], validate=True)))
        at += 1
    while at < len(lines) and lines[at].startswith(b'{"person":'):
        persons.append(person_line(lines[at]))
        at += 1
    book, last = [], 0
    for line in lines[at : at + head["book"]]:
        entry = read_entry(line, f"the shop book's line after its entry {last}")
        require(entry["of"] == "shop" and entry["n"] > last, f"a line of the shop book after entry {last} is out of place")
        last = entry["n"]
        book.append(entry)
    at += len(book)
    trail = read_trail(lines[at:-1], head["job"], "the trail")
    end = parse(lines[-1], "the last line")
    body = data[: len(data) - len(lines[-1]) - 1]
    require(end == {"end": sha256(body)}, "the file was altered or cut short")
    require(check_opening(trail[0], texts) == head["stamp"], "entry 1 has another stamp")
    check_anchors([event for entry in book for event in entry["ev"]], head["job"], trail)
    known = {entry["n"]: entry["digest"] for entry in book}
    for person in persons:
        require(known.setdefault(person["n"], person["d"]) == person["d"], "the shop book's excerpt contradicts itself")
    for entry in trail:
        number = entry["book"]["n"]
        require(known.get(number, entry["book"]["d"]) == entry["book"]["d"], f"shop book, entry {number}: another one")
    order = [person["n"] for person in persons]
    require(order == sorted(order), "the lines about people are out of order")
    people = People(openssl, is_excerpt=True)
    anchors = anchors_of([(entry["n"], event) for entry in book for event in entry["ev"]], head["job"])
    signed_trail(trail, [(p["n"], p["ev"], p["prev"]) for p in persons], anchors, people, openssl)
    require(people.roots == head["roots"], "the certificates lead up to another key than the first line says")
    closed = trail[-1].get("mark") == "closed out"
    print(f"holds: {len(trail)} entries, {openssl.count} signatures, {'closed out' if closed else 'not closed out'}")
    print("certified up to: " + " ".join(people.roots))


def check_store(folder, openssl):
    def read(*parts):
        with open(os.path.join(folder, *parts), "rb") as file:
            return file.read()

    book = read_trail(lines_of(read("book.trail"), "the shop book"), "shop", "shop book")
    events = [(entry["n"], event, entry["prev"]) for entry in book for event in entry["ev"]]
    texts = {name for name in os.listdir(os.path.join(folder, "texts")) if sha256(read("texts", name)) == name}
    jobs = {event.get("job") for _, event, _ in events if event.get("e") == "job opened"}
    there = {name[:-6] for name in os.listdir(os.path.join(folder, "jobs")) if name.endswith(".trail")}
    for job in sorted(jobs | there):
        require(JOB.match(job), "a job has no id")
        require(job in there, f"the trail of {job} is missing")
        trail = read_trail(lines_of(read("jobs", job + ".trail"), job), job, job)
        check_opening(trail[0], texts)
        check_anchors([event for _, event, _ in events], job, trail)
        for entry in trail:
            number = entry["book"]["n"]
            good = number <= len(book) and (number == 0 or book[number - 1]["digest"] == entry["book"]["d"])
            require(good, f"shop book, entry {number}: missing, or another one")
        anchors = anchors_of([(number, event) for number, event, _ in events], job)
        signed_trail(trail, events, anchors, People(openssl, is_excerpt=False), openssl)
    print(f"holds: {len(book)} entries of the shop book, {len(there)} jobs, {openssl.count} signatures")


def main(arguments):
    if len(arguments) != 2:
        print(__doc__)
        return 2
    try:
        with tempfile.TemporaryDirectory() as folder:
            openssl = OpenSsl(folder)
            if os.path.isdir(arguments[1]):
                check_store(arguments[1], openssl)
            else:
                with open(arguments[1], "rb") as file:
                    check_export(file.read(), openssl)
        return 0
    except Wrong as wrong:
        print(f"IT DOESN'T HOLD. {wrong}")
        return 1
    except (ValueError, TypeError, KeyError, AttributeError) as error:
        print(f"IT DOESN'T HOLD. A part has the wrong shape: {error!r}")
        return 1
    except OSError as error:
        print(error)
        return 2


if __name__ == "__main__":
    sys.exit(main(sys.argv))
