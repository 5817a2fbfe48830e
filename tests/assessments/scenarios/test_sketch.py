"""A sketch is two functions; a try that was thrown away carries its reason."""

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.sketch import Sketch, Thrown
from assessments.scenarios.spec import Kind


def test_a_sketch_calls_its_functions() -> None:
    sketch = Sketch(lambda chance, kind: Thrown(kind.name), lambda facts: dict(facts))
    assert sketch.draw(Chance(lambda: 0.0), Kind("wait", 1, {})) == Thrown("wait")
    assert sketch.key(Record({"rh": 61})) == {"rh": 61}
