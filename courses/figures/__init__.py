"""Figures as numbers: what to draw and what it says. A template tag writes the drawing."""

from courses.figures.gauge import Box, Gauge, GaugeError, Label, Sense, gauge
from courses.figures.notches import NotchError, Notches, notches

__all__ = ["Box", "Gauge", "GaugeError", "Label", "NotchError", "Notches", "Sense", "gauge", "notches"]
