"""Addresses of the ground floor."""

from django.urls import path

from courses.views import (
    catalogue,
    display,
    estimates,
    lessons,
    lookalikes,
    parts,
    people,
    pictures,
    plans,
    school,
    sums,
)
from courses.views import school_people as staff

urlpatterns = [
    path("come-in/<str:token>/", people.come_in, name="invitation-accept"),
    path("settings/", people.settings, name="settings"),
    path("display/", display.choose, name="display-set"),
    path("lessons/", catalogue.index, name="lesson-list"),
    path("lessons/look-alikes/", lookalikes.look_alikes, name="look-alikes"),
    path("lessons/<slug:slug>/", lessons.detail, name="lesson-detail"),
    path("lessons/<slug:slug>/read/", lessons.read, name="lesson-read"),
    path("lessons/<slug:slug>/check/", lessons.check, name="lesson-check"),
    path("pictures/<slug:code>/<int:number>.webp", pictures.picture, name="picture"),
    path("calculators/", sums.index, name="sum-list"),
    path("calculators/<str:name>/", sums.detail, name="sum-detail"),
    path("estimates/", estimates.index, name="estimate-list"),
    path("estimates/make/", estimates.make, name="estimate-make"),
    path("estimates/<int:pk>/", estimates.detail, name="estimate-detail"),
    path("estimates/<int:pk>/used/", estimates.used, name="estimate-used"),
    path("try-a-plan/", plans.try_plan, name="plan-try"),
    path("parts/", parts.parts, name="parts"),
    path("school/", school.detail, name="school-detail"),
    path("school/people/", staff.index, name="person-list"),
    path("school/people/<uuid:handle>/", staff.detail, name="person-detail"),
    path("school/people/<uuid:handle>/give/", staff.role_give, name="role-give"),
    path("school/people/<uuid:handle>/roles/<int:pk>/", staff.role_change, name="role-change"),
    path("school/people/<uuid:handle>/roles/<int:pk>/end/", staff.role_end, name="role-end"),
    path("school/people/<uuid:handle>/deactivate/", staff.shut_out, name="person-deactivate"),
    path("school/people/<uuid:handle>/activate/", staff.let_in, name="person-activate"),
    path("school/people/<uuid:handle>/erase/", staff.erase, name="person-erase"),
    path("school/cohorts/", school.cohorts, name="school-cohorts"),
    path("school/cohorts/make/", school.cohort_make, name="cohort-make"),
    path("school/cohorts/<int:pk>/", school.cohort_change, name="cohort-change"),
    path("school/invitations/", school.invitations, name="invitation-list"),
    path("school/invitations/make/", school.invitation_make, name="invitation-make"),
    path("school/invitations/<int:pk>/end/", school.invitation_end, name="invitation-end"),
]
