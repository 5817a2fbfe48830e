"""Addresses of the upper floor, and of the home page, which needs both."""

from django.urls import path

from assessments.views import attempts, home, scenarios

urlpatterns = [
    path("", home.today, name="home"),
    path("scenarios/", scenarios.index, name="scenario-list"),
    path("scenarios/<str:code>/", scenarios.detail, name="scenario-detail"),
    path("scenarios/<str:code>/open/", attempts.begin, name="attempt-open"),
    path("attempts/<uuid:attempt_id>/", attempts.detail, name="attempt-detail"),
    path("attempts/<uuid:attempt_id>/answer/", attempts.answer, name="answer-save"),
    path("attempts/<uuid:attempt_id>/hand-in/", attempts.hand_in, name="attempt-hand-in"),
    path("attempts/<uuid:attempt_id>/put-away/", attempts.put_away, name="attempt-put-away"),
    path("attempts/<uuid:attempt_id>/verdict/", attempts.verdict, name="attempt-verdict"),
]
