"""A test built from words: a phrase is chosen, its gaps are filled from what fits, and it is put into the rule."""

from typing import Any

from django.http import QueryDict
from django.utils.translation import gettext as _

from assessments.forms.rules import STEPS
from assessments.rules import Phrase, PhraseRefused, Slot, choices, fitting_phrases, joined, typed_units, written
from assessments.rules import phrase as phrase_of
from assessments.views.rule_lines import Reads, unit_sign

PREFIX = "gap-"


def places_of(way: str) -> dict[str, str]:
    """Return where a phrase may go, by how points are earned: the fields, each by its words."""
    if way == "share":
        return {"share": _("into the share")}
    guard = {"when": _("into “Applies when”")}
    if way == "steps":
        return {f"step_{n}": _("into step %(n)d") % {"n": n + 1} for n in range(STEPS)} | guard
    return {"test": _("into “Met when”")} | guard


def panel_of(reads: Reads, data: QueryDict, refusal: PhraseRefused | None = None) -> dict[str, Any]:
    """Return the panel: the phrases, and of the chosen one every gap with what may fill it."""
    way = data.get("way", "whole")
    offered = fitting_phrases(reads.schema, gives="num" if way == "share" else "bool")
    chosen = next((one for one in offered if one.code == data.get("phrase")), None)
    places = places_of(way)
    return {
        "phrases": [{"code": one.code, "words": _bare(one), "chosen": one is chosen} for one in offered],
        "slots": _slots(reads, chosen, data, refusal) if chosen else [],
        "error": str(refusal) if refusal and not refusal.slot else "",
        "places": [
            {"name": name, "words": words, "chosen": name == data.get("into")} for name, words in places.items()
        ],
        "how": data.get("how", "and"),
        "joins": way != "share",
    }


def put_into(reads: Reads, data: QueryDict) -> tuple[str, str]:
    """Return which field the phrase goes into, and its new text; PhraseRefused says what is missing."""
    chosen = phrase_of(data.get("phrase", ""))
    places = places_of(data.get("way", "whole"))
    into = data.get("into", "")
    into = into if into in places else next(iter(places))
    text = written(reads.schema, chosen, _filled(chosen, data))
    how = data.get("how", "and")
    stands = "" if how == "instead" or into == "share" else data.get(into, "")
    return into, joined(stands, text, "or" if how == "or" else "and")


def _bare(one: Phrase) -> str:
    """Return the words of a phrase with its gaps as dots."""
    words = one.words
    for slot in one.slots:
        words = words.replace(f"{{{slot.name}}}", "…")
    return words.replace("'", "’")


def _filled(chosen: Phrase, data: QueryDict) -> dict[str, Any]:
    filled: dict[str, Any] = {}
    for slot in chosen.slots:
        sent = [one for one in data.getlist(f"{PREFIX}{slot.name}") if one]
        typed = data.get(f"{PREFIX}{slot.name}-typed", "").strip()
        filled[slot.name] = sent if slot.takes == "choices" else typed or (sent[-1] if sent else "")
    return filled


def _slots(reads: Reads, chosen: Phrase, data: QueryDict, refusal: PhraseRefused | None) -> list[dict[str, Any]]:
    filled = _filled(chosen, data)
    fitting = choices(reads.schema, chosen, filled, reads.labels.get)
    units = typed_units(reads.schema, chosen, filled)
    return [
        {**_slot(slot, fitting[slot.name], filled[slot.name], data, refusal), "unit": unit_sign(units.get(slot.name))}
        for slot in chosen.slots
    ]


def _slot(slot: Slot, fitting: Any, filled: Any, data: QueryDict, refusal: PhraseRefused | None) -> dict[str, Any]:
    given = filled if isinstance(filled, list) else [filled]
    return {
        "name": f"{PREFIX}{slot.name}",
        "words": slot.words,
        "picks": slot.picks,
        "typed": slot.typed,
        "several": slot.takes == "choices",
        "options": [
            {"value": one.text, "words": one.words.replace("'", "’"), "chosen": one.text in given} for one in fitting
        ],
        "value": data.get(f"{PREFIX}{slot.name}-typed" if slot.picks else f"{PREFIX}{slot.name}", ""),
        "error": str(refusal) if refusal and refusal.slot == slot.name else "",
    }
