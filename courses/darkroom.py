"""Where rendered pictures are made, kept on disk and found again.

One thread of each process renders, at low priority, so that pages are answered meanwhile; it keeps the panel that it
built last for the next lamp place. Whoever asks waits a little, and not in numbers: beyond that the room is busy.
What is to be seen in a picture is measured when nobody waits, and kept beside it.
"""

import hashlib
import json
import logging
import os
import threading
import time
from collections import OrderedDict
from collections.abc import Iterator, Mapping
from contextlib import AbstractContextManager, contextmanager, suppress
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import IO, Any, Protocol

from django.conf import settings

from courses.errors import Refused
from courses.pictures import Panel, Scene, measured
from courses.pictures import Seen as SeenDefect
from courses.shipped import catalogue

try:
    import fcntl
except ImportError:  # no such locks on this system: each process renders for itself there
    fcntl = None  # type: ignore[assignment]

WAIT_S = 8.0
"""So long a request waits for its picture."""
SEATS = 6
"""So many requests of one process wait at a time, as many as a browser sends at once; `serve` has more threads."""
QUEUE = 8
"""So many pictures of one process wait to be made."""
UNMEASURED = 100
"""So many pictures of one process wait to be measured; one that falls out is measured when it is asked for again."""
STRIPES = 64
NICE = 5
LONGEST_PAUSE_S = 8

LOG = logging.getLogger(__name__)

Lamp = tuple[float, float]


class DarkroomBusy(Refused):
    """More pictures were asked for at once than are made; `again_in_s` says when to ask again."""

    def __init__(self, again_in_s: int) -> None:
        super().__init__("More pictures are asked for than can be made at once.")
        self.again_in_s = again_in_s


@dataclass(frozen=True)
class Exposure:
    """One lamp place of one panel under one light: what a picture is made of, and whether it is measured as well."""

    scene: Mapping[str, Any]
    light: str
    lamp: Lamp
    renderer: int
    measure: bool = False

    @property
    def name(self) -> str:
        """Return the name of its file: a hash of all that the picture depends on."""
        return _digest([self.panel, list(self.lamp)])

    @property
    def panel(self) -> str:
        """Return a hash of the panel and its light, which other lamp places share."""
        return _digest([dict(self.scene), self.light, self.renderer])


Seen = list[dict[str, Any]]


@dataclass(frozen=True, slots=True)
class Made:
    """A picture as it is sent, and the contrast of each defect in it, once that was measured."""

    webp: bytes
    seen: Seen | None = None


class Renderer(Protocol):
    """Who makes pictures."""

    def shoot(self, exposure: Exposure) -> bytes:
        """Return a picture as a WebP file."""

    def measure(self, exposure: Exposure) -> Seen:
        """Return the contrast of each defect in it."""


@dataclass(eq=False)
class _Job:
    exposure: Exposure
    done: threading.Event = field(default_factory=threading.Event)
    made: Made | None = None
    fault: Exception | None = None


class Darkroom:
    """A folder of pictures, and the thread that fills it."""

    def __init__(self, folder: Path, most_bytes: int, at_once: int, renderer: Renderer) -> None:
        self.folder, self.most_bytes, self.at_once, self._renderer = folder, most_bytes, at_once, renderer
        self._seats = threading.BoundedSemaphore(SEATS)
        self._waiting: OrderedDict[str, _Job] = OrderedDict()
        self._unmeasured: OrderedDict[str, Exposure] = OrderedDict()
        self._news = threading.Condition()
        self._thread: threading.Thread | None = None
        self._panel = ""

    def picture(self, exposure: Exposure, wait_s: float = WAIT_S) -> Made:
        """Return a picture from the folder, or make it; raises DarkroomBusy where that takes too long."""
        if kept := self.find(exposure.name):
            if exposure.measure and kept.seen is None:
                self._measure_later(exposure)
            return kept
        job = self._enter(exposure)
        if not self._seats.acquire(blocking=False):
            raise self._busy()
        try:
            job.done.wait(wait_s)
        finally:
            self._seats.release()
        if job.fault:
            raise job.fault
        if job.made is None:
            raise self._busy()
        return job.made

    def find(self, name: str) -> Made | None:
        """Return a picture that was made before, and remember that it was asked for."""
        file = self._file(name)
        try:
            webp = file.read_bytes()
            os.utime(file)
        except FileNotFoundError:
            return None
        return Made(webp, self.seen(name))

    def seen(self, name: str) -> Seen | None:
        """Return what was measured in a picture, or None as long as it wasn't."""
        try:
            found: Seen = json.loads(self._file(name).with_suffix(".json").read_bytes())
        except (FileNotFoundError, json.JSONDecodeError):
            return None
        return found

    def _file(self, name: str) -> Path:
        return self.folder / f"{name}.webp"

    def _busy(self) -> DarkroomBusy:
        return DarkroomBusy(min(LONGEST_PAUSE_S, 2 + len(self._waiting)))

    def _enter(self, exposure: Exposure) -> _Job:
        with self._news:
            if job := self._waiting.get(exposure.name):
                return job
            if len(self._waiting) >= QUEUE:
                raise self._busy()
            job = self._waiting[exposure.name] = _Job(exposure)
            self._wake()
        return job

    def _measure_later(self, exposure: Exposure) -> None:
        with self._news:
            self._unmeasured[exposure.name] = exposure
            if len(self._unmeasured) > UNMEASURED:
                self._unmeasured.popitem(last=False)
            self._wake()

    def _wake(self) -> None:
        if self._thread is None or not self._thread.is_alive():
            self._thread = threading.Thread(target=self._work, name="darkroom", daemon=True)
            self._thread.start()
        self._news.notify()

    def _work(self) -> None:
        _step_back()
        while True:
            with self._news:
                self._news.wait_for(lambda: self._waiting or self._unmeasured)
                job = self._next()
                unmeasured = None if job else self._unmeasured.popitem(last=False)[1]
            if job:
                self._do(job)
            elif unmeasured:
                self._measure(unmeasured)

    def _next(self) -> _Job | None:
        """Return the job that waits longest; before it, one of the panel that stands built."""
        waiting = self._waiting.values()
        of_this_panel = (job for job in waiting if job.exposure.panel == self._panel)
        return next(of_this_panel, None) or next(iter(waiting), None)

    def _do(self, job: _Job) -> None:
        self._panel = job.exposure.panel
        try:
            job.made = self._make(job.exposure)
        except Exception as fault:
            job.fault = fault
        with self._news:
            del self._waiting[job.exposure.name]
        job.done.set()
        if job.exposure.measure and job.made and job.made.seen is None:
            self._measure_later(job.exposure)

    def _make(self, exposure: Exposure) -> Made:
        """Make one picture, unless another process just did; at most `at_once` are made at a time."""
        with self._alone_with(exposure):
            if kept := self.find(exposure.name):
                return kept
            with self._a_place():
                made = Made(self._renderer.shoot(exposure))
            file = self._file(exposure.name)
            _write(file, made.webp)
            self._make_room(file)
        return made

    def _measure(self, exposure: Exposure) -> None:
        try:
            with self._alone_with(exposure):
                if self.seen(exposure.name) is None:
                    with self._a_place():
                        seen = self._renderer.measure(exposure)
                    _write(self._file(exposure.name).with_suffix(".json"), json.dumps(seen).encode())
        except Exception:
            LOG.exception("A picture could not be measured.")

    def _alone_with(self, exposure: Exposure) -> AbstractContextManager[None]:
        return _held([self._locks() / f"picture-{int(exposure.name[:8], 16) % STRIPES}"])

    def _a_place(self) -> AbstractContextManager[None]:
        return _held([self._locks() / f"place-{number}" for number in range(self.at_once)])

    def _locks(self) -> Path:
        locks = self.folder / "locks"
        locks.mkdir(parents=True, exist_ok=True)
        return locks

    def _make_room(self, newest: Path) -> None:
        """Remove what was asked for longest ago, until the folder is within its size again."""
        kept = sorted(self._sizes(), key=lambda one: one[1])
        over = sum(size for _file, _used, size in kept) - self.most_bytes
        for file, _used, size in kept:
            if over <= 0:
                return
            if file != newest:
                file.unlink(missing_ok=True)
                file.with_suffix(".json").unlink(missing_ok=True)
                over -= size

    def _sizes(self) -> Iterator[tuple[Path, float, int]]:
        for file in self.folder.glob("*.webp"):
            with suppress(FileNotFoundError):
                about = file.stat()
                yield file, about.st_mtime, about.st_size


class Easel:
    """Renders, and keeps the panel that it built last."""

    def __init__(self) -> None:
        self._built: tuple[str, Panel] | None = None

    def shoot(self, exposure: Exposure) -> bytes:
        """Return the picture of one lamp place."""
        return self._panel(exposure).shoot(exposure.lamp).webp()

    def measure(self, exposure: Exposure) -> Seen:
        """Return the contrast of each defect, measured against the same panel without it."""
        panel = self._panel(exposure)
        found = measured(panel.scene, exposure.light, exposure.lamp, panel.shoot(exposure.lamp))
        return [{"kind": one.kind, **_rounded(one)} for one in found]

    def _panel(self, exposure: Exposure) -> Panel:
        if self._built is None or self._built[0] != exposure.panel:
            self._built = None  # let go of the one before the next is built
            scene = Scene.of(exposure.scene, catalogue())
            self._built = exposure.panel, Panel.build(scene, exposure.light)
        return self._built[1]


def _rounded(one: SeenDefect) -> dict[str, float]:
    return {"cnr": round(one.cnr, 3), "rms_dl": round(one.rms_dl, 3), "area": round(one.area, 5)}


def darkroom() -> Darkroom:
    """Return the room of this process."""
    with _DOOR:
        return _room(settings.PICTURES_ROOT, settings.PICTURES_MB * 1_000_000, settings.PICTURES_AT_ONCE)


_DOOR = threading.Lock()
"""Two requests that come first at once make one room."""


@lru_cache(maxsize=4)
def _room(folder: Path, most_bytes: int, at_once: int) -> Darkroom:
    return Darkroom(folder, most_bytes, at_once, Easel())


def _digest(parts: list[Any]) -> str:
    text = json.dumps(parts, sort_keys=True, separators=(",", ":"), allow_nan=False)
    return hashlib.sha256(text.encode()).hexdigest()[:40]


def _write(file: Path, data: bytes) -> None:
    """Write a whole file or none: it is given its name when it is complete."""
    part = file.with_name(f".{file.name}-{os.getpid()}")
    part.write_bytes(data)
    part.replace(file)


def _step_back() -> None:
    """Let every other thread of this machine go first."""
    with suppress(AttributeError, OSError):  # only some systems rank threads
        os.setpriority(os.PRIO_PROCESS, threading.get_native_id(), NICE)


@contextmanager
def _held(places: list[Path]) -> Iterator[None]:
    """Hold one of several locks, whichever is free first, against every process; let go when done or killed."""
    handle = _taken(places)
    while handle is None:
        time.sleep(0.03)
        handle = _taken(places)
    with handle:
        yield


def _taken(places: list[Path]) -> IO[bytes] | None:
    for place in places:
        handle = place.open("ab")
        if fcntl is None:
            return handle
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            handle.close()
            continue
        return handle
    return None
