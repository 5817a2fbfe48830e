"""What an answer travels in."""

from uuid import UUID, uuid4

import pytest
from django.http import QueryDict

from assessments import shipped
from assessments.forms.answers import read_envelope
from courses.trade.units import Preferences

KEY = str(uuid4())


def sent(**fields):
    data = QueryDict(mutable=True)
    for name, value in {"task": "dew_point", "client_key": KEY, "seen": "0", "value": "9.3", **fields}.items():
        data.setlist(name, value if isinstance(value, list) else [value])
    return read_envelope(data, shipped.scenario("COA-01@1"))


def test_an_envelope_is_opened_in_the_readers_units():
    given = sent(value="50", seen="3", unheard=[KEY]).opened(Preferences.us())
    assert (given.task, given.value, given.seen, given.client_key) == ("dew_point", 10.0, 3, UUID(KEY))
    assert given.unheard == {UUID(KEY)}


def test_none_of_these_stands_for_an_empty_list():
    assert sent(task="next_steps", value=[], none="1").opened(Preferences.us()).value == []
    assert sent(task="next_steps", value=[]).opened(Preferences.us()).value is None


@pytest.mark.parametrize(
    "crafted", [{"task": "x"}, {"client_key": "x"}, {"seen": "-1"}, {"seen": ""}, {"unheard": ["x"]}]
)
def test_what_no_page_sends_is_no_envelope(crafted):
    assert sent(**crafted) is None


STEPS = ["inspect", "record zone=crack", "tell"]


def acts(do, steps=STEPS, **picked):
    data = QueryDict(mutable=True)
    for name, value in {"task": "steps", "client_key": KEY, "seen": "0", "do": do, **picked}.items():
        data[name.replace("_", "-", 1)] = value
    for name in ("client_key",):
        data[name] = KEY
    data.setlist("value", steps)
    envelope = read_envelope(data, shipped.scenario("INS-04@1"))
    return [one["op"] for one in envelope.opened(Preferences.metric()).value]


def test_buttons_add_move_and_take_out_acts():
    assert acts("add", pick_op="cut", pick_zone="rest") == ["inspect", "record", "tell", "cut"]
    assert acts("up:3") == ["inspect", "tell", "record"]
    assert acts("down:1") == ["record", "inspect", "tell"]
    assert acts("out:2") == ["inspect", "tell"]
    assert acts("out:1", steps=["tell"]) == []


@pytest.mark.parametrize("do", ["add", "up:1", "down:3", "up:9", "out:x", "nonsense", "up:0"])
def test_a_button_that_leads_nowhere_changes_nothing(do):
    assert acts(do) == ["inspect", "record", "tell"]
