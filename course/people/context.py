"""What every page needs to know about the site and the person."""

from typing import Any

from django.http import HttpRequest

from course.people.access import may_open_desk, may_open_office


def site(request: HttpRequest) -> dict[str, Any]:
    """Navigation flags. Costs no query beyond the signed-in person."""
    person = request.user
    if not person.is_authenticated:
        return {}
    return {"nav_desk": may_open_desk(person), "nav_office": may_open_office(person)}
