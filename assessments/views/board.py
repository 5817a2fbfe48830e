"""The board of a cohort: who waits for a signature, who is stuck, everybody's units; same queries for any number."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from django.db.models import F, Max, Window
from django.db.models.functions import RowNumber
from django.urls import reverse
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from assessments.access import cohorts_for
from assessments.competence import Standing, Stuck, Unit, stuck, unit_standing
from assessments.models import Attempt, Evidence, Finding
from assessments.record import Record, gathered, records_of
from assessments.shipped import framework
from assessments.signers import may_decide
from assessments.views.lines import notches_of
from assessments.views.wording import stuck_words
from courses.models import Cohort, LessonRead, Person, School
from courses.models.enrolment import Role

LOOKED_BACK = 3
"""How many of the newest findings of a rule say whether somebody is stuck on it."""


@dataclass(frozen=True)
class Row:
    """One trainee on the board."""

    person: Person
    record: Record
    standings: Mapping[str, Standing]
    stuck: tuple[Stuck, ...]
    hands: list[str] = field(default_factory=list)

    @property
    def url(self) -> str:
        """Return the address of the record."""
        return reverse("record-detail", args=[self.person.handle])

    @property
    def ready(self) -> list[str]:
        """Return the elements that wait for a signature, the longest waiting first."""
        waiting = [(one.since, code) for code, one in self.standings.items() if one.code == "ready" and one.since]
        return [code for _since, code in sorted(waiting)]

    @property
    def short(self) -> Evidence | None:
        """Return the newest evidence that fell short."""
        return next((one for one in reversed(self.record.evidence) if one.outcome != "satisfactory"), None)

    @property
    def stuck_on(self) -> list[str]:
        """Return the elements on which the same rule keeps them."""
        held_up = any(one.why == "rule" for one in self.stuck)
        return list(self.short.elements) if held_up and self.short else []

    @property
    def mine(self) -> list[str]:
        """Return those of them that the reader may sign."""
        return [code for code in self.ready if code in self.hands]


def board_of(reader: Person, cohort: Cohort, at: datetime) -> dict[str, Any]:
    """Return what the board of a cohort shows to `reader`, what they should do next first."""
    rows = sorted(rows_of(reader, cohort, at), key=_next_first)
    waiting = [_wait(row, code) for row in rows for code in row.ready]
    for line in [one for one in waiting if one["mine"]][:1]:
        line["primary"] = True
    held_up = [_stuck(row) for row in rows if row.stuck]
    units = list(framework().units.values())
    return {
        "cohort": cohort,
        "lead": _lead(cohort, rows),
        "cohorts": [
            {"name": one.name, "url": reverse("cohort-board", args=[one.pk]), "here": one.pk == cohort.pk}
            for one in cohorts_for(reader)
        ],
        "waiting": waiting,
        "stuck": held_up,
        "heads": [{"code": unit.code, "title": unit.title} for unit in units],
        "rows": [
            {"name": row.person.name, "url": row.url, "cells": [_cell(row, one) for one in units]} for row in rows
        ],
    }


def rows_of(reader: Person, cohort: Cohort, at: datetime) -> list[Row]:
    """Return every trainee of a cohort with how they stand."""
    learning = Person.objects.filter(memberships__cohort=cohort, memberships__role=Role.TRAINEE, is_active=True)
    people = list(learning.order_by("name"))
    records, here = records_of(people), gathered()
    judged, seen = _judged(people), _seen(people)
    held, school = list(reader.memberships.all()), School.objects.here()
    independence = bool(school and school.independence)
    elements = [one.code for unit in framework().units.values() for one in unit.elements]
    hands = [code for code in elements if may_decide(held, [cohort.pk], code, independence=independence)]
    return [
        Row(
            person,
            records[person.pk],
            {code: records[person.pk].standing(code, at, here) for code in elements},
            tuple(stuck(judged.get(person.pk, []), seen.get(person.pk), at)),
            hands,
        )
        for person in people
    ]


def _judged(people: list[Person]) -> dict[int, list[tuple[str, str, datetime]]]:
    """Return by person the newest findings of each rule that applied, in one query."""
    nth = Window(RowNumber(), partition_by=[F("attempt__person"), F("code")], order_by=F("attempt__closed_at").desc())
    applied = Finding.objects.filter(attempt__person__in=people).exclude(verdict="not_applicable")
    newest = applied.annotate(nth=nth).filter(nth__lte=LOOKED_BACK)
    asked = ("attempt__person", "sentence", "verdict", "attempt__closed_at")
    found: dict[int, list[tuple[str, str, datetime]]] = {}
    for person, sentence, verdict, at in newest.values_list(*asked):
        if at:
            found.setdefault(person, []).append((sentence, verdict, at))
    return found


def _seen(people: list[Person]) -> dict[int, datetime]:
    """Return by person when they last did something, in two queries."""
    opened = Attempt.objects.filter(person__in=people).order_by().values_list("person").annotate(Max("opened_at"))
    read = LessonRead.objects.filter(person__in=people).order_by().values_list("person").annotate(Max("read_at"))
    seen: dict[int, datetime] = dict(opened)
    for person, at in read:
        seen[person] = max(at, seen.get(person, at))
    return seen


def _next_first(row: Row) -> tuple[int, str, str]:
    if row.mine:
        return (0, str(row.standings[row.mine[0]].since), row.person.name)
    if row.stuck:
        return (1, "", row.person.name)
    fading = any(one.code in ("due", "lapsed") or one.questioned for one in row.standings.values())
    return (2 if fading else 3, "", row.person.name)


def _wait(row: Row, code: str) -> dict[str, Any]:
    mine, element = code in row.hands, framework().element(code)
    sign = reverse("sign-off", args=[row.person.handle, code])
    return {
        "name": row.person.name,
        "url": row.url,
        "what": f"{code} {element.title}",
        "since": row.standings[code].since,
        "act_url": sign if mine else row.url,
        "act": _("Look and sign") if mine else _("See the record"),
        "mine": mine,
        "primary": False,
    }


def _stuck(row: Row) -> dict[str, Any]:
    return {
        "name": row.person.name,
        "url": row.url,
        "words": [stuck_words(one) for one in row.stuck],
        "link_url": reverse("attempt-verdict", args=[row.short.attempt_id]) if row.short else None,
        "link": _("See the last attempt"),
    }


def _cell(row: Row, unit: Unit) -> dict[str, Any]:
    standings = {one.code: row.standings[one.code] for one in unit.elements}
    mine = [code for code in row.mine if code in standings]
    return {
        "standing": unit_standing(standings.values()),
        "url": reverse("sign-off", args=[row.person.handle, mine[0]]) if mine else None,
        **notches_of(standings.values()),
        "signed": sum(one.code == "signed" for one in standings.values()),
        "elements": len(standings),
        "stuck": any(code in standings for code in row.stuck_on),
    }


def _lead(cohort: Cohort, rows: list[Row]) -> str:
    count = ngettext("%(n)d trainee, %(mode)s.", "%(n)d trainees, %(mode)s.", len(rows))
    count %= {"n": len(rows), "mode": cohort.get_mode_display()}
    mine = sum(1 for row in rows if row.mine)
    held_up = sum(1 for row in rows if row.stuck)
    waits = (
        ngettext("One waits for you", "%(n)d wait for you", mine) % {"n": mine} if mine else _("Nobody waits for you")
    )
    halted = ngettext("one is stuck", "%(n)d are stuck", held_up) % {"n": held_up} if held_up else _("nobody is stuck")
    return f"{count} {waits}; {halted}."
