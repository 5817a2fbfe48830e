"""A scenario file: read whole, or refused with file, line and key."""

import pytest

from assessments.scenarios.reader import read_scenario
from assessments.scenarios.spec import Scenario
from courses.content.errors import FileRefused


def test_the_shipped_file_is_what_the_curriculum_says(coa_01: Scenario) -> None:
    assert (coa_01.code, coa_01.version, coa_01.level, coa_01.elements, coa_01.minutes) == (
        "COA-01",
        1,
        "working",
        ("COA2",),
        12,
    )
    assert coa_01.jurisdictions == ("us", "uk", "eu")
    assert {kind.name: kind.weight for kind in coa_01.kinds} == {
        "coat_now": 4,
        "no_probe": 3,
        "old_probe": 2,
        "in_doubt": 3,
        "warm_the_panel": 4,
        "wait": 4,
    }
    assert [(task.id, task.kind, task.unit) for task in coa_01.tasks] == [
        ("dew_point", "quantity", "degc"),
        ("margin", "quantity", "K"),
        ("decision", "choice", ""),
        ("next_steps", "many", ""),
        ("why", "text", ""),
    ]
    assert len(coa_01.tasks[3].options) == 14


def changed(text: str, before: str, after: str) -> str:
    assert before in text, before
    return text.replace(before, after, 1)


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        ('code = "COA-01"', 'code = "COA1"', "line 4, code: 'COA1' isn't a scenario code such as COA-01"),
        ("version = 1", "version = 0", "line 5, version: 0 is outside 1 to 999"),
        ('level = "working"', 'level = "wrking"', "level: 'wrking' isn't known here; did you mean working?"),
        ('["us", "uk", "eu"]', '["us", "ukk"]', "jurisdictions: 'ukk' isn't known here; did you mean uk"),
        ("minutes = 12", "minuts = 12", "minuts: 'minuts' isn't known here; did you mean minutes?"),
        ("minutes = 12", "minutes = 12\nminuts = 3", "minuts: 'minuts' isn't known here; did you mean minutes"),
        ("{now_h}. A closed", "{now}. A closed", r"story\[1\].sentence\[1\].text: no value is called 'now'; did you"),
        ('given = "probe_degc"', 'given = "prob_degc"', "given: 'prob_degc' isn't known here; did you mean probe_degc"),
        ("where = { trend =", "where = { trends =", "where.trends: 'trends' isn't known here; did you mean trend"),
        ("{4.2 K}", "{4.2 kelvins}", "no value is called '4.2 kelvins'; only a fixed quantity such as {4.2 K}"),
        ('name = "shuts_h"', 'name = "now_h"', ".name: 'now_h' stands above already"),
        ('name = "short"', 'name = "margin"', ".name: 'margin' stands above already"),
        ('name = "everything ticked"', 'name = "no next step at all"', ".name: 'no next step at all' stands above"),
        ("weight = 4", "weight = 0", r"draw.kinds.coat_now.weight: should be above 0, not 0"),
        ("{ from = 12, to = 22, step = 0.1 }", "{ from = 12, to = 2, step = 0.1 }", "air_degc: a range runs upward"),
        (
            "{ from = 12, to = 22, step = 0.1 }",
            "{ from = 12, too = 22, step = 0.1 }",
            "air_degc.too: 'too' isn't known here; did you mean to?",
        ),
        ("[draw.kinds.coat_now]", "[draw.kins.coat_now]", "'kins' isn't known here; did you mean kinds"),
        ("[[clear_of]]\nlimit", "[[clear_of]]\nlimits", "limits: 'limits' isn't known here; did you mean limit?"),
    ],
)
def test_a_broken_file_is_refused_at_its_line(coa_01_text: str, before: str, after: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says.replace("?", r"\?")) as refused:
        read_scenario(changed(coa_01_text, before, after), "coa.toml")
    assert str(refused.value).startswith("coa.toml, line ")
    assert str(refused.value).count("coa.toml") == 1


def test_the_line_is_where_it_says(coa_01_text: str) -> None:
    broken = changed(coa_01_text, 'kind = "many"', 'kind = "mny"')
    line = 1 + broken[: broken.index('kind = "mny"')].count("\n")
    with pytest.raises(FileRefused, match=rf"coa.toml, line {line}, tasks\[4\].kind: 'mny' isn't known here; did you"):
        read_scenario(broken, "coa.toml")


def test_a_file_without_kinds_or_safest_exemplar_is_refused(coa_01_text: str) -> None:
    head, tail = coa_01_text.split("[draw.kinds.coat_now]")[0], coa_01_text.split("# What every draw keeps away")[1]
    with pytest.raises(FileRefused, match="draw.kinds: at least one kind of draw is needed"):
        read_scenario(head + "# " + tail, "coa.toml")
    with pytest.raises(FileRefused, match="exemplars: at least one exemplar has to be 'safest'"):
        read_scenario(coa_01_text.replace("safest = true\n", ""), "coa.toml")


def test_where_it_holds_is_everywhere_unless_said(coa_01_text: str) -> None:
    read = read_scenario(changed(coa_01_text, 'jurisdictions = ["us", "uk", "eu"]\n', ""), "coa.toml")
    assert read.jurisdictions == ("us", "uk", "eu")


def test_a_gauge_draws_a_value_of_the_key_against_its_limit(coa_01: Scenario) -> None:
    (gauge,) = coa_01.gauges
    assert (gauge.value, gauge.limit, gauge.sense) == ("margin", 3.0, "at_least")
    assert gauge.low <= gauge.limit <= gauge.high


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        (
            'value = "margin"',
            'value = "decision"',
            r"gauges\[1\].value: 'decision' isn't known here; there are dew_point",
        ),
        ('sense = "at_least"', 'sense = "at least"', "sense: 'at least' isn't known here; did you mean at_least"),
    ],
)
def test_a_gauge_that_cant_be_drawn_is_refused(coa_01_text: str, before: str, after: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says):
        read_scenario(changed(coa_01_text, before, after), "coa.toml")


def test_a_gauge_whose_limit_lies_outside_is_refused(coa_01_text: str) -> None:
    head, tail = coa_01_text.split("[[gauges]]")
    with pytest.raises(FileRefused, match="limit: should lie between low"):
        read_scenario(f"{head}[[gauges]]{tail.replace('limit = 3', 'limit = 300', 1)}", "coa.toml")
