"""What each code of a standing, a verdict, an outcome, a decision and an ask looks like and is called on screen."""

from __future__ import annotations

import difflib
from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _


@dataclass(frozen=True, slots=True)
class Look:
    """A symbol, a class and the words: a meaning never rests on one of them alone."""

    symbol: str
    style: str
    words: str | Promise


STANDINGS = {
    "not_started": Look("none", "st-none", _("Not started")),
    "building": Look("part", "", _("Building")),
    "ready": Look("ready", "st-ready", _("Ready to sign")),
    "signed": Look("signed", "st-met", _("Signed")),
    "due": Look("due", "st-due", _("Due again")),
    "lapsed": Look("lapsed", "st-miss", _("Lapsed")),
}
VERDICTS = {
    "met": Look("met", "st-met", _("Met")),
    "partly": Look("partly", "st-part", _("Partly met")),
    "not_met": Look("miss", "st-miss", _("Not met")),
    "not_answered": Look("open", "st-open", _("Not answered")),
    "not_applicable": Look("na", "st-none", _("Doesn’t apply")),
}
OUTCOMES = {
    "satisfactory": Look("met", "met", _("Satisfactory")),
    "not_yet_satisfactory": Look("partly", "part", _("Not yet satisfactory")),
    "critical_fail": Look("miss", "fail", _("Failed on a critical rule")),
    "cannot_certify": Look("open", "open", _("Cannot be certified")),
}
DECISIONS = {
    "signed": Look("signed", "st-met", _("Signed")),
    "declined": Look("miss", "st-miss", _("Declined")),
    "more_asked": Look("open", "st-open", _("More asked for")),
    "withdrawn": Look("lapsed", "st-miss", _("Signature withdrawn")),
}
ASKS = {
    "met": Look("met", "st-met", _("Met")),
    "open": Look("none", "", _("Still asked for")),
    "old": Look("due", "st-due", _("Too old")),
    "not_gathered": Look("na", "st-none", _("Not gathered here yet")),
}
PLAN_VERDICTS = {
    "pass": Look("met", "met", _("Pass")),
    "redo": Look("partly", "part", _("To be done again")),
    "harm": Look("miss", "fail", _("Harm done")),
}
OUTCOME_MARKS = {"met": "st-met", "part": "st-part", "fail": "st-miss", "open": "st-open"}

SOURCE_MARKS: dict[str, str | Promise] = {
    "read": _("seen in the source"),
    "calc": _("worked out here"),
    "memory": _("known, not checked"),
    "practice": _("no published source"),
    "model": _("a model, not a measurement"),
}
"""How a source is known, in as few words as a reader needs; the long form stands in courses.trade.sources."""


def look_of(kind: str, table: dict[str, Look], code: str) -> Look:
    """The look of `code`, or an error that offers the nearest code there is."""
    if code in table:
        return table[code]
    near = difflib.get_close_matches(str(code), table, n=1, cutoff=0)
    raise ValueError(f"There is no {kind} {code!r}; did you mean {near[0]!r}? The codes are {', '.join(table)}.")
