"""Figures as numbers: what to draw and what it says. A template tag writes the drawing."""

from courses.figures.gauge import Box, Gauge, GaugeError, Label, Sense, gauge
from courses.figures.notches import NotchError, Notches, in_few, notches

__all__ = ["Box", "Gauge", "GaugeError", "Label", "NotchError", "Notches", "Sense", "gauge", "in_few", "notches"]
