"""Rules run as generated code and held against the closures of the oracle."""

import pytest

from assessments.rules import bind
from assessments.rules.compiler import Compiled
from tests.assessments.rules.oracle import marking
from tests.assessments.rules.oracle.frame import compact


@pytest.fixture
def code(checked):
    """The code of some rules; each has to be sound."""

    def ask(*rules, wants="any"):
        return Compiled([checked(rule, wants) for rule in rules])

    return ask


@pytest.fixture
def ran(code, schema, case):
    """What generated code makes of a rule, after the oracle agreed on value, events and whole operands."""

    def ask(rule, **answers):
        compiled = code(rule)
        case["answer"].update(answers)
        bound = bind(schema, case)
        found, wanted = compiled.run(bound), marking.run(marking.runnable(compiled.parts[0]), bound)
        assert (found.value, found.failed) == (wanted.value, wanted.failed)
        assert found.events == compact(wanted.events).events
        assert [event[::2] for event in found.whole] == [event[::2] for event in wanted.events]
        if not found.failed:
            assert compiled.values(bound) == (wanted.value,)
        return found

    return ask


@pytest.fixture
def lines(code):
    """The lines of the function that is generated for some rules, without what surrounds them."""

    def ask(*rules, traced=False):
        compiled = code(*rules)
        text = compiled.traced_source if traced else compiled.source
        return [line.strip() for line in text.splitlines() if not line.startswith(("def ", "k"))]

    return ask
