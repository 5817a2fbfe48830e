import pytest

from assessments.rules import BookRefused, Rule, SharedBook, SharedRule, Step, read_book, read_shared

SHARED = SharedBook(
    {
        "R21": SharedRule(
            "R21", "Right decision", "answer.decision == key.decision", "Both cost.", "iso-8502-4", "L24"
        ),
        "R41": SharedRule(
            "R41", "Never coats", "answer.decision != 'coat_now'", "Unsafe.", "iso-8502-4", None, "key.short"
        ),
    }
)
HEAD = 'code = "COA-01"\nversion = 1\n'
OWN = """[[rule]]
code = "COA-01.1"
sentence = "Dew point within half a degree"
test = "near(answer.dew_point, key.dew_point, 0.5)"
severity = "points"
points = 2
because = "A chart can be read that close."
lesson = "L24"
source = "practice"
"""
SOURCES = {"practice", "iso-8502-4"}


def read(text, sources=None):
    return read_book(text, "coa-01.toml", SHARED, sources)


def refused(text, reader=read):
    with pytest.raises(BookRefused) as refusal:
        reader(text)
    found = refusal.value
    assert str(found) == f"{found.file}, line {found.line}, {found.key}: {found.sentence}"
    return found.line, found.key, found.sentence


def test_a_book_is_read_whole():
    book = read(HEAD + OWN, SOURCES)
    assert (book.code, book.version, book.file, book.of) == ("COA-01", 1, "coa-01.toml", 2)
    assert book.rules == (
        Rule(
            "COA-01.1",
            "Dew point within half a degree",
            "points",
            2,
            "A chart can be read that close.",
            "practice",
            "L24",
            test="near(answer.dew_point, key.dew_point, 0.5)",
        ),
    )


def test_a_shared_rule_keeps_its_test_and_takes_the_books_weight():
    book = read(HEAD + '[[rule]]\nshared = "R21"\nseverity = "needed"\npoints = 4\n')
    assert book.rules == (
        Rule(
            "R21",
            "Right decision",
            "needed",
            4,
            "Both cost.",
            "iso-8502-4",
            "L24",
            test="answer.decision == key.decision",
        ),
    )


def test_a_shared_rule_may_be_given_an_own_reason_lesson_source_and_guard():
    text = HEAD + (
        '[[rule]]\nshared = "R41"\nseverity = "critical"\npoints = 5\nbecause = "Film gone."\n'
        'lesson = "L25"\nsource = "practice"\nwhen = "key.decision != \'coat_now\'"\n'
    )
    (rule,) = read(text).rules
    assert (rule.because, rule.lesson, rule.source) == ("Film gone.", "L25", "practice")
    assert rule.when == "key.decision != 'coat_now'"


def test_a_lesson_of_the_book_holds_for_rules_that_name_none():
    text = 'lesson = "L33"\n' + HEAD + OWN.replace('lesson = "L24"\n', "")
    assert read(text).rules[0].lesson == "L33"
    text = 'lesson = "L33"\n' + HEAD + '[[rule]]\nshared = "R41"\nseverity = "points"\npoints = 1\n'
    assert read(text).rules[0].lesson == "L33"


def test_points_by_steps_are_the_sum_of_the_steps():
    text = HEAD + OWN.replace("points = 2\n", "").replace("test = ", "steps = [[").replace(
        '0.5)"\n', '0.5)", 2],\n  ["answered(answer.dew_point)", 1.5]]\n'
    )
    (rule,) = read(text).rules
    assert rule.points == 3.5
    assert rule.steps == (
        Step("near(answer.dew_point, key.dew_point, 0.5)", 2),
        Step("answered(answer.dew_point)", 1.5),
    )
    assert [part.name for part in rule.parts] == ["steps[0]", "steps[1]"]


def test_points_by_share_keep_an_expression():
    (rule,) = read(HEAD + OWN.replace("test = ", "share = ")).rules
    assert (rule.test, rule.share) == (None, "near(answer.dew_point, key.dew_point, 0.5)")


REFUSALS = [
    ("code = \n", 1, "file", "This is no TOML: Invalid value."),
    ('code = "COA-01"\nversion = 1\nrule = [', 3, "file", "This is no TOML: Invalid value."),
    ('codee = "COA-01"', 1, "codee", "Nothing reads the key 'codee'; did you mean 'code'?"),
    ("version = 1\n" + OWN, 1, "code", "The code of the book is None; it has to look like COA-01."),
    ('version = 1\ncode = "COA-1"\n' + OWN, 2, "code", "The code of the book is 'COA-1'; it has to look like COA-01."),
    ('code = "COA-01"\nversion = true\n', 2, "version", "The version is True; it is a whole number from 1."),
    (HEAD, 1, "rule", "The book has no rules; each is a table [[rule]]."),
    (HEAD + "rule = 3", 3, "rule", "The book has no rules; each is a table [[rule]]."),
    (HEAD + 'lesson = "24"\n' + OWN, 3, "lesson", "The lesson is '24'; it has to look like L24."),
]
IN_RULE = [
    ('code = "COA-01.1"', 'code = "COA-02.1"', 4, "code", "The code is 'COA-02.1'; it has to look like COA-01.1."),
    ('code = "COA-01.1"', "", 3, "code", "The rule needs 'code', a text that is not empty."),
    ('sentence = "Dew', 'sentense = "Dew', 5, "sentense", "Nothing reads the key 'sentense'; did you mean 'sentence'?"),
    (
        'because = "A chart can be read that close."',
        'because = " "',
        9,
        "because",
        "The rule needs 'because', a text that is not empty.",
    ),
    (
        'severity = "points"',
        'severity = "critcal"',
        7,
        "severity",
        "'critcal' is no severity; there are critical, needed, points; did you mean 'critical'?",
    ),
    ("points = 2", "points = 0", 8, "points", "0 are no points; they are a number above 0, at most 100."),
    ("points = 2", "points = true", 8, "points", "True are no points; they are a number above 0, at most 100."),
    ("points = 2", "points = 101", 8, "points", "101 are no points; they are a number above 0, at most 100."),
    ("points = 2", "", 3, "points", "None are no points; they are a number above 0, at most 100."),
    ('lesson = "L24"', 'lesson = "24"', 10, "lesson", "The lesson is '24'; it has to look like L24."),
    (
        'source = "practice"',
        'source = "practise"',
        11,
        "source",
        "No source 'practise' is known; did you mean 'practice'?",
    ),
    ("test = ", "tests = ", 6, "tests", "Nothing reads the key 'tests'; did you mean 'test'?"),
    (
        'test = "near(answer.dew_point, key.dew_point, 0.5)"\n',
        "\n",
        3,
        "test",
        "A rule has one of test, steps and share; it has none.",
    ),
    (
        "points = 2",
        'points = 2\nshare = "1"',
        9,
        "share",
        "A rule has one of test, steps and share; it has test, share.",
    ),
    ("test = ", "steps = ", 6, "steps", 'Steps are a list of pairs, such as [["answer.ok", 2], ["answer.sure", 1]].'),
]


@pytest.mark.parametrize(("text", "line", "key", "said"), REFUSALS)
def test_a_broken_book_is_refused_with_line_and_key(text, line, key, said):
    assert refused(text) == (line, key, said)


@pytest.mark.parametrize(("old", "new", "line", "key", "said"), IN_RULE)
def test_a_broken_rule_is_refused_with_line_and_key(old, new, line, key, said):
    assert old in OWN
    assert refused(HEAD + OWN.replace(old, new), lambda text: read(text, SOURCES)) == (line, key, said)


@pytest.mark.parametrize("step", ["[]", '["a"]', '[["a"]]', '[["a", 1, 2]]', "[[1, 2]]", '[["a", 0]]'])
def test_steps_that_are_no_pairs_are_refused(step):
    text = HEAD + OWN.replace('test = "near(answer.dew_point, key.dew_point, 0.5)"', f"steps = {step}").replace(
        "points = 2\n", ""
    )
    assert refused(text)[:2] == (6, "steps")


def test_steps_bring_their_own_points():
    text = HEAD + OWN.replace('test = "near(answer.dew_point, key.dew_point, 0.5)"', 'steps = [["answer.ok", 1]]')
    assert refused(text) == (8, "points", "The points of a rule with steps are those of its steps; leave 'points' out.")


def test_a_critical_rule_is_met_or_not():
    text = HEAD + OWN.replace("test = ", "share = ").replace('"points"', '"critical"')
    assert refused(text)[2] == "A critical rule is met or not met; points in part belong to the other severities."


def test_a_shared_rule_nobody_wrote_is_refused():
    text = HEAD + '[[rule]]\nshared = "R22"\nseverity = "needed"\npoints = 4\n'
    assert refused(text) == (4, "shared", "There is no shared rule 'R22'; did you mean 'R21'?")


def test_a_shared_rule_keeps_its_own_test():
    text = HEAD + '[[rule]]\nshared = "R21"\ntest = "True"\nseverity = "needed"\npoints = 4\n'
    assert refused(text) == (5, "test", "Nothing reads the key 'test'.")


def test_a_code_stands_once():
    assert refused(HEAD + OWN + "\n" + OWN) == (
        14,
        "code",
        "COA-01.1 stands here a second time; codes are never used twice.",
    )


def test_a_book_is_no_larger_than_it_can_be_judged():
    assert refused(HEAD + "#" * 40_001)[2] == "The book has more than 40000 bytes."
    many = "".join(f'[[rule]]\nshared = "R{n}"\n' for n in range(121))
    assert refused(HEAD + many)[2] == "The book has more than 120 rules."


SHARED_RULE = """[[rule]]
code = "R21"
sentence = "Right decision"
test = "answer.decision == key.decision"
because = "Both cost."
lesson = "L24"
source = "iso-8502-4"
"""


def test_a_shared_book_is_read_whole():
    assert read_shared(SHARED_RULE, sources=SOURCES).rules == {"R21": SHARED.rules["R21"]}


@pytest.mark.parametrize(
    ("text", "line", "key"),
    [
        (SHARED_RULE + SHARED_RULE, 9, "code"),
        (SHARED_RULE.replace("R21", "COA-01.1"), 2, "code"),
        (SHARED_RULE + "points = 3", 8, "points"),
        ("version = 1\n" + SHARED_RULE, 1, "version"),
        (SHARED_RULE.replace('source = "iso-8502-4"', ""), 1, "source"),
    ],
)
def test_a_broken_shared_book_is_refused_with_line_and_key(text, line, key):
    assert refused(text, read_shared)[:2] == (line, key)


def test_sources_may_be_anything_that_can_be_asked():
    class Known:
        def __contains__(self, key):
            return False

    assert refused(HEAD + OWN, lambda text: read(text, Known()))[2] == "No source 'practice' is known."
