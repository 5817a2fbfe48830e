"""The framework from its texts: titles in one, criteria and requirements in one each per unit, and what is in force."""

from collections.abc import Mapping

from assessments.competence.evidence import KINDS, MODES
from assessments.competence.framework import Ask, Criterion, Element, Framework, Requirement, Unit
from courses.content.errors import FileRefused
from courses.content.pack import UnitPack, read_units
from courses.content.tables import Table, read_table

UNITS = "units.toml"
IN_FORCE = "in_force.toml"
CRITERIA = "criteria/"
REQUIREMENTS = "requirements/"
WITNESSES = ("T", "X", "W", "WX")
"""Who may have seen it: own teacher, examiner, workplace witness, both of the last together."""
SUBSTRATES = ("gel_coat", "topcoat_2k", "clear_coat")


def read_framework(texts: Mapping[str, str], place: str = "") -> Framework:
    """Return the framework written in `texts`, name to text, such as `criteria/INS.toml`; `place` goes before a name.

    Every element has criteria and, for the version in force, a requirement. Raises `FileRefused` at the first fault.
    """
    for name in (UNITS, IN_FORCE):
        if name not in texts:
            raise FileRefused(place + name, 1, "toml", "this file is missing; the framework is read from it.")
    packs = read_units(texts[UNITS], place + UNITS)
    criteria: dict[str, tuple[tuple[str, ...], Mapping[str, tuple[Criterion, ...]]]] = {}
    requirements: dict[tuple[str, int], Requirement] = {}
    for name in sorted(texts):
        top = read_table(texts[name], place + name)
        if name.startswith(CRITERIA):
            top.new("unit", criteria)
            code = top.one_of("unit", packs)
            criteria[code] = _criteria(top, packs)
        elif name.startswith(REQUIREMENTS):
            _take(requirements, top, packs)
    if missing := next((code for code in packs if code not in criteria), None):
        raise FileRefused(
            f"{place}{CRITERIA}{missing}.toml", 1, "unit", f"this file is missing; it lists what {missing} looks for."
        )
    units = {code: _unit(pack, *criteria[code]) for code, pack in packs.items()}
    return Framework(units, requirements, _in_force(read_table(texts[IN_FORCE], place + IN_FORCE), packs, requirements))


def _unit(pack: UnitPack, before: tuple[str, ...], criteria: Mapping[str, tuple[Criterion, ...]]) -> Unit:
    elements = tuple(Element(code, title, criteria[code]) for code, title in pack.elements)
    return Unit(pack.code, pack.title, pack.about, before, elements)


def _elements(packs: Mapping[str, UnitPack]) -> tuple[str, ...]:
    return tuple(code for pack in packs.values() for code, _ in pack.elements)


def _criteria(top: Table, packs: Mapping[str, UnitPack]) -> tuple[tuple[str, ...], Mapping[str, tuple[Criterion, ...]]]:
    top.only("unit", "prerequisites", "element")
    own = [code for code, _ in packs[top.text("unit")].elements]
    before = top.some_of("prerequisites", (*packs, *_elements(packs)), default=())
    found: dict[str, tuple[Criterion, ...]] = {}
    for entry in top.some("element"):
        entry.only("code", "criteria")
        entry.new("code", found)
        found[entry.one_of("code", own)] = tuple(
            _criterion(one, place) for place, one in enumerate(entry.some("criteria"))
        )
    if missing := [code for code in own if code not in found]:
        raise top.refuse("element", f"nothing is looked for in {', '.join(missing)}; add it.")
    return before, found


def _criterion(entry: Table, place: int) -> Criterion:
    entry.only("letter", "text", "critical")
    entry.one_of("letter", (chr(ord("a") + place),))
    return Criterion(entry.text("letter"), entry.text("text"), entry.flag("critical"))


def _take(requirements: dict[tuple[str, int], Requirement], top: Table, packs: Mapping[str, UnitPack]) -> None:
    """Add to `requirements` that of every element a text speaks of, with the asks that serve it."""
    top.only("version", "elements", "recertify_months", "window_months", "ask")
    version, months = top.whole("version", 0, 999), top.whole("recertify_months", 1, 120)
    window = top.whole("window_months", 1, 120)
    elements = top.some_of("elements", _elements(packs))
    top.once("ask", "code")
    asks = [_ask(entry, elements, window) for entry in top.some("ask")]
    for element in elements:
        if (element, version) in requirements:
            raise top.refuse("elements", f"version {version} of {element} stands in an earlier file too.")
        serving = tuple(ask for ask in asks if element in ask.elements)
        if not serving:
            raise top.refuse("elements", f"nothing is asked for {element}; add an ask that serves it.")
        requirements[element, version] = Requirement(element, version, serving, months)


def _ask(entry: Table, elements: tuple[str, ...], window: int) -> Ask:
    entry.only_fields_of(Ask)
    count = entry.whole("count", 1, 99, default=1)
    return Ask(
        code=entry.text("code"),
        words=entry.text("words"),
        kind=entry.one_of("kind", KINDS),
        mode=entry.one_of("mode", MODES, default=""),
        scenarios=entry.texts("scenarios", default=()),
        count=count,
        window_months=entry.whole("window_months", 1, 120, default=window),
        witness=entry.some_of("witness", WITNESSES, default=()),
        days=entry.whole("days", 1, count, default=1),
        substrates=_substrates(entry, count),
        tags=entry.texts("tags", default=()),
        elements=entry.some_of("elements", elements, default=elements),
    )


def _substrates(entry: Table, count: int) -> tuple[str, ...] | int:
    if isinstance(entry.values.get("substrates"), int):
        return entry.whole("substrates", 1, min(count, len(SUBSTRATES)))
    named = entry.some_of("substrates", SUBSTRATES, default=())
    if len(named) > count:
        raise entry.refuse("substrates", f"{count} can't show {len(named)} substrates; raise count or name fewer.")
    return named


def _in_force(
    top: Table, packs: Mapping[str, UnitPack], requirements: Mapping[tuple[str, int], Requirement]
) -> Mapping[str, int]:
    top.only("version", "instead")
    instead = top.table("instead").only(*_elements(packs))
    found: dict[str, int] = {}
    for element in _elements(packs):
        table, key = (instead, element) if instead.has(element) else (top, "version")
        found[element] = table.whole(key, 0, 999)
        if (element, found[element]) not in requirements:
            raise table.refuse(key, f"{element} has no requirement {found[element]}; write one under {REQUIREMENTS}.")
    return found
