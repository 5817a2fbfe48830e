"""The Django project package. Nothing imports it: Django finds it by name."""
