"""Rules written by chance: well-typed ones, the same with something broken, and plain soup."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from random import Random


def _words(text: str) -> tuple[str, ...]:
    return tuple(text.split())


SOUP = _words(
    "answer facts key model steps s t ( ) ( ) [ ] . , and or not in if else for any every count sum least most near "
    "before answered norm len abs < <= > >= == != + - * / 1 0 2.5 'sand' 'wash' True False None x is lambda ** % "
    "answer.margin answer.steps facts.film answer.sure s.op s.um : = ; # \\ é __class__"
)
NUMBERS = _words(
    "facts.film facts.rh facts.coarse facts.whole facts.maybe answer.margin answer.packs answer.place.at_h model.film "
    "key.dew key.packs facts.zero"
)
TRUTHS = _words("facts.cold answer.sure key.short facts.cold")
CHOICES = _words("answer.decision key.decision facts.decision answer.place.where")
TEXTS = _words("answer.note facts.label facts.story")
LISTS = _words("answer.steps answer.steps facts.rows answer.acts answer.holes")
PICKS = _words("answer.picks key.kit")
PLAIN = _words("facts.readings answer.loose")
WORDS = _words("wait sand wash dry")
LITERALS = _words("0 1 2 3 0.5 2.5 1000000 0.1 1e9 7")
OPS = _words("op kind")


class Writer:
    """Writes rules of a given depth; the loop variables in scope are fields to choose from like any other."""

    def __init__(self, chance: Random) -> None:
        self.chance = chance
        self.variables: list[str] = []
        self.values: list[str] = []

    def pick(self, *ways: Callable[[], str]) -> str:
        """Return one of some ways to write it."""
        return self.chance.choice(ways)()

    def truth(self, depth: int) -> str:
        """Return a yes/no."""
        if depth <= 0:
            return self.pick(self.bare, self.compare_leaf, self.bare_item, self.compare_leaf)
        ways = [self.join, self.join, self.turned, self.compare, self.chain, self.near, self.order, self.asked]
        ways += [self.quantified, self.quantified, self.member, self.text, self.lent_truth, self.guarded, self.chosen]
        return self.chance.choice(ways)(depth - 1)

    def bare(self) -> str:
        return self.chance.choice([*TRUTHS, "True", "facts.cold"])

    def bare_item(self) -> str:
        return f"{self.chance.choice(self.variables)}.wet" if self.variables else self.bare()

    def compare_leaf(self) -> str:
        return self.pick(
            lambda: f"{self.number(0)} {self.sign()} {self.number(0)}",
            lambda: f"{self.choice()} {self.chance.choice(['==', '!='])} '{self.chance.choice(WORDS)}'",
            lambda: f"{self.choice()} in ['{self.chance.choice(WORDS)}', 'wait']",
        )

    def sign(self) -> str:
        return self.chance.choice(["<", "<=", ">", ">=", "==", "!="])

    def choice(self) -> str:
        if self.variables and self.chance.random() < 0.7:
            return f"{self.chance.choice(self.variables)}.{self.chance.choice(OPS)}"
        return self.chance.choice(CHOICES)

    def join(self, depth: int) -> str:
        word = self.chance.choice([" and ", " or "])
        many = self.chance.choice([2, 2, 3])
        return f"({word.join(self.truth(depth - self.chance.randrange(2)) for _ in range(many))})"

    def turned(self, depth: int) -> str:
        return f"(not {self.truth(depth)})"

    def compare(self, depth: int) -> str:
        return f"{self.number(depth)} {self.sign()} {self.number(depth)}"

    def chain(self, depth: int) -> str:
        links = "".join(f" {self.sign()} {self.number(depth - 1)}" for _ in range(self.chance.choice([2, 2, 3])))
        return f"({self.number(depth)}{links})"

    def near(self, depth: int) -> str:
        word = self.chance.choice(["near", "near", "near_rel"])
        return f"{word}({self.number(depth)}, {self.number(0)}, {self.chance.choice(['0.5', '0.1', self.number(0)])})"

    def order(self, depth: int) -> str:
        word = self.chance.choice(["before", "before", "starts_before", "after_each"])
        acts = ", ".join(f"'{self.chance.choice(WORDS[1:])}'" for _ in range(2))
        return f"{word}({self.chance.choice(LISTS)}, {acts})"

    def asked(self, depth: int) -> str:
        ways = [*NUMBERS, *TRUTHS, *CHOICES, *TEXTS, *LISTS, "answer.place", *self._items("grit", "note")]
        return f"answered({self.chance.choice([*ways, self.number(depth)])})"

    def guarded(self, depth: int) -> str:
        field = self.chance.choice(["answer.margin", "answer.packs", "answer.place.at_h", *self._items("grit")])
        said = f"answered({field}) and {field} {self.sign()} {self.number(depth - 1)}"
        return self.chance.choice([f"({said})", f"({said} and {self.truth(depth - 1)})"])

    def _items(self, *fields: str) -> list[str]:
        return [f"{variable}.{field}" for variable in self.variables for field in fields]

    def chosen(self, depth: int) -> str:
        test = self.chance.choice(["facts.cold", "key.short", f"answered({self.chance.choice(NUMBERS)})"])
        return f"({self.truth(depth)} if {test} else {self.truth(depth)})"

    def member(self, depth: int) -> str:
        word, items = self.chance.choice(["in", "not in"]), self.chance.choice(PICKS)
        told = self.chance.choice([f"'{self.chance.choice(WORDS)}'", self.choice()])
        number = f"{self.number(depth)} {word} {self.chance.choice([*PLAIN, '[1, 2, 3.5]'])}"
        return self.chance.choice([f"{told} {word} {items}", number])

    def text(self, depth: int) -> str:
        note = self.chance.choice([*TEXTS, *self._items("note")])
        return self.pick(
            lambda: f"norm({note}) == norm({self.chance.choice(TEXTS)})",
            lambda: f"mentions({note}, ['stays', 'left'])",
            lambda: f"norm({note}) in ['it stays', 'left']",
            lambda: f"{note} == {self.chance.choice([*TEXTS, repr('it stays')])}",
        )

    def lent_truth(self, depth: int) -> str:
        return f"odd({self.number(depth)})"

    def quantified(self, depth: int) -> str:
        word = self.chance.choice(["every", "any"])
        return self.walk(word, lambda: self.truth(depth), depth)

    def walk(self, word: str, test: Callable[[], str], depth: int) -> str:
        """Return a quantifier over rows, most of them filtered by what an act is."""
        if len(self.variables) > 1:
            return self.number(0) if word not in ("every", "any") else self.bare()
        items, name = self.chance.choice(LISTS), self.chance.choice("suvw") + str(len(self.variables))
        self.variables.append(name)
        kept = f"{name}.{self.chance.choice(OPS)} == '{self.chance.choice(WORDS[1:])}'"
        more = self.truth(min(depth - 1, 1))
        keep = self.chance.choice(["", "", f" if {kept}", f" if {kept}", f" if {kept} and {more}", f" if {more}"])
        body = test()
        body = self.chance.choice([body, f"{kept} and {body}"]) if word in ("any", "count") else body
        self.variables.pop()
        if items in ("answer.acts", "answer.holes") and self.chance.random() < 0.7:
            there = f"answered({name}) and answered({name}.op)"
            keep = f" if {there} and ({keep[4:]})" if keep else f" if {there}"
        return f"{word}({body} for {name} in {items}{keep})"

    def number(self, depth: int) -> str:
        """Return a number."""
        if depth <= 0:
            fields = [f"{each}.{self.chance.choice(['um', 'n', 'um', 'grit'])}" for each in self.variables]
            return self.chance.choice([*NUMBERS, *LITERALS, *LITERALS, *fields, *fields, *fields, *fields])
        ways = [self.arithmetic, self.arithmetic, self.reckoned, self.reckoned, self.sized, self.lent_number]
        return self.chance.choice([*ways, self.minus, self.either, lambda depth: self.number(0)])(depth - 1)

    def arithmetic(self, depth: int) -> str:
        return f"({self.number(depth)} {self.chance.choice('+-*/')} {self.number(depth)})"

    def minus(self, depth: int) -> str:
        return f"(-{self.number(depth)})" if self.chance.random() < 0.5 else f"abs({self.number(depth)})"

    def either(self, depth: int) -> str:
        return f"({self.number(depth)} if {self.chance.choice(['facts.cold', 'key.short'])} else {self.number(depth)})"

    def reckoned(self, depth: int) -> str:
        word = self.chance.choice(["count", "sum", "least", "most"])
        if word == "count":
            return self.walk(word, lambda: self.truth(depth), depth)
        if self.chance.random() < 0.2:
            return f"{word}(r{len(self.variables)} for r{len(self.variables)} in facts.readings)"
        return self.walk(word, lambda: self.number(depth), depth)

    def sized(self, depth: int) -> str:
        return self.chance.choice(
            [
                f"len({self.chance.choice([*LISTS, *PICKS, *TEXTS])})",
                f"overlap({self.chance.choice(PICKS)}, {self.chance.choice(PICKS)})",
                "overlap(facts.readings, answer.loose)",
            ]
        )

    def lent_number(self, depth: int) -> str:
        return f"{self.chance.choice(['half', 'ends', 'whole'])}({self.number(depth)})"


def well_typed(chance: Random) -> str:
    """Return a rule that most likely is accepted."""
    return Writer(chance).truth(chance.choice([1, 2, 2, 3, 3]))


def value_expression(chance: Random) -> str:
    """Return an expression for a value."""
    writer = Writer(chance)
    return chance.choice([writer.number(2), writer.number(3), "answer.steps", "answer.note", "key.decision"])


def broken(chance: Random) -> str:
    """Return a rule in which something was cut out, doubled or exchanged."""
    text = well_typed(chance)
    for _ in range(chance.choice([1, 1, 2, 4])):
        start = chance.randrange(len(text) + 1)
        end = min(len(text), start + chance.choice([0, 1, 1, 3, 10]))
        text = text[:start] + chance.choice(["", text[start:end] * 2, chance.choice(SOUP), "answer"]) + text[end:]
    return text


def soup(chance: Random) -> str:
    """Return words and signs in any order."""
    return " ".join(chance.choice(SOUP) for _ in range(chance.randrange(1, 30)))


Ways = Mapping[str, Callable[[Random], str]]
WAYS: Ways = {"well typed": well_typed, "values": value_expression, "broken": broken, "soup": soup}
