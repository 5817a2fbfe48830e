"""What a zone is like between two steps: everything that later steps, gates and readings ask of it."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from operator import attrgetter
from typing import Any

from courses.trade.constants import Constants
from courses.trade.leftover import share_oxidised
from courses.trade.surface.marks import LEVELLED, Marks
from courses.trade.surface.zone import SOUND_TAIL_UM, Zone

__all__ = ["Condition"]


@dataclass(slots=True)
class Condition:
    """One zone as it stands; lengths in model micrometres. Working a step on it changes it; `copy` keeps it.

    ``levelled``, ``planed``, ``removed``: depth gained in valleys, on what stands proud, film lost. ``worst_um``,
    ``uneven_um``: how much less the worst patches were levelled and cut, on ``patch_share`` of the area. ``rim_um``:
    what went off an edge that no zone of its own tells of.
    ``most_by``, ``tail_by``, ``trail_by``, ``grit_by``, ``last_by``: the step that took the most, left the deepest
    stray, left the trail, dragged grit last, was the last to abrade; 0 for none of the plan.
    ``called_for_um``, ``need_tail``, ``need_trail``: what the stages so far had to take, and what the next one meets.
    ``firsts``: the step at which each limit was passed first.
    """

    zone: Zone
    film_um: float
    rz_um: float
    tail_um: float
    trail_um: float
    need_tail: float
    need_trail: float
    cure: float
    soiled: bool
    taped: bool
    wet: bool
    oils: bool
    seams_wet: bool
    marks: tuple[Marks, ...]
    own_tail_um: float = SOUND_TAIL_UM
    corr_um: float = 3.0
    removed_um: float = 0.0
    levelled_um: float = 0.0
    planed_um: float = 0.0
    worst_um: float = 0.0
    uneven_um: float = 0.0
    patch_share: float = 0.0
    rim_um: float = 0.0
    called_for_um: float = 0.0
    heat_degc: float = 0.0
    most_um: float = 0.0
    most_by: int = 0
    tail_by: int = 0
    trail_by: int = 0
    grit_by: int = 0
    last_by: int = 0
    residue: bool = False
    referred: bool = False
    coated: bool = False
    firsts: dict[str, int] = field(default_factory=dict)

    @classmethod
    def of(cls, zone: Zone, constants: Constants) -> Condition:
        """The zone before any work."""
        deepest = [one.deepest_um for one in zone.marks if one.ground and one.kind not in zone.may_stay]
        return cls(
            zone=zone,
            film_um=zone.film_um,
            rz_um=zone.rz_um,
            tail_um=zone.tail_um,
            trail_um=zone.trail_um,
            need_tail=max([zone.rz_um, zone.tail_um, *deepest]),
            need_trail=zone.trail_um,
            cure=zone.cure,
            soiled=zone.soiled,
            taped=zone.taped,
            wet=zone.wet,
            oils=zone.oils,
            seams_wet=zone.wet,
            residue=zone.oils,
            marks=zone.marks,
            corr_um=constants.optics.corr_um,
            patch_share=constants.disc.patch_share,
        )

    def copy(self) -> Condition:
        """The same, apart from what happens to this one from now on."""
        found = Condition(*_values(self))
        found.firsts = dict(self.firsts)
        return found

    def gone_um(self, marks: Marks) -> float:
        """How far a family of marks has come down, µm."""
        if marks.role in LEVELLED:
            return self.levelled_um
        return self.planed_um if marks.role == "proud" else self.removed_um

    def open_share(self, marks: Marks) -> float:
        """Share of a family of marks that is still open, 0 to 1, patches that a worn disc left counted in."""
        if not marks.ground:
            return 1.0
        gone = self.gone_um(marks)
        share = marks.open_share(gone)
        if not self.uneven_um:
            return share
        less = self.worst_um if marks.role in LEVELLED else self.uneven_um
        return self._mixed(share, marks.open_share(gone - less))

    def _mixed(self, share: float, in_patches: float) -> float:
        return (1 - self.patch_share) * share + self.patch_share * in_patches

    def left_um(self, marks: Marks) -> float:
        """How deep 95 of 100 marks of a family still go at most, µm; what goes through is as deep as the film was."""
        if marks.role == "through" and not marks.depth_um:
            return self.zone.film_um
        return max(0.0, marks.deepest_um - self.gone_um(marks)) if marks.ground else marks.deepest_um

    @property
    def oxidised(self) -> float:
        """Share of the area still oxidised, 0 to 1."""
        layer, spread = self.zone.oxidation_um, self.zone.oxidation_cv
        if layer < 0.01:
            return 0.0
        share = share_oxidised(self.removed_um, layer, spread)
        if not self.uneven_um:
            return share
        return self._mixed(share, share_oxidised(self.removed_um - self.uneven_um, layer, spread))

    @property
    def layer_left_um(self) -> float:
        """How deep 95 of 100 places are still oxidised at most, µm."""
        return max(0.0, self.zone.layer_um - self.removed_um)


_values: Any = attrgetter(*(one.name for one in fields(Condition)))
