"""A request as our views receive it: signed in, with htmx details."""

from django.http import HttpRequest
from django_htmx.middleware import HtmxDetails

from course.people.models import Person


class PersonRequest(HttpRequest):
    """Typing only: LoginRequiredMiddleware guarantees the person, HtmxMiddleware the details."""

    user: Person
    htmx: HtmxDetails
