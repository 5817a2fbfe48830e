"""How people come in: by invitation, never by a form that is open to the street."""

from allauth.account.adapter import DefaultAccountAdapter
from django.http import HttpRequest


class InvitedOnly(DefaultAccountAdapter):
    """Sign-up is closed; an invitation link is the door."""

    def is_open_for_signup(self, request: HttpRequest) -> bool:
        """Say no."""
        return False
