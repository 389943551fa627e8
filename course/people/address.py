"""Whose address a sign-in comes from, so that throttling meets the right person."""

from django.conf import settings
from django.http import HttpRequest


def client_address(request: HttpRequest) -> str:
    """The visitor's address: behind our proxy the last one it noted, which no visitor can forge."""
    noted = request.META.get("HTTP_X_FORWARDED_FOR", "")
    if settings.BEHIND_PROXY and noted:
        return str(noted).rsplit(",", 1)[-1].strip()
    return str(request.META.get("REMOTE_ADDR", ""))
