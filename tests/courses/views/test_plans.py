"""The page *Try a plan*: a panel, a plan, what follows, two plans, a link that holds them, pictures on a press."""

import re
from urllib.parse import urlencode

import pytest
from django.urls import reverse

from courses.darkroom import Darkroom
from courses.models import HungPicture

pytestmark = pytest.mark.django_db
URL = "/try-a-plan/"
MILD = "wash;tape;test_spot;cut;wipe;refine;wipe;finish;wipe;inspect"
SHORT = "wash;finish"
OWN = {
    "panel": "own",
    "substrate": "clear_coat",
    "colour": "navy",
    "film": "48 um",
    "mark1": "swirl",
    "depth1": "0.8 um",
}


@pytest.fixture(autouse=True)
def rendered(settings, tmp_path):
    """The folder of this test's pictures."""
    settings.PICTURES_ROOT = tmp_path / "pictures"
    return settings.PICTURES_ROOT


@pytest.fixture
def learner(client, outsider):
    """A client of somebody who is signed in."""
    client.force_login(outsider)
    return client


def link(plan=None, beside=None, **panel):
    """Return the address of a panel and what is tried on it."""
    given = panel or {"panel": "mild_chalk", "number": "3"}
    plans = {name: text for name, text in (("plan", plan), ("beside", beside)) if text is not None}
    return f"{URL}?{urlencode({**given, **plans})}"


def opened(client, address):
    """Return the page at an address, led on to the link as it is written."""
    answer = client.get(address, follow=True)
    assert answer.status_code == 200
    return answer


def words(answer):
    """Return what a page says, its tags left out."""
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", answer.content.decode())).replace("\xa0", " ")


def pictures(answer):
    """Return the address of every picture on a page."""
    return re.findall(r'src="(/pictures/[\w-]{32}/\d+\.webp)"', answer.content.decode())


def test_who_isnt_signed_in_is_led_to_sign_in(client, school):
    for answer in (client.get(link(MILD)), client.post(link(MILD))):
        assert (answer.status_code, answer.url.split("?")[0]) == (302, reverse("account_login"))


def test_everybody_of_the_school_may_try(client, outsider, instructor):
    for person in (outsider, instructor):
        client.force_login(person)
        assert client.get(URL).status_code == 200


def test_at_first_a_panel_waits_for_a_plan(learner):
    answer = learner.get(URL)
    assert "Mild chalk, panel 1" in words(answer)
    assert answer.context["worked"] == []
    assert "Before and after" not in words(answer)


@pytest.mark.parametrize("kind", ["mild_chalk", "heavy_chalk", "thin_clear", "deep_scratch", "mineral_spots", "crack"])
def test_a_plan_is_worked_on_every_kind_of_panel(learner, kind):
    answer = opened(learner, link(MILD, panel=kind, number="2"))
    (done,) = answer.context["worked"]
    assert str(done.look.words) in words(answer)
    assert done.headline.replace("\xa0", " ") in words(answer)
    assert len(done.facts) == 14


def test_another_panel_of_the_kind_keeps_the_plan(learner):
    page = opened(learner, link(MILD))
    after = opened(learner, URL + page.context["panel"]["another"])
    assert "Mild chalk, panel 4" in words(after)
    assert after.context["trial"].plan == page.context["trial"].plan


def test_a_link_comes_back_as_it_was_written(learner):
    answer = opened(learner, link(MILD, SHORT))
    query = answer.context["query"]
    assert query == f"?panel=mild_chalk&number=3&plan={MILD}&beside={SHORT}&light=diffuse"
    again = learner.get(URL + query)
    assert (again.status_code, again.context["query"]) == (200, query)


def test_figures_of_ones_own_travel_in_the_link_with_their_unit(learner, outsider):
    outsider.film = "mil"
    outsider.save()
    answer = opened(learner, link(SHORT, **{**OWN, "film": "1.9", "reserve": ""}))
    assert "film=48.26+um" in answer.context["query"]
    assert [one for label, one in answer.context["panel"]["facts"] if label == "On it"] == ["Swirl marks, 0.8 model µm"]
    again = learner.get(URL + answer.context["query"])
    assert (again.status_code, again.context["query"]) == (200, answer.context["query"])


def test_a_plan_written_line_by_line_becomes_a_link(learner):
    answer = learner.get(link("wash\r\n sand  grade=P1500 \r\n\r\nfinish"))
    assert (answer.status_code, answer.url) == (
        302,
        "?panel=mild_chalk&number=3&plan=wash;sand+grade=P1500;finish&light=diffuse",
    )


def test_an_empty_plan_is_a_plan_that_leaves_everything(learner):
    (done,) = opened(learner, link("")).context["worked"]
    assert done.look.words == "To be done again"


REFUSED = {
    "no such step": ("wash;sandd grade=P1500", "plan"),
    "no such grade": ("sand grade=P1501", "plan"),
    "a grade of another scale": ("sand grade=600", "plan"),
    "too many passes": ("sand grade=P1500 passes=400", "plan"),
    "more steps than forty": (";".join(["wipe"] * 41), "plan"),
    "a speed that no rotary turns": ("cut speeds_rpm=99000", "plan"),
    "a setting that the step doesn't take": ("wash grade=P1500", "plan"),
    "no setting": ("sand P1500", "plan"),
    "no number": ("sand passes=many", "plan"),
    "not a number": ("sand force_n=nan", "plan"),
    "endless": ("wash;" * 1200, "plan"),
    "a null": ("wash\x00", "plan"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_a_plan_that_cant_be_worked_is_refused_at_its_field(learner, rendered, name):
    plan, field = REFUSED[name]
    answer = opened(learner, link(plan))
    assert list(answer.context["form"].errors) == [field]
    said = answer.context["form"].errors[field][0]
    assert said[-1] in ".?"
    assert 'class="invalid-feedback"' in answer.content.decode()
    assert answer.context["worked"] == []
    assert learner.post(link(plan)).status_code == 200
    assert (HungPicture.objects.count(), rendered.exists()) == (0, False)


def test_a_plan_beside_that_cant_be_worked_is_said_too(learner):
    answer = opened(learner, link(SHORT, "sandd"))
    assert "sandd" in answer.context["form"].errors["beside"][0]
    assert "The plan beside it. Step 1: " in words(answer)


FORGED = {
    "no such kind": ({"panel": "my_yacht"}, "panel"),
    "a number beyond": ({"panel": "mild_chalk", "number": "10000000"}, "number"),
    "no number": ({"panel": "mild_chalk", "number": "' OR 1"}, "number"),
    "no such substrate": ({**OWN, "substrate": "wood"}, "substrate"),
    "no such colour": ({**OWN, "colour": "#12345"}, "colour"),
    "no film": ({**OWN, "film": "0 um"}, "film"),
    "film that is no number": ({**OWN, "film": "NaN"}, "film"),
    "a depth that no swirl has": ({**OWN, "depth1": "30 um"}, "depth1"),
    "chalk without a depth": ({**OWN, "mark2": "oxidation"}, "depth2"),
    "no such mark": ({**OWN, "mark3": "ding"}, "mark3"),
    "no such light": ({"panel": "mild_chalk", "light": "sun"}, "light"),
}


@pytest.mark.parametrize("name", FORGED)
def test_a_panel_that_cant_be_is_refused_at_its_field(learner, rendered, name):
    panel, field = FORGED[name]
    answer = opened(learner, link(SHORT, **panel))
    errors = answer.context["form"].errors
    assert list(errors) == [field]
    assert errors[field][0].endswith(".")
    assert answer.context["worked"] == []
    assert learner.post(link(SHORT, **panel)).status_code == 200
    assert (HungPicture.objects.count(), rendered.exists()) == (0, False)


def test_two_plans_stand_side_by_side_and_their_differences_are_named(learner):
    answer = opened(learner, link(MILD, SHORT))
    assert [one.name for one in answer.context["worked"]] == ["This plan", "The plan beside it"]
    said = answer.context["differences"]
    assert any(line.startswith("Verdict: ") for line in said)
    assert any(line.startswith("Film taken: ") and " more (" in line for line in said)
    assert any(line.startswith("Only in this plan: ") and "2. Tape the edges" in line for line in said)
    swapped = opened(learner, URL + answer.context["beside"]["swap"])
    assert swapped.context["trial"].plan == tuple(SHORT.split(";"))
    alone = opened(learner, URL + answer.context["beside"]["drop"])
    assert len(alone.context["worked"]) == 1


def test_the_same_plan_twice_differs_in_nothing(learner):
    answer = opened(learner, link(MILD, MILD))
    assert answer.context["differences"] == ["Nothing: both come to the same."]


def test_looking_at_a_plan_hangs_and_renders_nothing(learner, rendered):
    answer = opened(learner, link(MILD))
    assert pictures(answer) == []
    assert (HungPicture.objects.count(), rendered.exists()) == (0, False)


def test_a_press_shows_the_panel_before_and_after(learner):
    opened(learner, link(MILD))
    answer = learner.post(link(MILD), {"light": "raking"})
    assert (answer.status_code, answer.url.split("&")[-1]) == (302, "light=raking")
    page = opened(learner, URL + answer.url)
    assert [one.caption for one in page.context["frame"].all] == ["Before", "After: this plan"]
    assert len(set(pictures(page))) == 6
    assert {row.purpose for row in HungPicture.objects.all()} == {"tried"}
    first, last = HungPicture.objects.order_by("pk")
    assert first.scene["removed_um"] == 0
    assert last.scene["removed_um"] > 3
    assert last.scene["removed_um"] % 0.5 == 0


def test_two_plans_are_pictured_beside_the_panel_before(learner):
    answer = learner.post(link(MILD, SHORT), {"light": "diffuse"}, follow=True)
    captions = [one.caption for one in answer.context["frame"].all]
    assert captions == ["Before", "After: this plan", "After: the plan beside it"]


def test_six_presses_a_minute_are_answered_and_no_more(learner, instructor, client):
    answers = [learner.post(link(MILD, panel="mild_chalk", number=str(n))).status_code for n in range(1, 7)]
    assert answers == [302] * 6
    hung = HungPicture.objects.count()
    late = learner.post(link(MILD, panel="mild_chalk", number="7"))
    assert late.status_code == 429
    assert "Wait a moment, then ask again." in words(late)
    assert pictures(late) == []
    assert HungPicture.objects.count() == hung
    client.force_login(instructor)
    assert client.post(link(MILD)).status_code == 302


def test_a_light_that_isnt_there_leaves_the_one_of_the_panel(learner):
    assert learner.post(link(MILD), {"light": "sun"}).url.endswith("light=diffuse")


def test_pictures_are_never_made_by_the_page_itself(learner, monkeypatch):
    def refuse(*args, **more):
        raise AssertionError("the page rendered a picture")

    monkeypatch.setattr(Darkroom, "picture", refuse)
    assert learner.post(link(MILD), follow=True).status_code == 200


@pytest.mark.parametrize("tried", [(None, None, 5), (SHORT, None, 6), (MILD, SHORT, 6), (MILD, MILD, 6)])
def test_the_page_asks_the_database_as_often_whatever_is_tried(learner, django_assert_num_queries, tried):
    plan, beside, times = tried
    address = URL + (opened(learner, link(plan, beside)).context["query"])
    with django_assert_num_queries(times):
        learner.get(address)


def test_the_link_of_forty_full_steps_is_a_few_kilobytes(learner):
    step = "refine pad=foam_finish compound=ultrafine machine=rotary speeds_rpm=900,1500,1800 zone=main"
    answer = opened(learner, link(";".join([step] * 40)))
    assert not answer.context["form"].errors
    assert len(answer.context["query"]) < 5000


def test_calculators_and_lessons_lead_to_it(learner):
    for name in ("sum-list", "lesson-list"):
        assert f'href="{URL}"' in learner.get(reverse(name)).content.decode()


def pressed(client, steps, do, **picked):
    """Return the page after a button of the list was pressed without script."""
    query = {"panel": "mild_chalk", "number": "3", "plan": "", "value": steps, "do": do}
    query |= {f"pick-{name}": value for name, value in picked.items()}
    return opened(client, f"{URL}?{urlencode(query, doseq=True)}")


def test_the_list_works_without_script(learner):
    opens = pressed(learner, ["wash"], "add", op="sand")
    assert opens.context["steps"]["picked"] == "sand"
    assert 'name="pick-grade"' in opens.content.decode()
    added = pressed(learner, ["wash"], "add", op="sand", grade="P1500", passes="4", zone="edge")
    assert added.context["trial"].plan[1].startswith("sand grade=P1500")
    assert "zone=edge" in added.context["trial"].plan[1]
    assert len(added.context["worked"]) == 1
    for do, plan in (("up:2", ("wipe", "wash")), ("twice:1", ("wash", "wash", "wipe")), ("out:1", ("wipe",))):
        assert pressed(learner, ["wash", "wipe"], do).context["trial"].plan == plan


def test_changing_a_step_opens_it_and_works_nothing(learner):
    answer = pressed(learner, ["wash", "sand grade=P1500 passes=4"], "change:2")
    assert (answer.context["steps"]["changing"], answer.context["worked"]) == (2, [])
    assert "Mild chalk, panel 3" in words(answer)
    kept = pressed(learner, ["wash", "sand grade=P1500 passes=4"], "put:2", op="sand", grade="P1000", passes="3")
    assert kept.context["trial"].plan[1].startswith("sand grade=P1000 ")


def test_a_button_that_nobody_made_changes_nothing(learner):
    for do in ("out:9", "up:-1", "blow up", "put:1", "twice:x", "change:7", "up:²", f"out:{'9' * 5000}", "change:²"):
        assert pressed(learner, ["wash"], do).context["trial"].plan == ("wash",)


def test_nothing_in_the_list_is_an_empty_plan(learner):
    answer = opened(learner, f"{URL}?panel=mild_chalk&number=3&plan=")
    assert answer.context["trial"].plan == ()


def test_only_a_panel_with_an_edge_offers_its_edge(learner):
    edge = '<option value="edge">the edge</option>'
    assert edge in learner.get(URL).content.decode()
    assert edge not in opened(learner, link(SHORT, **OWN)).content.decode()


FORGED_LISTS = {
    "a step that isn't there": {"value": ["sandd"], "do": ""},
    "nine hundred steps": {"value": ["wash"] * 900, "do": "twice:1"},
    "a step of a megabyte": {"value": ["w" * 10**6], "do": "up:1"},
    "semicolons": {"value": ["wash;;;sand;", ";"], "do": ""},
    "a step added that isn't there": {"value": ["wash"], "do": "add", "pick-op": "explode"},
    "a setting that breaks out": {"value": [], "do": "add", "pick-op": "sand", "pick-grade": "P1500 zone=edge;refer"},
    "nulls": {"value": ["wa\x00sh"], "do": "add", "pick-op": "\x00"},
}


@pytest.mark.parametrize("name", FORGED_LISTS)
def test_a_forged_list_is_read_or_refused_and_never_a_fault(learner, rendered, name):
    query = {"panel": "mild_chalk", "number": "3", "plan": "", **FORGED_LISTS[name]}
    answer = opened(learner, f"{URL}?{urlencode(query, doseq=True)}")
    assert answer.context["worked"] == [] or answer.context["form"].is_valid()
    assert (HungPicture.objects.count(), rendered.exists()) == (0, False)
