"""What a kind is: three functions that share a plan."""

from courses.pictures.arrays import Mask
from courses.pictures.camera import Camera, stand_for
from courses.pictures.canvas import Canvas
from courses.pictures.kind import Kind
from courses.pictures.panel import planned
from courses.pictures.plate import Plate
from courses.pictures.swirls import SWIRL, Swirls
from tests.courses.pictures.panels import SMALL, marked


def _mask(plan: Plate, camera: Camera) -> Mask:
    return plan.weight(camera.x, camera.y) > 0.5


def _lay(plan: Plate, canvas: Canvas) -> None:
    canvas.coat *= 0.5


def test_a_kind_hands_its_plan_on() -> None:
    kind = Kind(lambda _defect, plate, _rng: plate, _mask, _lay)
    shown = marked("swirl")
    plate = Plate(shown, shown.defects[0], "point")
    canvas = Canvas(shown, "point", Camera(stand_for("point", SMALL), SMALL))
    kind.lay(kind.plan(shown.defects[0], plate, None), canvas)  # type: ignore[arg-type]
    assert canvas.coat.max() == 0.5
    assert kind.mask(plate, canvas.camera).all()


def test_plans_come_again_and_differ_between_defects() -> None:
    shown = marked("swirl")
    first, again = (planned(shown, shown.defects[0], "point") for _ in range(2))
    assert isinstance(first, Swirls)
    assert isinstance(again, Swirls)
    assert (first.strokes.x == again.strokes.x).all()
    assert SWIRL.plan is not None
