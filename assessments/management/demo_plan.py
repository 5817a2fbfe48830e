"""The demo school as it is written down: read whole, refused with file, line and key before any row is written."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any

from assessments import shipped
from assessments.models import Attempt, Decision
from assessments.scenarios.spec import Scenario
from courses.content.tables import Table, read_table
from courses.models import Cohort, Person, School
from courses.models.enrolment import Role
from courses.shipped import shelf, text_of, units

SCHOOL = "demo/school.toml"
FILE = f"fixtures/{SCHOOL}"
HOST = "slackwater.example"


@dataclass(frozen=True, slots=True)
class CohortPlan:
    """A cohort, how it meets and the code of its course."""

    name: str
    mode: str
    course: str


@dataclass(frozen=True, slots=True)
class PersonPlan:
    """A person, their role, and how they like to read; no cohort means the whole school."""

    name: str
    role: str
    cohort: str
    teaches: tuple[str, ...]
    may_sign: tuple[str, ...]
    metric: bool
    film: str
    extra_time_percent: int

    @property
    def email(self) -> str:
        """Return the invented address."""
        return f"{self.name.split()[0].lower()}@{HOST}"


@dataclass(frozen=True, slots=True)
class SittingPlan:
    """What a person did: which try at a scenario it was (`nth`, from 1), and the exemplar whose answers they gave."""

    person: str
    scenario: str
    mode: str
    days_ago: int
    exemplar: str
    nth: int


@dataclass(frozen=True, slots=True)
class DecisionPlan:
    """What somebody decided on an element of a person, and why."""

    person: str
    element: str
    by: str
    kind: str
    days_ago: int
    reason: str


@dataclass(frozen=True, slots=True)
class Plan:
    """The demo school: the fields of its row, its cohorts, its people, what they did and what was decided on it."""

    school: Mapping[str, Any]
    cohorts: tuple[CohortPlan, ...]
    people: tuple[PersonPlan, ...]
    sittings: tuple[SittingPlan, ...]
    decisions: tuple[DecisionPlan, ...]


def read_plan() -> Plan:
    """Return what the demo school is made of; raise FileRefused where the file can't stand."""
    whole = read_table(text_of(SCHOOL), FILE).only("school", "cohort", "person", "sitting", "decision")
    for listed in ("cohort", "person"):
        whole.once(listed, "name")
    cohorts = tuple(_cohort(table) for table in whole.some("cohort"))
    people = tuple(_person(table, [one.name for one in cohorts]) for table in whole.some("person"))
    _refuse_shared_addresses(whole, people)
    names = [one.name for one in people]
    sittings = tuple(_sitting(table, names) for table in whole.tables("sitting"))
    decisions = tuple(_decision(table, names) for table in whole.tables("decision"))
    return Plan(_school(whole.table("school")), cohorts, people, sittings, decisions)


def _school(table: Table) -> Mapping[str, Any]:
    table.only("name", "place", "about", "zone", "jurisdiction", "metric", "independence")
    words = {key: table.text(key) for key in ("name", "place", "about", "zone")}
    law = table.one_of("jurisdiction", School.Jurisdiction.values)
    return {**words, "jurisdiction": law, "metric": table.flag("metric"), "independence": table.flag("independence")}


def _cohort(table: Table) -> CohortPlan:
    table.only_fields_of(CohortPlan)
    mode = table.one_of("mode", Cohort.Mode.values)
    return CohortPlan(table.text("name"), mode, table.one_of("course", shelf().courses))


def _person(table: Table, cohorts: Collection[str]) -> PersonPlan:
    table.only_fields_of(PersonPlan)
    codes = [code for unit in units().values() for code in (unit.code, *(element for element, _ in unit.elements))]
    role = table.one_of("role", Role.values, Role.TRAINEE)
    return PersonPlan(
        name=table.text("name"),
        role=role,
        cohort=table.one_of("cohort", cohorts, None if role == Role.TRAINEE else ""),
        teaches=table.some_of("teaches", codes, ()),
        may_sign=table.some_of("may_sign", codes, ()),
        metric=table.flag("metric"),
        film=table.one_of("film", Person.Film.values, ""),
        extra_time_percent=table.whole("extra_time_percent", 0, 300, 0),
    )


def _refuse_shared_addresses(whole: Table, people: tuple[PersonPlan, ...]) -> None:
    emails = [one.email for one in people]
    for place, table in enumerate(whole.some("person")):
        if emails[place] in emails[:place]:
            raise table.refuse("name", f"{emails[place]} is somebody's address already; take another first name.")


def _sitting(table: Table, people: Collection[str]) -> SittingPlan:
    newest = {one.code: one for one in shipped.scenarios().values()}
    scenario = table.only_fields_of(SittingPlan).one_of("scenario", newest)
    return SittingPlan(
        person=table.one_of("person", people),
        scenario=scenario,
        mode=table.one_of("mode", Attempt.Mode.values),
        days_ago=table.whole("days_ago", 0, 3650),
        exemplar=table.one_of("exemplar", _exemplars(newest[scenario])),
        nth=table.whole("nth", 1, 99),
    )


def _decision(table: Table, people: Collection[str]) -> DecisionPlan:
    table.only_fields_of(DecisionPlan)
    return DecisionPlan(
        person=table.one_of("person", people),
        element=table.one_of("element", [code for unit in units().values() for code, _title in unit.elements]),
        by=table.one_of("by", people),
        kind=table.one_of("kind", (Decision.Kind.SIGNED, Decision.Kind.DECLINED, Decision.Kind.MORE_ASKED)),
        days_ago=table.whole("days_ago", 0, 3650),
        reason=table.text("reason", ""),
    )


def _exemplars(scenario: Scenario) -> tuple[str, ...]:
    return ("key", *(one.name for one in scenario.exemplars))
