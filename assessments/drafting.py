"""A rule book from draft to version: begun, written, reviewed by somebody else, published or thrown away."""

import json
import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from django.db import transaction
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy

from assessments.authoring import Hands, mark_by, publish_book
from assessments.errors import DraftRefused
from assessments.manuscript import Manuscript, Row, code_of, opened, read, tried
from assessments.marking import Marker
from assessments.marking.expect import as_it_came
from assessments.models import Draft, RuleBook, Scenario
from assessments.rules import RuleBook as Book
from assessments.scenarios.read_exemplars import read_exemplars, written
from assessments.scenarios.spec import Exemplar
from courses.models import Person
from courses.tokens import digest_of

REVIEWED_ON = 40
"""On how many draws every exemplar has to come out as said before a draft goes to review, and before it is out."""
CHANGED_MEANWHILE = lazy(
    "Somebody changed this rule after you opened it. Look at it as it stands, then change it again."
)


@transaction.atomic
def begin_draft(scenario: Scenario, by: Person, *, now: datetime) -> Draft:
    """Begin the next version of the rules that mark a scenario; one that is open is returned instead."""
    scenario = Scenario.objects.select_for_update().select_related("rule_book").get(pk=scenario.pk)
    going_on = Draft.objects.open().filter(scenario=scenario).first()
    if going_on:
        return going_on
    lesson, rows, exemplars = opened(scenario.rule_book)
    return Draft.objects.create(
        scenario=scenario,
        base=scenario.rule_book,
        lesson=lesson,
        rows=rows,
        exemplars=exemplars,
        started_by=by,
        started_at=now,
    )


def mark_of(row: Row | None) -> str:
    """Return by what a row is known to have stayed as it was."""
    return digest_of(json.dumps(row, sort_keys=True)) if row else ""


@transaction.atomic
def keep_rule(draft: Draft, row: Row, by: Person, *, seen: str) -> Draft:
    """Keep a rule in the place of the one with its code, or behind the others; `seen` marks it as it was opened."""
    draft = _written(draft)
    _put_rule(draft, row, seen)
    return _kept(draft, by)


@transaction.atomic
def keep_tried(draft: Draft, row: Row, by: Person, *, seen: str, name: str, put: Mapping[str, object]) -> Draft:
    """Keep a rule, and the answer it was tried on as an exemplar."""
    draft = _written(draft)
    _put_rule(draft, row, seen)
    _put_answer(draft, name, put)
    return _kept(draft, by)


@transaction.atomic
def take_out(draft: Draft, code: str, by: Person) -> Draft:
    """Take a rule out; exemplars that named it among the rules not met name it no longer."""
    draft = _written(draft)
    if draft.row(code) is None:
        raise DraftRefused(_("The draft holds no rule %(code)s.") % {"code": code})
    if len(draft.rows) == 1:
        raise DraftRefused(_("A rule book holds at least one rule. Write another one first."))
    draft.rows = [one for one in draft.rows if code_of(one) != code]
    for exemplar in _exemplars(draft).values():
        if code in exemplar.not_met:
            rest = tuple(one for one in exemplar.not_met if one != code)
            _put_exemplar(draft, replace(exemplar, not_met=rest))
    return _kept(draft, by)


def next_code(draft: Draft) -> str:
    """Return the code of the next rule of the draft's own; a code that any version used is never used again."""
    own = re.compile(rf"{re.escape(draft.scenario.code)}\.(\d+)")
    used = [code_of(row) for row in draft.rows]
    for book in RuleBook.objects.filter(code=draft.scenario.code):
        used += [rule.code for rule in book.book.rules]
    numbers = [int(found[1]) for found in map(own.fullmatch, used) if found]
    return f"{draft.scenario.code}.{max(numbers, default=0) + 1}"


@transaction.atomic
def keep_as_it_came(draft: Draft, name: str, by: Person) -> Draft:
    """Say that how an exemplar came out is right by the rules as they stand now."""
    draft = _written(draft)
    marker = _marker(draft)
    exemplar = as_it_came(marker, name, REVIEWED_ON)
    if exemplar is None:
        raise DraftRefused(_("No exemplar is called “%(name)s”.") % {"name": name})
    _put_exemplar(draft, exemplar)
    return _kept(draft, by)


@transaction.atomic
def keep_exemplar(draft: Draft, name: str, put: Mapping[str, object], by: Person) -> Draft:
    """Keep an answer as an exemplar: the key with these values, and what it comes to by the rules as they stand."""
    draft = _written(draft)
    _put_answer(draft, name, put)
    return _kept(draft, by)


@transaction.atomic
def drop_exemplar(draft: Draft, name: str, by: Person) -> Draft:
    """Take out what the draft itself says of an exemplar."""
    draft = _written(draft)
    draft.exemplars = [one for one in draft.exemplars if one["name"] != name]
    return _kept(draft, by)


@transaction.atomic
def send_to_review(draft: Draft, by: Person, *, now: datetime) -> Draft:
    """Hand a draft to somebody else to review; refused while anything is wrong with it."""
    draft = _written(draft)
    _refuse_unsound(read(draft))
    draft.writers.add(by)
    draft.state, draft.sent_by, draft.sent_at, draft.remark, draft.remark_by = Draft.State.IN_REVIEW, by, now, "", None
    draft.save(update_fields=["state", "sent_by", "sent_at", "remark", "remark_by"])
    return draft


@transaction.atomic
def give_back(draft: Draft, by: Person, remark: str) -> Draft:
    """Give a draft back to be written on, with a remark; whoever wrote it may take it back without one."""
    draft = _in_review(draft)
    if not remark.strip() and not wrote(draft, by):
        raise DraftRefused(_("Say what has to change. Whoever wrote it reads that."))
    draft.state, draft.remark, draft.remark_by = Draft.State.DRAFT, remark.strip(), by
    draft.save(update_fields=["state", "remark", "remark_by"])
    return draft


@transaction.atomic
def publish_draft(draft: Draft, by: Person, *, now: datetime) -> RuleBook:
    """Publish a draft that somebody else wrote, and let it mark from now on; the version before it retires."""
    draft = _in_review(draft)
    if wrote(draft, by):
        raise DraftRefused(_("You wrote in this draft. Somebody else has to review and publish it."))
    found = read(draft)
    _refuse_unsound(found)
    assert draft.sent_by is not None
    text, book = found.text, _book(found)
    row = publish_book(book, text, found.shared, now=now, hands=Hands(draft.sent_by, by))
    mark_by(draft.scenario, row)
    draft.state, draft.book = Draft.State.PUBLISHED, row
    draft.save(update_fields=["state", "book"])
    return row


@transaction.atomic
def throw_away(draft: Draft) -> Draft:
    """Throw an open draft away."""
    draft = _locked(draft)
    if not draft.is_open:
        raise DraftRefused(_("This draft is closed already."))
    draft.state = Draft.State.DISCARDED
    draft.save(update_fields=["state"])
    return draft


def wrote(draft: Draft, person: Person) -> bool:
    """Say whether a person kept something in a draft, or sent it to review."""
    return draft.writers.filter(pk=person.pk).exists()


def _locked(draft: Draft) -> Draft:
    return Draft.objects.select_for_update(of=("self",)).select_related("scenario", "base", "sent_by").get(pk=draft.pk)


def _written(draft: Draft) -> Draft:
    draft = _locked(draft)
    if draft.state == Draft.State.IN_REVIEW:
        raise DraftRefused(_("This draft is in review. Take it back before you change it."))
    if not draft.is_written:
        raise DraftRefused(_("This draft is closed. Begin a new version."))
    return draft


def _in_review(draft: Draft) -> Draft:
    draft = _locked(draft)
    if draft.state != Draft.State.IN_REVIEW:
        raise DraftRefused(_("This draft is not in review."))
    return draft


def _kept(draft: Draft, by: Person) -> Draft:
    draft.revision += 1
    draft.save(update_fields=["rows", "exemplars", "revision"])
    draft.writers.add(by)
    return draft


def _put_rule(draft: Draft, row: Row, seen: str) -> None:
    code = code_of(row)
    before = draft.row(code)
    if mark_of(before) != seen:
        raise DraftRefused(str(CHANGED_MEANWHILE))
    if before is None:
        draft.rows = [*draft.rows, row]
    else:
        draft.rows = [row if code_of(one) == code else one for one in draft.rows]


def _put_answer(draft: Draft, name: str, put: Mapping[str, object]) -> None:
    name = name.strip()
    if not name:
        raise DraftRefused(_("Give the exemplar a name that says what it does, such as “coats in the dew”."))
    if name in _exemplars(draft):
        raise DraftRefused(_("An exemplar is called “%(name)s” already. Give this one another name.") % {"name": name})
    blank = [task.id for task in draft.scenario.spec.tasks if put.get(task.id, "") is None]
    given = {task: value for task, value in put.items() if value is not None}
    _put_exemplar(draft, Exemplar(name, ("cannot_certify",), put=given, unanswered=tuple(blank)))
    exemplar = as_it_came(_marker(draft), name, REVIEWED_ON)
    assert exemplar is not None
    _put_exemplar(draft, exemplar)


def _refuse_unsound(found: Manuscript) -> None:
    """Refuse what is not sound, unlike nothing before it, or begun from a version that is no longer the newest."""
    if found.draft.base_id != found.draft.scenario.rule_book_id:
        words = _("Version %(version)d marks now, and this draft began from another. Throw it away and begin anew.")
        raise DraftRefused(words % {"version": found.draft.scenario.rule_book.version})
    if not found.sound:
        raise DraftRefused(_("Something is wrong with this draft yet. Look at the marks beside its rules."))
    if not found.changes:
        raise DraftRefused(_("Nothing is changed against version %(n)d.") % {"n": found.draft.base.version})
    checked = tried(found.draft.scenario.text, found.text, found.shared, str(found.draft.scenario), REVIEWED_ON)
    if checked.proof is None or not checked.proof.clean:
        said = checked.proof.in_words()[1:2] if checked.proof else [checked.refusal]
        words = _("On %(n)d draws something comes out otherwise than said: %(what)s")
        raise DraftRefused(words % {"n": REVIEWED_ON, "what": " ".join(said).strip()})


def _book(found: Manuscript) -> Book:
    assert found.checked.book is not None
    return found.checked.book


def _marker(draft: Draft) -> Marker:
    found = read(draft)
    if found.checked.book is None or found.checked.faults:
        raise DraftRefused(_("Mend the rules first; until then no exemplar can be tried."))
    spec = draft.scenario.spec
    return Marker.of(spec, found.checked.book, read_exemplars(found.text, str(draft.scenario), spec.tasks))


def _exemplars(draft: Draft) -> dict[str, Exemplar]:
    """Return every exemplar as the draft has it, those of the scenario included."""
    spec = draft.scenario.spec
    own = read_exemplars(read(draft).text, str(draft.scenario), spec.tasks)
    return {one.name: one for one in spec.with_exemplars(own).exemplars}


def _put_exemplar(draft: Draft, exemplar: Exemplar) -> None:
    draft.exemplars = [one for one in draft.exemplars if one["name"] != exemplar.name] + [written(exemplar)]
