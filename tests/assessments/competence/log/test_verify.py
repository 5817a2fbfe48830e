"""The check of the log, on rows as a database might hold them."""

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from assessments.competence.log.entry import START, Entry
from assessments.competence.log.head import Head, handover, sign
from assessments.competence.log.tree import grown, root_of
from assessments.competence.log.verify import Broken, RawEntry, RawHead, first_broken

AT = "2026-04-14T14:05:00.000000Z"
KEYS = {"k1": Ed25519PrivateKey.from_private_bytes(b"1" * 32), "k2": Ed25519PrivateKey.from_private_bytes(b"2" * 32)}
PUBLIC = {name: key.public_key() for name, key in KEYS.items()}


def log_of(streams, *, what=None, key="k1"):
    """Return a whole log: an entry in each of `streams`; `what` and `key` may differ by number."""
    last, peaks, pairs = {}, (), []
    for seq, stream in enumerate(streams, start=1):
        count, prev = last.get(stream, (0, START))
        said = (what or {}).get(seq, {"n": seq})
        entry = Entry(seq, stream, count + 1, "key" if "new" in said else "signed", AT, prev, said)
        peaks = grown(seq - 1, peaks, bytes.fromhex(entry.hash))
        last[stream] = (count + 1, entry.hash)
        pairs.append((raw(entry), head_of(peaks, seq, key if isinstance(key, str) else key[seq - 1])))
    return pairs


def raw(entry):
    place = (str(entry.seq), entry.stream, str(entry.stream_seq), entry.kind)
    return RawEntry(*place, entry.body, entry.hash, entry.prev, "2026-04-14 14:05:00")


def head_of(peaks, size, key):
    root = root_of(peaks).hex()
    signature = Head(size, root, AT, key).signed_by(KEYS[key])
    return RawHead(str(size), root, " ".join(one.hex() for one in peaks), "2026-04-14 14:05:00", key, signature)


@pytest.fixture
def good():
    return log_of(["a", "b", "a", "a", "b", "c", "a"])


def broken(pairs, kept=None):
    return first_broken(pairs, PUBLIC, kept).broken


def test_a_whole_log_is_whole(good):
    found = first_broken(iter(good), PUBLIC)
    assert (found.entries, found.heads, found.broken) == (7, 7, None)
    assert first_broken([], PUBLIC).broken is None


@pytest.mark.parametrize(
    ("column", "value", "words"),
    [
        ("stream", "z", "The column stream is 'z', where its body comes to 'a'."),
        ("stream_seq", "9", "The column stream_seq is '9', where its body comes to '2'."),
        ("kind", "withdrawn", "The column kind is 'withdrawn', where its body comes to 'signed'."),
        ("body", "", "Its body is not that of an entry. It can't be read: "),
        ("body", "\udcff", "Its body is not that of an entry. It can't be read: "),
        ("leaf_hash", "ab", "The column leaf_hash is 'ab', where its body comes to "),
        ("prev_hash", "0" * 64, "The column prev_hash is '0000"),
        ("created_at", "2026-04-14 14:05:01", "The column created_at is '2026-04-14T14:05:01.000000Z', where"),
        ("created_at", "yesterday", "created_at can't be read: 'yesterday' is no moment"),
    ],
)
def test_a_column_that_was_changed_is_named(good, column, value, words):
    row, head = good[2]
    good[2] = (row._replace(**{column: value}), head)
    found = broken(good)
    assert (found.stream, found.seq, found.why[: len(words)]) == ("a", 3, words)


@pytest.mark.parametrize(
    ("column", "value", "words"),
    [
        ("root", "ab" * 32, "Its root is not what the 3 entries come to"),
        ("peaks", "", "Its peaks are not what the 3 entries come to."),
        ("signed_at", "2026-04-14 14:05:01", "The signature is not that of the key k1 over this head."),
        ("signed_at", "soon", "signed_at can't be read: 'soon' is no moment"),
        ("key_id", "k9", "It is signed by the key k9, whose public half is not among the keys."),
        ("key_id", "k2", "It is signed by the key k2; k1 signs here, and no entry hands over from it."),
        ("signature", "00" * 64, "The signature is not that of the key k1 over this head."),
    ],
)
def test_a_head_that_was_changed_is_named(good, column, value, words):
    row, head = good[2]
    good[2] = (row, head._replace(**{column: value}))
    found = broken(good)
    assert (found.stream, found.seq, found.why[: len(words)]) == ("heads", 3, words)


def test_an_entry_that_was_taken_out_is_missed_in_its_stream(good):
    head = good.pop(4)[1]
    found = broken([*good, (None, head)])
    assert found == Broken("", 5, "Entry 5 is missing: 6 follows 4.")
    again = log_of(["a", "b", "a", "a", "b", "c", "b"])
    assert broken([*again[:4], *again[5:]]) == Broken("b", 5, "Entry 5 is missing: 6 follows 4.")


def test_an_entry_that_was_moved_is_named(good):
    row, head = good.pop(2)
    found = broken([*good, (row._replace(seq="99"), None), (None, head)])
    assert (found.stream, found.seq) == ("a", 3)


def test_the_last_entry_taken_away_leaves_its_head(good):
    head = good.pop()[1]
    assert broken([*good, (None, head)]) == Broken("heads", 7, "There is a head for 7 entries, and no entry 7.")


def test_an_entry_without_a_head_is_named(good):
    good[6] = (good[6][0], None)
    assert broken(good) == Broken("heads", 7, "There is no signed head for 7 entries.")


def test_an_entry_that_was_written_anew_with_its_hash_is_caught_by_the_heads(good):
    row, head = good[6]
    entry = Entry.of(row.body)
    forged = Entry(entry.seq, entry.stream, entry.stream_seq, entry.kind, entry.at, entry.prev, {"n": 8})
    good[6] = (raw(forged), head)
    found = broken(good)
    assert (found.stream, found.seq) == ("heads", 7)
    assert found.why.startswith("Its root is not what the 7 entries come to")


def test_two_entries_that_changed_places_are_found(good):
    pairs = log_of(["a", "a", "a"])
    other = log_of(["a", "a", "a"], what={1: {"n": 5}})
    found = broken([other[0], *pairs[1:]])
    assert (found.stream, found.seq) == ("a", 2)
    assert found.why == "It doesn't follow the entry before it in its stream: prev is another hash."


def test_a_stream_that_skips_a_number_is_found():
    entry = Entry(1, "a", 2, "signed", AT, START, {})
    found = broken([(raw(entry), None)])
    assert found == Broken("a", 1, "It is number 2 of its stream; number 1 comes next.")


def kept_head(pairs, size):
    return Head(size, pairs[size - 1][1].root, AT, "k1")


def test_a_head_that_was_kept_fits_the_log_it_is_of(good):
    assert broken(good, kept_head(good, 4)) is None


def test_a_log_that_was_written_anew_with_the_key_is_caught_by_a_head_that_was_kept(good):
    anew = log_of(["a", "b", "a", "a", "b", "c", "a"], what={3: {"n": 99}})
    assert broken(anew) is None
    found = broken(anew, kept_head(good, 4))
    assert (found.stream, found.seq) == ("heads", 4)
    assert found.why.startswith("The head that was kept has another root for 4 entries")


def test_a_log_that_was_cut_off_is_caught_by_a_head_that_was_kept(good):
    assert broken(good[:5]) is None
    found = broken(good[:5], kept_head(good, 7))
    assert (found.stream, found.seq) == ("heads", 7)
    assert found.why.startswith("The head that was kept covers 7 entries; the log has 5.")


def rotation(**other):
    public = PUBLIC["k2"].public_bytes_raw().hex()
    text = handover("k1", "k2", public)
    signed = {"by_old": sign(KEYS["k1"], text), "by_new": sign(KEYS["k2"], text)}
    return {"old": "k1", "new": "k2", "public": public, **signed, **other}


def test_a_key_that_was_handed_over_signs_from_there_on():
    pairs = log_of(["a", "school", "a"], what={2: rotation()}, key=["k1", "k2", "k2"])
    assert broken(pairs) is None


@pytest.mark.parametrize(
    ("other", "words"),
    [
        ({"old": "k9"}, "The entry hands over from k9 to k2; the heads, from k1 to k2."),
        ({"public": "ab"}, "The public half of the key k2 is not the one this entry names."),
        ({"by_old": "00" * 64}, "The handover is not signed by the key k1."),
        ({"by_new": "00" * 64}, "The handover is not signed by the key k2."),
    ],
)
def test_a_handover_with_a_fault_is_named(other, words):
    pairs = log_of(["a", "school", "a"], what={2: rotation(**other)}, key=["k1", "k2", "k2"])
    assert broken(pairs) == Broken("heads", 2, words)
