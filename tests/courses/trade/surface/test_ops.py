"""The steps of a plan: every op of the doors, in its family."""

from courses.trade.surface.ops import CHEMISTRY, FAMILIES, OPS, POLISHING


def test_every_op_of_the_doors_stands_in_its_family() -> None:
    families = {family: [op.op for op in OPS.values() if op.family == family] for family in FAMILIES}
    assert families == {
        "look": ["test_spot", "inspect", "cure_test"],
        "clean": ["prerinse", "wash", "rinse", "flush_prove", "dry", "clay", "tape", "untape", "wipe"],
        "chem": list(CHEMISTRY),
        "abrade": ["sand", *POLISHING],
        "coat": ["coat"],
        "stop": ["wait", "record", "tell", "refer"],
    }


def test_each_has_words_of_its_own() -> None:
    assert len({op.words for op in OPS.values()}) == len(OPS) == 24
