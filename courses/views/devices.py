"""Setting up a code device and its recovery codes, and coming back to where one was going."""

from typing import Any

from allauth.account.mixins import NextRedirectMixin
from allauth.account.utils import get_next_redirect_url
from allauth.mfa.recovery_codes.views import ViewRecoveryCodesView
from allauth.mfa.totp.internal.auth import TOTP
from allauth.mfa.totp.views import ActivateTOTPView
from django.http import HttpResponse
from django.urls import reverse
from django.utils.decorators import method_decorator
from django.utils.http import urlencode
from django.views.decorators.cache import never_cache

GROUP = 4


@method_decorator(never_cache, name="dispatch")
class SetUpDevice(NextRedirectMixin, ActivateTOTPView):
    """Shows the secret as a picture and in groups of letters; takes the first code."""

    def get_context_data(self, **kwargs: Any) -> dict[str, Any]:
        """Return what the page shows, the secret in groups that can be typed."""
        page: dict[str, Any] = super().get_context_data(**kwargs)
        secret = page["form"].secret
        page["groups"] = [secret[at : at + GROUP] for at in range(0, len(secret), GROUP)]
        return page

    def form_valid(self, form: Any) -> HttpResponse:
        """Set up the device; the code that did it is used up by that."""
        answer: HttpResponse = super().form_valid(form)
        device = self.request.user.authenticator_set.get(type="totp")
        TOTP(device).validate_code(form.cleaned_data["code"])
        return answer

    def get_success_url(self) -> str:
        """Return the recovery codes, if they are new, else where the person was going, on this host."""
        back = get_next_redirect_url(self.request)
        if self.did_generate_recovery_codes:
            codes = reverse("mfa_view_recovery_codes")
            return f"{codes}?{urlencode({'next': back})}" if back else codes
        return back or reverse("mfa_index")


class RecoveryCodes(ViewRecoveryCodesView):
    """Shows the codes that are left, and the way on."""

    def get_context_data(self, **kwargs: Any) -> dict[str, Any]:
        """Return what the page shows and where the person was going."""
        page: dict[str, Any] = super().get_context_data(**kwargs)
        page["back"] = get_next_redirect_url(self.request)
        return page
