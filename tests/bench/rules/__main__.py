"""The engine beside plain Python and beside engines at large: `python -m tests.bench.rules` prints a page of Markdown.

Every engine first has to say what the floor says, rule for rule, on all cases; one that errs is left out and named.
Install the extra `bench` for the peers.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence

from tests.bench.rules import compiling, table
from tests.bench.rules.answers import cases
from tests.bench.rules.book import texts
from tests.bench.rules.ours import OURS, bound
from tests.bench.rules.peers import PEERS
from tests.bench.rules.timing import Case, Engine, timed, wrong


def engines(only: frozenset[str]) -> Iterator[Engine]:
    """Yield the engines that were asked for, all of them where none was named."""
    for kind in OURS:
        if not only or kind.__name__ in only:
            yield kind()
    for kind in PEERS:
        if not only or kind.__name__ in only:
            yield kind(texts())


def agreeing(found: Iterator[Engine], drawn: Sequence[Case]) -> Iterator[Engine]:
    """Yield the engines that say what the floor says, and name the others."""
    for engine in found:
        astray = [place + 1 for place in wrong(engine, drawn)]
        if astray:
            sys.stdout.write(f"Left out, for it errs on rules {astray}: {engine.name}, {engine.way}.\n\n")
        else:
            yield engine


def main() -> None:
    """Verify, measure, print."""
    asked = argparse.ArgumentParser(prog="python -m tests.bench.rules", description=__doc__.split("\n")[0])
    asked.add_argument("--rounds", type=int, default=41, help="how often each engine is timed")
    names = ", ".join(kind.__name__ for kind in (*OURS, *PEERS))
    asked.add_argument("--only", nargs="*", default=[], help=f"of {names}")
    given = asked.parse_args()
    drawn = bound(cases())
    rows = timed(list(agreeing(engines(frozenset(given.only)), drawn)), drawn, given.rounds)
    print(table.heading(len(drawn), given.rounds), table.table(rows, drawn), compiling.sentence(drawn[0]), sep="\n\n")


if __name__ == "__main__":
    main()
