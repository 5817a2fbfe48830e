"""The pages of an estimate in three lightings and at three widths; an offer made and closed by keys and by touch."""

import pytest

from courses.actions import keep_estimate, write_used
from courses.forms.estimates import EstimateForm
from courses.models import Estimate
from courses.shipped import constants
from courses.trade.minutes import minutes_of
from courses.trade.units import Preferences
from tests.browser.stage import Stage, at, look, press
from tests.factories import ASKED

pytestmark = [pytest.mark.browser, pytest.mark.looks, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def estimator(open_page, site, sign_in, trainee, now):
    """A trainee with two estimates, one of them closed and tight on coating."""
    for changed, used in (({}, {"rotary": 5.8, "discs": 44.0}), ({"pack_ml": "40"}, {})):
        form = EstimateForm(Preferences.metric(), {**ASKED, **changed})
        row = keep_estimate(trainee, form.kept(form.worked(minutes_of(constants()))), now=now)
        if used:
            write_used(row, used, now=now)
    return Stage(sign_in(open_page(), trainee), site, trainee)


def of_estimate(name: str, place: int):
    """Return how a page about the first or the second estimate is reached."""

    def reach(stage: Stage) -> None:
        stage.go(name, Estimate.objects.order_by("pk")[place].pk)

    return reach


def make_wrongly(stage: Stage) -> None:
    """Ask for a boat that is too long, and for a passage of film without its film."""
    stage.go("estimate-make")
    stage.page.fill("[name=name]", "Too long")
    stage.page.fill("[name=loa_m]", "6400")
    press(stage.page, "main form .btn-primary")


PAGES = {
    "estimates": at("estimate-list"),
    "make": at("estimate-make"),
    "make, refused": make_wrongly,
    "an offer, tight": of_estimate("estimate-detail", 1),
    "an offer, closed": of_estimate("estimate-detail", 0),
    "used": of_estimate("estimate-used", 1),
}


@pytest.mark.parametrize("name", PAGES)
def test_a_page_of_an_estimate(screens, estimator, name):
    screens.allow("status of 422")
    assert look(estimator, PAGES[name]) == []


def test_an_offer_is_made_and_closed(estimator):
    page = estimator.page
    estimator.go("estimate-make")
    for name, value in {"name": "Skiff", "loa_m": "16 ft", "beam_m": "6.4 ft", "freeboard_m": "2 ft"}.items():
        page.fill(f"[name={name}]", value)
    page.select_option("[name=grade_1]", "P2000")
    page.press("[name=name]", "Enter")
    page.wait_for_url("**/estimates/*/")
    assert "Skiff" in page.inner_text("h1")
    assert "P2000, 4 passes" in page.inner_text("main")
    press(page, "main .btn-primary")
    page.fill("[name=rotary]", "9")
    press(page, "main form .btn-primary")
    assert "Furthest out: Rotary set" in page.inner_text("main")
