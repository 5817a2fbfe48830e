"""Tasks whose answers are lists, one of each kind."""

from assessments.scenarios.fields import Field, Option
from assessments.scenarios.tasks import Act, Carry, Reading, Row, Task

PLACES = Carry("place", "Lamp", (Option("left", "left"), Option("right", "right")), "left")
ZONES = Carry(
    "zone", "Zone", (Option("crack", "the crack"), Option("rest", "the rest"), Option("all", "everywhere")), "all"
)
ASK = Task(
    "asked",
    "ask",
    "Readings",
    "What do you ask?",
    readings=tuple(Reading(one, one, 2, ()) for one in ("wet", "nail", "press")),
)
ORDER = Task(
    "steps",
    "order",
    "Steps",
    "In which order?",
    acts=(
        Act("wipe", "Panel wipe", "clean"),
        Act("lamp", "Lamp", "look", ("place",)),
        Act("cut", "Cut", "abrade", ("zone",)),
        Act("acid", "Acid", "chem", ("zone",)),
        Act("record", "Write it down", "stop", ("zone",)),
    ),
    carries=(PLACES, ZONES),
    most=4,
)
SETS = Carry("sets", "Sets", (Option("1", "one set"), Option("2", "two sets")), "1")
GRADES = Carry("grade", "Grade", (Option("P1500", "P1500"), Option("P1000", "P1000")), "P1500")
SPOTS = Task(
    "trials",
    "order",
    "Spots",
    "What do you try?",
    acts=(
        Act("spot_cut", "Heavy compound", "look", ("sets",), "cut"),
        Act("spot_sand", "Wet paper", "look", ("grade", "sets"), "sand"),
    ),
    carries=(GRADES, SETS),
    spots=True,
    laid=({"op": "spot_cut"},),
)
PLAN = Task(
    "steps",
    "plan",
    "Plan",
    "What do you do?",
    ops=("wash", "acid", "sand", "cut", "finish", "wipe"),
    options=(Option("bow", "the bow"), Option("rest", "the rest")),
    most=5,
)
WHAT = Field("what", "choice", "What it is", options=(Option("teak", "Teak"), Option("gel_coat", "Gel coat")))
VERDICT = Field("verdict", "choice", "Verdict", options=(Option("leave", "leave"), Option("polish", "polish")))
ROWS = Task("patches", "rows", "Patches", "What are they?", rows=(Row(1, ()), Row(2, ())), columns=(WHAT, VERDICT))
CELLS_ONLY = Task("cells", "zones", "Mark", "Where is it?", picture="panel")
VERDICTS = (Option("polish", "polish"), Option("refer", "refer"))
WITH_VERDICTS = Task(
    "zones", "zones", "Mark", "Where, and what then?", picture="panel", options=VERDICTS, verdicts=True
)
