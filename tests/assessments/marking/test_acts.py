"""Trials as rules read them, and acts with what comes after them."""

from assessments.marking.acts import NEVER, act_kind, bound_acts, bound_trials, trial_kind
from tests.assessments.answers.listing import ORDER, SPOTS


def test_acts_know_what_comes_next() -> None:
    steps = bound_acts(ORDER, [{"op": "wipe"}, {"op": "acid", "zone": "rest"}, {"op": "cut"}])
    assert [(one["next_chem"], one["next_abrade"]) for one in steps] == [(2, 3), (0, 3), (0, NEVER)]
    assert [one["covers"] for one in steps] == [["crack", "rest"], ["rest"], ["crack", "rest"]]


def test_the_log_comes_first_and_each_row_counts_what_it_changed() -> None:
    given = [{"op": "spot_cut", "sets": "2"}, {"op": "spot_sand", "sets": "2"}, {"op": "spot_sand", "grade": "P1000"}]
    rows = bound_trials(SPOTS, given)
    assert [(row["no"], row["op"], row["changes"]) for row in rows] == [
        (1, "spot_cut", 0),
        (2, "spot_cut", 1),
        (3, "spot_sand", 1),
        (4, "spot_sand", 2),
    ]
    assert rows[0]["sets"] == "1"
    assert "grade" not in rows[0]


def test_the_kinds_name_every_field_that_is_bound() -> None:
    act = act_kind(ORDER)["fields"]
    assert set(bound_acts(ORDER, [{"op": "lamp"}])[0]) == set(act)  # type: ignore[call-overload]
    trial = trial_kind(SPOTS)["fields"]
    assert set(bound_trials(SPOTS, [{"op": "spot_sand"}])[-1]) == set(trial)  # type: ignore[call-overload]
