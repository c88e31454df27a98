"""Holds records against their chain without any code of ours, and in another language.

Reads a JSON list of the texts of record files from standard input and writes one verdict for each: the places of the
entries that do not fit, or "not-json".

Sources: RFC 8785 (canonical JSON; numbers as ECMAScript's Number::toString, names in the order of UTF-16 units),
FIPS 180-4 (SHA-256, by Python's hashlib). What an entry holds: src/log/chain/entry.ts.
"""

import hashlib
import json
import sys


def number(value):
    if value == 0:
        return "0"
    # repr gives the shortest digits that read back to the same double, as ECMAScript demands; only their layout differs.
    mantissa, _, exponent = repr(abs(float(value))).partition("e")
    whole, _, part = mantissa.partition(".")
    both = whole + part
    point = len(whole) + int(exponent or 0) - (len(both) - len(both.lstrip("0")))
    digits = both.strip("0")
    if len(digits) <= point <= 21:
        text = digits + "0" * (point - len(digits))
    elif 0 < point <= 21:
        text = digits[:point] + "." + digits[point:]
    elif -6 < point <= 0:
        text = "0." + "0" * -point + digits
    else:
        first, rest = digits[0], digits[1:]
        text = first + ("." + rest if rest else "") + "e" + ("+" if point > 0 else "-") + str(abs(point - 1))
    return ("-" if value < 0 else "") + text


def canonical(value):
    if value is None or isinstance(value, (bool, str)):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, (int, float)):
        return number(value)
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    names = sorted(value, key=lambda name: name.encode("utf-16-be"))
    return "{" + ",".join(canonical(name) + ":" + canonical(value[name]) for name in names) + "}"


def is_good(entry, place, prev, case_id):
    if not isinstance(entry, dict) or [entry.get("n"), entry.get("prev"), entry.get("caseId")] != [place, prev, case_id]:
        return False
    hashed = canonical({name: value for name, value in entry.items() if name != "hash"})
    return hashlib.sha256(hashed.encode("utf-8")).hexdigest() == entry.get("hash")


def verdict(text):
    try:
        record = json.loads(text)
    except ValueError:
        return "not-json"
    bad, prev = [], "0" * 64
    for place, entry in enumerate(record["entries"]):
        if not is_good(entry, place, prev, record["caseId"]):
            bad.append(place)
        prev = entry.get("hash") if isinstance(entry, dict) else None
    return bad


json.dump([verdict(text) for text in json.load(sys.stdin)], sys.stdout)
