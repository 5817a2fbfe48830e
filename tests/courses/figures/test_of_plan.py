"""Figures of a worked plan: what they say is what the run says."""

import pytest

from courses.figures.of_plan import ladder, load, sections
from courses.shipped import catalogue, constants, panels
from courses.trade.plan_text import read_plan_text, read_token
from courses.trade.surface import PanelSurface, read_plan, simulate

LADDER = "wash;tape;sand grade=P1000 passes=4;sand grade=P1500 passes=4;cut;refine;finish;wipe;inspect"


def run(text=LADDER, code="heavy_chalk", number=1):
    """Return a plan worked on a drawn panel."""
    surface = PanelSurface.of(panels()[code].drawn(number), catalogue(), constants())
    return simulate(surface, read_plan([read_token(one) for one in read_plan_text(text)], surface), constants())


def test_each_zone_has_its_own_section_and_says_what_the_run_says():
    worked = run()
    field, edge = sections(worked)
    assert (field.title, edge.title) == ("The rest: film left after each step", "The edge: film left after each step")
    assert field.table.rows[0][2] == f"{worked.start.film_um:.1f}"
    assert field.table.rows[-1][2] == f"{worked.outcome.film_um:.1f}"
    assert "chalk" in " ".join(field.table.rows[0])


def test_whose_plan_it_is_stands_in_the_titles_where_a_page_shows_several():
    worked = run()
    assert sections(worked, "This plan")[1].title == "This plan, the edge: film left after each step"
    titles = {figure.title for figure in (*sections(worked, "A"), ladder(worked, constants(), "A"))}
    assert len(titles) == 3


def test_the_ladder_has_a_rung_for_each_abrasive_step_with_what_it_leaves():
    worked = run()
    rows = ladder(worked, constants()).table.rows
    assert [row[0][0] for row in rows] == ["3", "4", "5", "6", "7"]
    assert rows[0][2].startswith("4\u00a0passes of")
    assert rows[2][2].startswith("1\u00a0set of")
    assert rows[0][5] == f"{worked.states[2].tail_um:.1f}"


def test_the_work_adds_up_to_that_of_the_run():
    worked = run()
    rows = load(worked, constants()).table.rows
    totals = [sum(float(row[column]) for row in rows) for column in (1, 2, 3, 4)]
    out = worked.outcome
    assert totals == pytest.approx([out.minutes, out.discs, out.pads, out.grams], abs=0.3)


def test_a_stage_that_repeats_until_clear_counts_the_sets_it_made():
    worked = run("wash;tape;cut sets=until_clear;refine;finish;wipe", "moderate_chalk", 3)
    sets = int(ladder(worked, constants()).table.rows[0][2].split("\u00a0")[0])
    assert sets > 1
    assert load(worked, constants()).table.rows[2][4] == f"{20 * sets}.0"


def test_a_step_on_an_edge_uses_its_share_of_the_panel():
    rows = load(run("wash;cut zone=edge", "mild_chalk"), constants()).table.rows
    assert float(rows[1][4]) == pytest.approx(20 * constants().film.edge_share, abs=0.05)


def test_without_abrasion_there_is_no_ladder_and_without_steps_no_work():
    assert ladder(run("wash;wipe"), constants()) is None
    assert load(run(""), constants()) is None
    assert len(sections(run(""))) == 2
