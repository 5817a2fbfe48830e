"""The two storeys under one roof. Each storey lists its own addresses."""

from django.urls import include, path

from courses.views.devices import RecoveryCodes, SetUpDevice

urlpatterns = [
    path("account/2fa/totp/activate/", SetUpDevice.as_view(), name="mfa_activate_totp"),
    path("account/2fa/recovery-codes/", RecoveryCodes.as_view(), name="mfa_view_recovery_codes"),
    path("account/", include("allauth.urls")),
    path("", include("courses.urls")),
    path("", include("assessments.urls")),
]
