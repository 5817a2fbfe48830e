"""Figures as numbers: what to draw and what it says. A template tag writes the drawing."""

from courses.figures.drawing import Box, Figure, FigureError
from courses.figures.film_section import film_section
from courses.figures.film_stages import FilmStep
from courses.figures.gauge import Gauge, GaugeError, Label, Sense, gauge
from courses.figures.notches import NotchError, Notches, in_few, notches
from courses.figures.scratch_ladder import Rung, scratch_ladder
from courses.figures.workload import Load, workload

__all__ = [
    "Box",
    "Figure",
    "FigureError",
    "FilmStep",
    "Gauge",
    "GaugeError",
    "Label",
    "Load",
    "NotchError",
    "Notches",
    "Rung",
    "Sense",
    "film_section",
    "gauge",
    "in_few",
    "notches",
    "scratch_ladder",
    "workload",
]
