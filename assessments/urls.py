"""Addresses of the upper floor, and of the home page, which needs both."""

from django.urls import path

from assessments.views import attempts, books, cohorts, desk, drafts, home, record, scenarios, signing

urlpatterns = [
    path("", home.today, name="home"),
    path("scenarios/", scenarios.index, name="scenario-list"),
    path("scenarios/<str:code>/", scenarios.detail, name="scenario-detail"),
    path("scenarios/<str:code>/open/", attempts.begin, name="attempt-open"),
    path("attempts/<uuid:attempt_id>/", attempts.detail, name="attempt-detail"),
    path("attempts/<uuid:attempt_id>/answer/", attempts.answer, name="answer-save"),
    path("attempts/<uuid:attempt_id>/describe/", attempts.describe, name="attempt-describe"),
    path("attempts/<uuid:attempt_id>/hand-in/", attempts.hand_in, name="attempt-hand-in"),
    path("attempts/<uuid:attempt_id>/put-away/", attempts.put_away, name="attempt-put-away"),
    path("attempts/<uuid:attempt_id>/verdict/", attempts.verdict, name="attempt-verdict"),
    path("record/", record.own, name="record"),
    path("record/<uuid:handle>/", record.detail, name="record-detail"),
    path("cohorts/", cohorts.index, name="cohort-list"),
    path("cohorts/<int:pk>/", cohorts.board, name="cohort-board"),
    path("record/<uuid:handle>/<str:element>/sign/", signing.sign_off, name="sign-off"),
    path("record/<uuid:handle>/<str:element>/decline/", signing.decline, name="element-decline"),
    path("record/<uuid:handle>/<str:element>/ask/", signing.ask_more, name="element-ask"),
    path("decisions/<uuid:decision_id>/", record.decision, name="decision-detail"),
    path("decisions/<uuid:decision_id>/withdraw/", signing.withdraw, name="decision-withdraw"),
    path("rules/", books.index, name="book-list"),
    path("rules/<str:code>/", books.detail, name="book-detail"),
    path("rules/<str:code>/begin/", books.begin, name="book-begin"),
    path("rules/<str:code>/put-back/", books.put_back, name="book-put-back"),
    path("drafts/<uuid:draft_id>/", drafts.detail, name="draft-detail"),
    path("drafts/<uuid:draft_id>/write/", desk.write, name="rule-write"),
    path("drafts/<uuid:draft_id>/share/", drafts.share, name="draft-share"),
    path("drafts/<uuid:draft_id>/settle/", drafts.settle, name="draft-settle"),
    path("drafts/<uuid:draft_id>/send/", drafts.send, name="draft-send"),
    path("drafts/<uuid:draft_id>/give-back/", drafts.give_back, name="draft-give-back"),
    path("drafts/<uuid:draft_id>/publish/", drafts.publish, name="draft-publish"),
    path("drafts/<uuid:draft_id>/throw-away/", drafts.throw_away, name="draft-throw-away"),
    path("drafts/<uuid:draft_id>/rules/<str:code>/", desk.detail, name="rule-detail"),
    path("drafts/<uuid:draft_id>/rules/<str:code>/take-out/", desk.remove, name="rule-take-out"),
]
