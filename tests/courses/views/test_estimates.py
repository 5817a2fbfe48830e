"""The pages of an estimate: made, read as an offer, closed with what was used."""

import pytest
from django.urls import reverse

from courses.actions import keep_estimate, write_used
from courses.forms.estimates import EstimateForm
from courses.models import Estimate
from courses.shipped import constants
from courses.trade.minutes import minutes_of
from courses.trade.units import Preferences
from courses.views.estimates import compared
from tests.factories import ASKED

pytestmark = pytest.mark.django_db
BUTTON = "btn-primary"


def words(page) -> str:
    return page.content.decode().replace("\u00a0", " ")


def kept(person, now, **changed):
    form = EstimateForm(Preferences.metric(), {**ASKED, **changed})
    quote = form.worked(minutes_of(constants()))
    assert quote, form.errors
    return keep_estimate(person, form.kept(quote), now=now)


@pytest.fixture
def metric(client, trainee):
    for name, unit in {"temperature": "degc", "film": "um", "volume": "ml", "length": "m"}.items():
        setattr(trainee, name, unit)
    trainee.save()
    client.force_login(trainee)
    return trainee


def test_a_job_is_asked_for_kept_and_shown_as_an_offer(client, metric):
    assert words(client.get(reverse("estimate-make"))).count(BUTTON) == 1
    answer = client.post(reverse("estimate-make"), ASKED)
    row = Estimate.objects.get()
    assert (answer.status_code, answer.url) == (302, reverse("estimate-detail", args=[row.pk]))
    page = words(client.get(answer.url))
    for said in (
        "14.2 m² by T1 topsides: 2 × (LOA + B) × F",
        "P1500, 4 passes, dry, inspect",
        "40 + 2",
        "2 × 30.0 mL",
        "21.6 mL of coating left over",
        "Non-skid, Seats",
        "Plastic glazing",
        "No test spot was worked. This price isn’t firm until one is.",
        "masking, rinsing, drying and reading the air, somebody saves it on safety",
        "Cure is calendar",
        "110.00",
        "USD",
    ):
        assert said in page
    assert page.count(BUTTON) == 1


def test_little_slack_is_said_aloud(client, metric, now):
    tight = kept(metric, now, loa_m="7.20", lwl_m="", beam_m="2.55", freeboard_m="0.95", pack_ml="50")
    page = words(client.get(reverse("estimate-detail", args=[tight.pk])))
    assert "Only 0.7 mL to spare, 1.4 %. One spill stops the job: offer 2." in page


def test_a_job_without_coat_exclusions_or_rates_says_so(client, metric, now):
    row = kept(metric, now, coats="0", rate_hour="", rate_pack="", left_out=[], tried="on")
    page = words(client.get(reverse("estimate-detail", args=[row.pk])))
    assert "Nothing is left out. What you don’t leave out, you own." in page
    assert "No test spot was worked" not in page
    assert ">Price</h2>" not in page


def test_what_is_wrong_comes_back_with_what_was_typed(client, metric):
    page = client.post(reverse("estimate-make"), {**ASKED, "loa_m": "640"})
    assert page.status_code == 422
    assert "lies outside" in words(page)
    assert 'value="Blue runabout"' in words(page)
    assert not Estimate.objects.exists()


def test_what_was_used_is_written_back_and_the_row_furthest_out_is_named(client, metric, now):
    row = kept(metric, now)
    address = reverse("estimate-used", args=[row.pk])
    assert "Estimated 40" in words(client.get(address))
    answer = client.post(address, {"wash": "2.2", "rotary": "5.8", "discs": "44", "coating": "41"})
    assert answer.url == reverse("estimate-detail", args=[row.pk])
    page = words(client.get(answer.url))
    assert "Furthest out: Rotary set, three passes, wipe. Time it on the next job." in page
    assert "+10 %" in page
    assert "not counted" in page
    assert "Time it on this job." in words(client.get(reverse("estimate-make")))
    row.refresh_from_db()
    assert row.used == {"wash": 2.2, "rotary": 5.8, "discs": 44.0, "coating": 41.0}


def test_a_page_without_a_figure_is_refused(client, metric, now):
    row = kept(metric, now)
    page = client.post(reverse("estimate-used", args=[row.pk]), {})
    assert page.status_code == 422
    assert "Nothing was written" in words(page)
    row.refresh_from_db()
    assert row.used_at is None


@pytest.mark.parametrize("name", ["estimate-detail", "estimate-used"])
def test_another_persons_estimate_is_not_found(client, trainee, other, instructor, now, name):
    row = kept(trainee, now)
    for person in (other, instructor):
        client.force_login(person)
        assert client.get(reverse(name, args=[row.pk])).status_code == 404
        assert client.post(reverse(name, args=[row.pk]), {"discs": "1"}).status_code == 404
    row.refresh_from_db()
    assert row.used == {}


@pytest.mark.parametrize(
    ("name", "about"), [("estimate-list", False), ("estimate-make", False), ("estimate-detail", True)]
)
def test_a_stranger_is_led_to_sign_in(client, trainee, now, name, about):
    page = client.get(reverse(name, args=[kept(trainee, now).pk] if about else []))
    assert (page.status_code, page.url.split("?")[0]) == (302, reverse("account_login"))


def test_rates_come_from_ones_own_last_estimate_or_the_schools(client, metric, instructor, now):
    assert 'value="62"' not in words(client.get(reverse("estimate-make")))
    kept(instructor, now)
    assert 'value="62"' in words(client.get(reverse("estimate-make")))
    kept(metric, now, rate_hour="48")
    assert 'value="48"' in words(client.get(reverse("estimate-make")))


@pytest.mark.parametrize("many", [1, 12])
def test_the_list_asks_as_often_for_one_as_for_twelve(client, metric, now, django_assert_num_queries, many):
    for number in range(many):
        kept(metric, now, name=f"Job {number}")
    client.get(reverse("estimate-list"))
    with django_assert_num_queries(6):
        page = words(client.get(reverse("estimate-list")))
    assert page.count("Job ") == many


def test_a_stage_that_took_exactly_as_long_is_off_by_nothing(metric, now):
    row = write_used(kept(metric, now), {"coat": 1.8, "wash": 1.9}, now=now)
    lines = {line.name: line.off for line in compared(row, Preferences.metric()).rows}
    assert (lines["coat"], lines["wash"], lines["tape"]) == ("0 %", "−5 %", "")


def test_the_calculators_lead_here(client, metric):
    assert reverse("estimate-list") in words(client.get(reverse("sum-list")))
