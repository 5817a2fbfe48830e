"""The sentences of the record: what is missing, what changed, what evidence is called, on what somebody is stuck."""

from django.utils.formats import date_format
from django.utils.functional import Promise
from django.utils.timezone import localtime
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy, ngettext

from assessments.competence import Ask, Change, Missing, Stuck

KINDS: dict[str, str | Promise] = {
    "scenario": gettext_lazy("attempts"),
    "paper": gettext_lazy("papers of several scenarios"),
    "bench": gettext_lazy("bench practicals"),
    "prod": gettext_lazy("photographs with readings"),
    "oral": gettext_lazy("recorded questions"),
    "job": gettext_lazy("jobs on a hull"),
    "log": gettext_lazy("job logs"),
}
CHANGES: dict[str, str | Promise] = {
    "new_evidence": gettext_lazy("A new result was filed since you opened this page."),
    "gone": gettext_lazy("Something you were shown is no longer on the record."),
    "rearranged": gettext_lazy("The record stands in another order than you were shown."),
    "rejudged": gettext_lazy("A result was judged again since you opened this page."),
    "counts": gettext_lazy("A result counts now that didn't before."),
    "no_longer_counts": gettext_lazy("A result you were shown no longer counts."),
    "decided": gettext_lazy("Somebody decided on this element since you opened this page."),
    "requirement": gettext_lazy("What this element asks for changed since you opened this page."),
    "someone_else": gettext_lazy("This page was opened for another person, signer or element."),
}


def kind_words(kind: str) -> str:
    """Return what evidence of a kind is called, in the plural."""
    return str(KINDS[kind])


def missing_words(missing: Missing, *, by: str = "", reason: str = "") -> str:
    """Return in a sentence what is missing; of a decision, `by` whom and why, `reason` being empty where erased."""
    if missing.ask is None:
        return _turned_down(missing, by, reason)
    if missing.why == "too_old":
        return _too_old(missing)
    if missing.why == "not_gathered":
        return _not_gathered(missing.ask)
    if missing.why == "one_day":
        days = missing.ask.days
        return ngettext("It has to be done on %(n)d day.", "It has to be spread over %(n)d days.", days) % {"n": days}
    if missing.why == "one_substrate":
        return _("It has to be done on more than one surface.")
    if missing.why == "wrong_witness":
        return _("It was done, but not seen by the right person.")
    return _still_to_do(missing.ask, missing.ask.count - missing.have)


def change_words(change: Change) -> str:
    """Return in a sentence what changed between opening a page and sending it."""
    return str(CHANGES[change.why])


def stuck_words(stuck: Stuck) -> str:
    """Return in a sentence on what somebody is stuck."""
    if stuck.why == "rule":
        words = ngettext("%(code)s: not met the last time.", "%(code)s: not met the last %(n)d times.", stuck.times)
        return words % {"code": stuck.code, "n": stuck.times}
    return ngettext("Nothing for %(n)d day.", "Nothing for %(n)d days.", stuck.days) % {"n": stuck.days}


def _turned_down(missing: Missing, by: str, reason: str) -> str:
    declined = missing.decision is not None and missing.decision.kind == "declined"
    said = (_("Declined by %(by)s") if declined else _("More asked for by %(by)s")) % {"by": by}
    return _("%(said)s: %(reason)s") % {"said": said, "reason": reason} if reason else f"{said}."


def _too_old(missing: Missing) -> str:
    if missing.since is None:
        return _("It is too old.")
    return _("It is too old since %(day)s.") % {"day": date_format(localtime(missing.since), "j F Y")}


def _not_gathered(ask: Ask) -> str:
    if ask.kind != "scenario":
        return _("This site can't gather %(kind)s yet.") % {"kind": kind_words(ask.kind)}
    if ask.scenarios:
        return _("%(codes)s can't be taken on this site yet.") % {"codes": ", ".join(ask.scenarios)}
    return _("This site has no such scenario yet.")


def _still_to_do(ask: Ask, left: int) -> str:
    if ask.kind != "scenario":
        return ngettext("%(n)d is still to be done.", "%(n)d are still to be done.", left) % {"n": left}
    figures = {"n": left, "at": _(" or ").join(ask.scenarios)}
    if left == 1:
        return _one_attempt(ask) % figures
    if ask.mode == "paper":
        return _("%(n)d paper-mode attempts are still to be done.") % figures
    return _("%(n)d attempts are still to be done.") % figures


def _one_attempt(ask: Ask) -> str:
    if ask.mode == "paper" and ask.scenarios:
        return _("One paper-mode attempt at %(at)s is still to be done.")
    if ask.mode == "paper":
        return _("One paper-mode attempt is still to be done.")
    return _("One attempt at %(at)s is still to be done.") if ask.scenarios else _("One attempt is still to be done.")
