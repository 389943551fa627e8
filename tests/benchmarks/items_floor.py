"""The floor of the page of questions in figures: same middleware, same statements, same bytes."""

from django.db import connection
from django.http import HttpResponse
from django.urls import path

BYTES = [b""]
SHOW = ["kinds"]

_COUNTS = """SELECT item, rests, chosen, before_right, before_wrong, drift_score, drift_answers, drift_began,
drift_alarm FROM quizzes_itemtally WHERE """
_WHICH = {"kinds": "item = family", "questions": "NOT item = family"}
_PAUSED = "SELECT item, paused FROM quizzes_itempause ORDER BY id"


def read(show):
    """Two statements, every row fetched."""
    with connection.cursor() as cursor:
        cursor.execute(_COUNTS + _WHICH[show])
        counts = cursor.fetchall()
        cursor.execute(_PAUSED)
        return counts, cursor.fetchall()


def items(request):
    """Two reads, then ready-made bytes."""
    assert request.user.pk
    read(SHOW[0])
    return HttpResponse(BYTES[0])


urlpatterns = [path("items/", items)]
