"""Addresses of the ground floor."""

from django.urls import path

from courses.views import catalogue, display, lessons, parts, people, sums

urlpatterns = [
    path("come-in/<str:token>/", people.come_in, name="invitation-accept"),
    path("settings/", people.settings, name="settings"),
    path("display/", display.choose, name="display-set"),
    path("lessons/", catalogue.index, name="lesson-list"),
    path("lessons/<slug:slug>/", lessons.detail, name="lesson-detail"),
    path("lessons/<slug:slug>/read/", lessons.read, name="lesson-read"),
    path("lessons/<slug:slug>/check/", lessons.check, name="lesson-check"),
    path("calculators/", sums.index, name="sum-list"),
    path("calculators/<str:name>/", sums.detail, name="sum-detail"),
    path("parts/", parts.parts, name="parts"),
]
