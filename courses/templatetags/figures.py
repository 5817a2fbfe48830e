"""Figures on a page: both drawings, the caption and the table of an object that `courses.figures` made."""

from __future__ import annotations

from django import template

from courses.figures import Figure

register = template.Library()


@register.inclusion_tag("courses/_film_section.html")
def film_section(figure: Figure) -> dict[str, object]:
    """The cross-section of film through a plan."""
    return {"figure": figure}


@register.inclusion_tag("courses/_scratch_ladder.html")
def scratch_ladder(figure: Figure) -> dict[str, object]:
    """The marks each abrasive meets and leaves."""
    return {"figure": figure}


@register.inclusion_tag("courses/_workload.html")
def workload(figure: Figure) -> dict[str, object]:
    """Minutes as bars, with the materials in the table."""
    return {"figure": figure}
