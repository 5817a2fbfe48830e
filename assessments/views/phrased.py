"""A test built from words: a phrase is chosen, its gaps are filled from what fits, and it is put into the rule."""

from typing import Any

from django.http import QueryDict

from assessments.rules import PHRASES, Phrase, PhraseRefused, Schema, Slot, choices, joined, written
from assessments.rules import phrase as phrase_of
from assessments.views.rule_lines import Reads

PREFIX = "gap-"
INTO = ("test", "when", "share")


def panel_of(reads: Reads, data: QueryDict, refusal: PhraseRefused | None = None) -> dict[str, Any]:
    """Return the panel: the phrases, and of the chosen one every gap with what may fill it."""
    chosen = _chosen(data)
    return {
        "phrases": [
            {"code": one.code, "words": _bare(one), "chosen": chosen is not None and one.code == chosen.code}
            for one in PHRASES
        ],
        "slots": _slots(reads, chosen, data, refusal) if chosen else [],
        "error": str(refusal) if refusal and not refusal.slot else "",
        "into": data.get("into", "test"),
        "how": data.get("how", "and"),
    }


def put_into(schema: Schema, data: QueryDict) -> tuple[str, str]:
    """Return which field the phrase goes into, and its new text; PhraseRefused says what is missing."""
    chosen = _chosen(data)
    if chosen is None:
        raise PhraseRefused("Choose a phrase first.")
    into = data.get("into", "test")
    into = into if into in INTO else "test"
    text = written(schema, chosen, _filled(chosen, data))
    how = data.get("how", "and")
    stands = "" if how == "instead" else data.get(into, "")
    return into, joined(stands, text, "or" if how == "or" else "and")


def _chosen(data: QueryDict) -> Phrase | None:
    try:
        return phrase_of(data.get("phrase", ""))
    except PhraseRefused:
        return None


def _bare(one: Phrase) -> str:
    """Return the words of a phrase with its gaps as dots."""
    words = one.words
    for slot in one.slots:
        words = words.replace(f"{{{slot.name}}}", "…")
    return words


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
    return [_slot(slot, fitting[slot.name], filled[slot.name], data, refusal) for slot in chosen.slots]


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
