"""Whoever writes as in another language is told the word of this one."""

import pytest


@pytest.mark.parametrize(
    ("rule", "part", "said", "instead"),
    [
        ("all(s.wet for s in answer.steps)", "all", "There is no function 'all'; did you mean 'every'?", "every"),
        ("min(s.um for s in answer.steps) > 3", "min", "There is no function 'min'; did you mean 'least'?", "least"),
        (
            "answer.steps.len > 3",
            "len",
            "A list has no fields, so no 'len'; write len(answer.steps).",
            "len(answer.steps)",
        ),
        (
            "answer.steps.wet",
            "wet",
            "A list has no fields, so no 'wet'; walk it, as in any(s.wet … for s in answer.steps).",
            None,
        ),
        ("answer.steps.qqq", "qqq", "A list has no fields, so no 'qqq'.", None),
        ("answer.sure == true", "true", "There is no name 'true'; write True.", "True"),
        (
            "answer.margin == null",
            "null",
            "There is no name 'null'; what is missing is asked for by not answered(…).",
            None,
        ),
        (
            "answer.decision == wait",
            "wait",
            "There is no name 'wait'; a word stands in quotes, 'wait'.",
            "'wait'",
        ),
        ("answer.decision == waiting", "waiting", "There is no name 'waiting'.", None),
        (
            "answer.margin is None",
            "answer.margin is None",
            "'is' is not part of the language; write not answered(answer.margin).",
            "not answered(answer.margin)",
        ),
        (
            "answer.margin is not None",
            "answer.margin is not None",
            "'is' is not part of the language; write answered(answer.margin).",
            "answered(answer.margin)",
        ),
        (
            "answer.decision == 'wait' or 'measure_again'",
            "'measure_again'",
            "'or' joins yes/no; this is a text; write answer.decision in ['wait', 'measure_again'].",
            None,
        ),
        ("answer.decision != 'wait' and 'x'", "'x'", "'and' joins yes/no; this is a text.", None),
        ("answer.sure or 'x'", "'x'", "'or' joins yes/no; this is a text.", None),
        ("answer.decision == key.decision or 'x'", "'x'", "'or' joins yes/no; this is a text.", None),
        (
            "answer.packs % 2 == 0",
            "%",
            "A per cent sign is not read; write the number alone, as in near_rel(a, b, 5).",
            None,
        ),
        ("answer.packs // 2 == 0", "//", "Write / to divide.", None),
        ("(answer.packs > 3) & (answer.sure)", "&", "Write and to join tests.", None),
        ("answer.packs @ 2 == 0", "@", "Of the arithmetic signs only + - * / are read.", None),
        (
            "'stays' in answer.note",
            "answer.note",
            "The right side of 'in' has to be a list; this is a text; words in a text are looked for by mentions().",
            None,
        ),
    ],
)
def test_the_word_to_write_instead_is_offered(found, rule, part, said, instead):
    assert found(rule) == [(part, said, instead)]


def test_what_an_unknown_function_is_called_with_is_read_all_the_same(found):
    assert [part for part, _, _ in found("naer(answer.stpes, key.qqq, 1)")] == ["naer", "stpes", "qqq"]
