"""The two storeys under one roof. Each storey lists its own addresses."""

from django.urls import include, path

urlpatterns = [
    path("account/", include("allauth.urls")),
    path("", include("courses.urls")),
    path("", include("assessments.urls")),
]
