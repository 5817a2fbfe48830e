"""Every peer of the bench."""

from __future__ import annotations

from tests.bench.rules.cel import CppCel, PythonCel, RustCel
from tests.bench.rules.decisions import Rules, ZenGraph, ZenList
from tests.bench.rules.jsonata import Jlens, JlensAudit, Jsonata, JsonataInRust, JsonataToPython
from tests.bench.rules.logic import Datalogic, DatalogicRead, DatalogicTraced, PythonLogic, RustLogic
from tests.bench.rules.peer import Peer
from tests.bench.rules.pythons import Asteval, Evalidate, Restricted, Simple, Starlark

PEERS: tuple[type[Peer], ...] = (
    Restricted,
    Evalidate,
    Simple,
    Asteval,
    Starlark,
    Rules,
    RustCel,
    CppCel,
    PythonCel,
    ZenList,
    ZenGraph,
    Datalogic,
    DatalogicRead,
    DatalogicTraced,
    RustLogic,
    PythonLogic,
    JsonataToPython,
    JsonataInRust,
    Jsonata,
    Jlens,
    JlensAudit,
)
